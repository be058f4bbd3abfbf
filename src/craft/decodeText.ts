import type { Problem } from './problem.ts'

/** no character takes more than four bytes; the reader's own limit is on characters */
const maxBytes = 1_000_000

export type Decoded = { text: string; problem?: undefined } | { text?: undefined; problem: Problem }

/**
 * The bytes of a craft file -> its text, exactly: a byte order mark stays its first character, so that
 * encoding the text again gives the same bytes. UTF-16, other encodings and binary files are refused with
 * the line and column of the first bad byte. Never throws.
 */
export function decodeCraftBytes(bytes: Uint8Array, file = 'craft.yaml'): Decoded {
  const refuse = (found: string, offset = 0): Decoded => {
    const expected = 'a text file saved as UTF-8'
    let line = 1
    let column = 1
    for (let i = 0; i < offset; i++) {
      if (bytes[i] === 10) {
        line++
        column = 1
        // continuation bytes do not start a character
      } else if ((bytes[i]! & 0xc0) !== 0x80) column++
    }
    const says = `found ${found}; expected ${expected}`
    return { problem: { file, line, column, path: '', found, expected, says, severity: 'error' } }
  }
  if (bytes.length > maxBytes)
    return refuse(`a file of ${(bytes.length / 1e6).toFixed(1)} MB, where a craft file has at most 1 MB`)
  if ((bytes[0] === 0xff && bytes[1] === 0xfe) || (bytes[0] === 0xfe && bytes[1] === 0xff))
    return refuse('a file saved as UTF-16')
  const zero = bytes.indexOf(0)
  if (zero !== -1) {
    const text16 = zero < 4 && bytes.length > 3 && bytes.filter((b) => b === 0).length > bytes.length / 4
    return refuse(text16 ? 'a file saved as UTF-16' : 'a zero byte, as in a binary file', zero)
  }
  const out: string[] = []
  let units: number[] = []
  for (let i = 0; i < bytes.length; ) {
    const got = codePoint(bytes, i)
    if (got === undefined) {
      const hex = bytes[i]!.toString(16).toUpperCase().padStart(2, '0')
      return refuse(`the byte ${hex}, which is not UTF-8`, i)
    }
    if (got > 0xffff) units.push(0xd800 + ((got - 0x10000) >> 10), 0xdc00 + ((got - 0x10000) & 0x3ff))
    else units.push(got)
    i += got < 0x80 ? 1 : got < 0x800 ? 2 : got < 0x10000 ? 3 : 4
    if (units.length > 4096) {
      out.push(String.fromCharCode(...units))
      units = []
    }
  }
  out.push(String.fromCharCode(...units))
  return { text: out.join('') }
}

/** The code point that starts at byte i, or undefined where the bytes are not well formed (Unicode 15, table 3-7). */
function codePoint(bytes: Uint8Array, i: number): number | undefined {
  const a = bytes[i]!
  if (a < 0x80) return a
  const more = a >= 0xc2 && a <= 0xdf ? 1 : a >= 0xe0 && a <= 0xef ? 2 : a >= 0xf0 && a <= 0xf4 ? 3 : 0
  if (more === 0) return undefined
  let code = a & (0x3f >> more)
  for (let k = 1; k <= more; k++) {
    const b = bytes[i + k]
    if (b === undefined || (b & 0xc0) !== 0x80) return undefined
    code = (code << 6) | (b & 0x3f)
  }
  const least = more === 1 ? 0x80 : more === 2 ? 0x800 : 0x10000
  if (code < least || code > 0x10ffff || (code >= 0xd800 && code <= 0xdfff)) return undefined
  return code
}
