import { readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import { giveFiles, readCraft, whatIf } from '../../craft/index.ts'
import type { Mesh } from '../../physics/solid/mesh.ts'
import { boxMesh } from '../../physics/solid/primitives.ts'
import { inchLook, metricLook } from '../push/shown.ts'
import { craftPicture } from './craftPicture.ts'

const demos = ['heron', 'teal'].map((name) => {
  const text = readFileSync(`${import.meta.dirname}/../../../demo/${name}.yaml`, 'utf8')
  return readCraft(text, `${name}.yaml`).craft!
})

test('each demo craft is drawn with its own length and beam, the words in the unit asked for', () => {
  for (const craft of demos) {
    const words = craftPicture(craft, { ...metricLook, width: 240 }).marks.flatMap((m) =>
      m.kind === 'text' ? [m.text] : [],
    )
    expect(words).toContain(`${(craft.hull.length.value * 1000).toFixed(0)} mm`)
    expect(words).toContain(`${(craft.hull.beam.value * 1000).toFixed(0)} mm`)
    expect(words.join()).toContain('draft')
    const inches = craftPicture(craft, inchLook).marks.flatMap((m) => (m.kind === 'text' ? [m.text] : []))
    expect(inches).toContain(`${(craft.hull.length.value / 0.0254).toFixed(1)} in`)
  }
})

test('a tank or engine without a size is drawn dashed', () => {
  const dashed = craftPicture(demos[0]!, metricLook).marks.filter((m) => m.kind === 'polygon' && m.style.dash)
  expect(dashed.length).toBeGreaterThan(2)
})

test('openings and tanks of the file are drawn and named, the liquid no higher than its tank and level with the water outside', () => {
  for (const craft of demos) {
    const sheet = craftPicture(craft, { ...metricLook, width: 280 })
    const words = sheet.marks.flatMap((m) => (m.kind === 'text' ? [m.text] : []))
    for (const { name } of [...craft.tanks, ...craft.openings.slice(0, 3)]) expect(words).toContain(name)
    const signs = sheet.marks.filter((m) => m.kind === 'arc' && m.r === 0.8)
    expect(signs).toHaveLength(3 * craft.openings.length)
  }
})

test('the sketch of a hull given as a mesh is that of the mesh: longer where the mesh is longer', () => {
  const heron = readFileSync(`${import.meta.dirname}/../../../demo/heron.yaml`, 'utf8')
  const craft = readCraft(heron.replace('\nhull:\n', '\nhull:\n  mesh: box.stl\n')).craft!
  giveFiles(craft, { 'box.stl': { bytes: stlOf(boxMesh([0, -0.4, 0], [2.7, 0.4, 0.3])) } })
  const words = craftPicture(craft, metricLook).marks.flatMap((m) => (m.kind === 'text' ? [m.text] : []))
  expect(words).toContain('2700 mm')
  expect(words).toContain('300 mm')
})

test('a hull whose measures close to no solid is drawn as they stand, without water', () => {
  const craft = whatIf(demos[0]!, { 'hull.depth': -0.2 })
  expect(craftPicture(craft, metricLook).marks.length).toBeGreaterThan(20)
})

/** a binary STL file in millimetres */
function stlOf(mesh: Mesh): Uint8Array {
  const bytes = new Uint8Array(84 + (50 * mesh.triangles.length) / 3)
  const view = new DataView(bytes.buffer)
  view.setUint32(80, mesh.triangles.length / 3, true)
  mesh.triangles.forEach((corner, i) => {
    const at = 84 + 50 * Math.floor(i / 3) + 12 + 12 * (i % 3)
    for (let k = 0; k < 3; k++) view.setFloat32(at + 4 * k, 1000 * mesh.points[3 * corner + k]!, true)
  })
  return bytes
}
