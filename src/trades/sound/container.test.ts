import fc from 'fast-check'
import { expect, test } from 'vitest'
import { type Container, lengthFlags, mostSeconds, oggEnds, whyNothing } from './container.ts'

const whole: Container = { known: true, sound: true, picture: true, soundLasts: 60, pictureLasts: 60 }
const codes = (c: Container, read: number) => lengthFlags(c, read).map((f) => f.code)

test('a recording of the length it announces is passed without a word, padding and rounding included', () => {
  fc.assert(
    fc.property(fc.double({ min: 1, max: 5000, noNaN: true }), fc.double({ min: -0.3, max: 0.3 }), (s, d) => {
      const c = { ...whole, soundLasts: s, pictureLasts: s + d }
      expect(lengthFlags(c, s + d / 2)).toEqual([])
    }),
  )
})

test('less than announced is said with both lengths', () => {
  expect(codes(whole, 41.2)).toEqual(['truncated'])
  expect(lengthFlags(whole, 41.2)[0]!.text).toContain('41.2 s could be read of 60.0 s announced')
})

test('a picture of another length than the sound raises the question of edited speed, either way round', () => {
  expect(codes({ ...whole, pictureLasts: 240 }, 60)).toEqual(['edited'])
  expect(codes({ ...whole, pictureLasts: 15 }, 60)).toEqual(['edited'])
})

test('a container that announces nothing is not compared', () => {
  expect(codes({ known: true, sound: true, picture: false }, 3)).toEqual([])
})

test('nothing read is explained: filmed without sound, or cut off before the index', () => {
  expect(whyNothing({ known: true, sound: false, picture: true })?.code).toBe('no-sound')
  expect(whyNothing({ known: true, sound: false, picture: false })?.code).toBe('no-index')
  expect(whyNothing(whole)).toBeUndefined()
  expect(whyNothing({ known: false, sound: false, picture: false })).toBeUndefined()
})

test('an Ogg stream ends when the last of its pages says so', () => {
  const page = (type: number) => [0x4f, 0x67, 0x67, 0x53, 0, type, ...new Array(40).fill(7)]
  expect(oggEnds(Uint8Array.from([...page(0), ...page(4)]))).toBe(true)
  expect(oggEnds(Uint8Array.from([...page(4), ...page(0)]))).toBe(false)
  expect(oggEnds(new Uint8Array(10))).toBe(false)
})

test('a file of 57 kB holds minutes of sound at most, and an hour of real speech coding is not cut', () => {
  expect(mostSeconds(57e3)).toBeLessThan(180)
  // an hour at 6 kbit/s, the least that phones record at
  expect(mostSeconds((3600 * 6000) / 8)).toBeGreaterThan(3600)
  expect(mostSeconds(0)).toBe(60)
})
