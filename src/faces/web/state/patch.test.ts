import fc from 'fast-check'
import { expect, test } from 'vitest'
import { applyPatch, invertPatch, patchBetween } from './patch.ts'

const words = fc.string({ unit: fc.constantFrom('a', 'b', '\n', 'é', '±'), maxLength: 40 })

test('the patch between two texts turns the first into the second and back', () => {
  fc.assert(
    fc.property(words, words, (from, to) => {
      const patch = patchBetween(from, to)
      expect(applyPatch(from, patch)).toBe(to)
      expect(applyPatch(to, invertPatch(patch))).toBe(from)
    }),
  )
})

test('a patch holds only what differs', () => {
  expect(patchBetween('pitch: 108 mm', 'pitch: 95 mm')).toEqual({ at: 7, removed: '108', added: '95' })
})

test('a patch made for another text is refused', () => {
  expect(() => applyPatch('nozzle', { at: 0, removed: 'pitch', added: '' })).toThrow(RangeError)
})
