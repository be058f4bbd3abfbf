import fc from 'fast-check'
import { expect, test } from 'vitest'
import { heron } from './craft.testkit.ts'
import { decodeCraftBytes } from './decodeText.ts'
import { formatProblem } from './problem.ts'

const bytes = (text: string) => new TextEncoder().encode(text)
const told = (b: Uint8Array) => {
  const { problem } = decodeCraftBytes(b, 'x.yaml')
  return problem && formatProblem(problem)
}
const utf16 = (text: string, bom: boolean) => {
  const units = Uint16Array.from(`${bom ? '\uFEFF' : ''}${text}`, (c) => c.charCodeAt(0))
  return new Uint8Array(units.buffer)
}

test('UTF-8 is decoded exactly, byte order mark and all', () => {
  expect(decodeCraftBytes(bytes(heron)).text).toBe(heron)
  expect(decodeCraftBytes(bytes(`\uFEFF${heron}`)).text).toBe(`\uFEFF${heron}`)
  fc.assert(
    fc.property(fc.string({ unit: 'binary' }), (s) => {
      const b = bytes(s)
      const { text } = decodeCraftBytes(b)
      return text === undefined
        ? b.includes(0)
        : text === new TextDecoder('utf-8', { ignoreBOM: true }).decode(b)
    }),
  )
})

test('bytes are accepted exactly where the platform’s strict decoder accepts them', () => {
  const strict = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true })
  fc.assert(
    fc.property(fc.uint8Array({ maxLength: 12 }), (b) => {
      let whole: string | undefined
      try {
        whole = strict.decode(b)
      } catch {}
      const refusedAnyway =
        b.includes(0) || (b[0] === 0xff && b[1] === 0xfe) || (b[0] === 0xfe && b[1] === 0xff)
      return refusedAnyway || decodeCraftBytes(b).text === whole
    }),
    { numRuns: 3000 },
  )
})

test('other encodings are refused by name or with the place of the first bad byte', () => {
  expect(told(utf16(heron, true))).toBe(
    'x.yaml:1:1: found a file saved as UTF-16; expected a text file saved as UTF-8',
  )
  expect(told(utf16(heron, false))).toContain('saved as UTF-16')
  const latin = Uint8Array.from('a: 1\nb: 3 µm', (c) => c.charCodeAt(0))
  expect(told(latin)).toContain('x.yaml:2:6: found the byte B5, which is not UTF-8')
  expect(told(Uint8Array.of(97, 10, 0, 98))).toContain('x.yaml:2:1: found a zero byte')
  expect(told(new Uint8Array(10_000_000))).toContain('10.0 MB')
  // overlong form, a surrogate, beyond the last plane, cut short
  for (const bad of [
    [0xc0, 0x80],
    [0xed, 0xa0, 0x80],
    [0xf4, 0x90, 0x80, 0x80],
    [0xe2, 0x82],
  ])
    expect(told(Uint8Array.from(bad))).toContain('not UTF-8')
})

test('no bytes are an empty text', () => {
  expect(decodeCraftBytes(new Uint8Array(0)).text).toBe('')
})
