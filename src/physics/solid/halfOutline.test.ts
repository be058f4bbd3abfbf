import { expect, test } from 'vitest'
import { halfOutline, thinned } from './halfOutline.ts'
import { joined, moved } from './mesh.ts'
import { boxMesh, cylinderMesh } from './primitives.ts'

test('halfOutline of a box runs keel, lower corner, upper corner, deck', () => {
  const got = halfOutline(boxMesh([0, -0.4, 0], [2, 0.4, 0.3]), 1)!
  expect(thinned(got, 1e-9)).toEqual([
    [0, 0],
    [0.4, 0],
    [0.4, 0.3],
    [0, 0.3],
  ])
})

test('halfOutline of a cylinder lies on its circle, from bottom to top', () => {
  const got = halfOutline(cylinderMesh(0.5, 0, 2, 64), 1)!
  expect(got[0]![1]).toBeLessThan(got.at(-1)![1])
  for (const [y, z] of got) expect(Math.abs(Math.hypot(y, z) - 0.5)).toBeLessThan(1e-3)
})

test('halfOutline is undefined off the mesh, and where there are two rings', () => {
  const box = boxMesh([0, -0.1, 0], [2, 0.1, 0.3])
  expect(halfOutline(box, 3)).toBeUndefined()
  expect(halfOutline(joined([moved(box, [0, 0.4, 0]), moved(box, [0, -0.4, 0])]), 1)).toBeUndefined()
})

test('thinned keeps corners farther than the tolerance from the chord, and both ends', () => {
  const line = [
    [0, 0],
    [0.5, 0.001],
    [1, 0],
    [1, 1],
  ] as const
  expect(thinned(line, 0.01)).toEqual([
    [0, 0],
    [1, 0],
    [1, 1],
  ])
  expect(thinned(line, 1e-4)).toHaveLength(4)
})
