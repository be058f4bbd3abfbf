/** Limits on what is handed to the YAML parser: far above any real craft, far below what could hang it. */
export const maxCharacters = 300_000
const maxDepth = 40
const maxIndent = 240

export interface Blocked {
  offset: number
  found: string
  expected: string
}

/** Looks for texts no craft file can be, before they reach the parser. Linear in the length of the text. */
export function blockedBy(text: string): Blocked | undefined {
  if (text.length > maxCharacters)
    return {
      offset: 0,
      found: `a file of ${Math.round(text.length / 1000)} thousand characters`,
      expected: `a craft file of at most ${maxCharacters / 1000} thousand characters; a whole craft takes a few thousand`,
    }
  return controlCharacter(text) ?? tooDeep(text)
}

function controlCharacter(text: string): Blocked | undefined {
  // control characters but tab and line ends, halves of surrogate pairs, and two that are never characters
  const m = /(?![\t\n\r])\p{Cc}|\p{Cs}|[\uFFFE\uFFFF]/u.exec(text)
  if (!m) return undefined
  const code = m[0].charCodeAt(0).toString(16).toUpperCase().padStart(4, '0')
  return {
    offset: m.index,
    found: `the character U+${code}, which is not text`,
    expected: 'a plain text file saved as UTF-8',
  }
}

/** brackets inside brackets, lists inside lists on one line, or indentation beyond reason */
function tooDeep(text: string): Blocked | undefined {
  const expected = `at most ${maxDepth} levels of nesting; a craft file uses six`
  let depth = 0
  let lineStart = true
  for (let i = 0; i < text.length; i++) {
    const c = text[i]
    if (lineStart) {
      const lead = /[ \t]*(?:[-?:][ \t]+){0,50}/y
      lead.lastIndex = i
      const piece = lead.exec(text)![0]
      if (piece.replace(/[ \t]/g, '').length > maxDepth || piece.length > maxIndent)
        return { offset: i, found: 'a line that is nested too deep', expected }
      i += piece.length
      lineStart = false
      if (i >= text.length) break
      if (text[i] === '#') {
        const end = text.indexOf('\n', i)
        if (end === -1) break
        i = end
        lineStart = true
        continue
      }
    }
    const at = text[i]
    if (at === '\n') lineStart = true
    else if (at === '[' || at === '{') {
      if (++depth > maxDepth) return { offset: i, found: 'brackets nested too deep', expected }
    } else if ((at === ']' || at === '}') && depth > 0) depth--
    if (c === undefined) break
  }
  return undefined
}
