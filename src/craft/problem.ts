/** Something wrong, or worth a look, in a craft file. Lines and columns count from 1. */
export interface Problem {
  file: string
  line: number
  column: number
  /** dotted path of the value it is about, '' for the file as a whole */
  path: string
  found: string
  expected: string
  /** the whole thing in one sentence */
  says: string
  severity: 'error' | 'warning'
}

/** FILE:LINE:COLUMN: sentence */
export function formatProblem(p: Problem): string {
  return `${p.file}:${p.line}:${p.column}: ${p.says}`
}

/** Shows a piece of the file inside a sentence: one line, no control characters, at most 60 characters. */
export function quoted(piece: string): string {
  const tidy = piece.replace(/\p{Cc}+/gu, ' ')
  return `"${tidy.length > 60 ? `${tidy.slice(0, 57)}…` : tidy}"`
}

/** Finds lines and columns of offsets in a text by bisection. */
export function lineFinder(text: string): (offset: number) => { line: number; column: number } {
  const starts = [0]
  for (let i = text.indexOf('\n'); i !== -1; i = text.indexOf('\n', i + 1)) starts.push(i + 1)
  const bom = text.charCodeAt(0) === 0xfeff ? 1 : 0
  return (offset) => {
    let low = 0
    let high = starts.length - 1
    while (low < high) {
      const mid = (low + high + 1) >> 1
      if (starts[mid]! <= offset) low = mid
      else high = mid - 1
    }
    const column = offset - starts[low]! + 1 - (low === 0 ? bom : 0)
    return { line: low + 1, column: Math.max(1, column) }
  }
}
