import fc from 'fast-check'
import { expect, test } from 'vitest'
import { volumeTo } from '../../physics/gas/ductMesh.ts'
import { madeUpFound } from './breath.testkit.ts'
import { foundValues, pathsOfFound } from './foundPipe.ts'

const long = (parts: readonly { length: number }[]) => parts.reduce((s, p) => s + p.length, 0)

test('a pipe of as many parts is taken as it is', () => {
  const found = foundValues(madeUpFound(), 6)
  expect(found.fit).toBe('same')
  expect(found.parts.map((p) => p.length)).toEqual(madeUpFound().segments.map((s) => s.length))
})

test('cut to any number of parts it keeps its length, its ends, its bends and meets itself at every joint', () => {
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 14 }), (count) => {
      const { parts } = foundValues(madeUpFound(), count)
      expect(parts).toHaveLength(count)
      expect(long(parts)).toBeCloseTo(long(madeUpFound().segments), 12)
      expect(parts[0]!.d0).toBe(0.03)
      expect(parts.at(-1)!.d1).toBe(0.019)
      expect(parts.reduce((s, p) => s + (p.bend ?? 0), 0)).toBeCloseTo(1, 12)
      for (let i = 1; i < count; i++) expect(parts[i]!.d0).toBeCloseTo(parts[i - 1]!.d1, 12)
    }),
  )
})

test('splitting parts changes no volume', () => {
  const segments = madeUpFound().segments
  const { parts, fit } = foundValues(madeUpFound(), 11)
  expect(fit).toBe('split')
  expect(volumeTo(parts, long(parts))).toBeCloseTo(volumeTo(segments, long(segments)), 12)
})

test('with one part fewer the two cones most in line become one, and the volume hardly moves', () => {
  const segments = madeUpFound().segments
  const { parts, fit } = foundValues(madeUpFound(), 5)
  expect(fit).toBe('joined')
  const was = volumeTo(segments, long(segments))
  expect(Math.abs(volumeTo(parts, long(parts)) - was) / was).toBeLessThan(0.01)
})

test('a count below one is refused', () => {
  expect(() => foundValues(madeUpFound(), 0)).toThrow(/count is 0/)
})

test('paths name each part of the pipe, and the stinger only where the file has one', () => {
  const found = foundValues(madeUpFound(), 6)
  const paths = pathsOfFound(found, 1, true).map(([p]) => p)
  expect(paths).toContain('engines.1.exhaust.pipe.5.to')
  expect(paths).toContain('engines.1.exhaust.stinger.bore')
  expect(pathsOfFound(found, 0, false).some(([p]) => p.includes('stinger'))).toBe(false)
})
