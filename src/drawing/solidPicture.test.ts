import { expect, test } from 'vitest'
import type { SolidMesh } from '../base/answers/madePart.ts'
import { solidPicture } from './solidPicture.ts'

/** An upright square of side 1 in the plane across the view, `ahead` of the origin. */
const square = (ahead: number, size = 1): SolidMesh => ({
  corners: Float64Array.of(0, ahead, 0, size, ahead, 0, size, ahead, size, 0, ahead, size),
  triangles: Uint32Array.of(0, 1, 2, 0, 2, 3),
})
const look = { width: 30, around: 0, over: 0, title: 't', says: 's' }
const imageOf = (meshes: readonly SolidMesh[]) => {
  const [image] = solidPicture(meshes, look).marks
  if (image?.kind !== 'image') throw new Error('no image')
  return image
}
const colourAt = (meshes: readonly SolidMesh[], part: number) => {
  const image = imageOf(meshes)
  const at = 3 * (Math.floor(image.rows / 2) * image.cols + Math.floor(part * image.cols))
  return [...image.rgb.subarray(at, at + 3)]
}

test('what is nearer hides what is behind it, in whichever order they come', () => {
  const [near, far] = [square(-1, 0.5), square(1)]
  expect(colourAt([near, far], 0.3)).not.toEqual(colourAt([far, near], 0.3))
  // the first of two has the first colour: near one first or last, the middle shows the near one's
  expect(colourAt([near, far], 0.2)).toEqual(colourAt([near, square(5)], 0.2))
})

test('a square fills its picture from edge to edge and is as high as wide', () => {
  const sheet = solidPicture([square(0)], look)
  expect(sheet.height / sheet.width).toBeCloseTo(0.8, 1)
  expect(colourAt([square(0)], 0.5)).not.toEqual([255, 255, 255])
})

test('nothing to see is an empty sheet', () => {
  expect(solidPicture([], look).marks).toEqual([])
})
