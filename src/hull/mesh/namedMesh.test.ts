import { readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { type Craft, type CraftFiles, giveFiles, readCraft, whatIf } from '../../craft/index.ts'
import { solidProperties } from '../../physics/solid/integrals.ts'
import { flipped, joined, type Mesh, makeMesh, moved } from '../../physics/solid/mesh.ts'
import { boxMesh } from '../../physics/solid/primitives.ts'
import { dragSaid as hullDragFindings } from '../../trades/drag/drag.testkit.ts'
import { dragAt, prepareDrag } from '../../trades/drag/drag.ts'
import { hullFromCraft, hullSpecFromCraft } from '../../trades/drag/dragFromCraft.ts'
import { floatSaid as floatFindings } from '../../trades/float/float.testkit.ts'
import { meshFloat } from '../afloat/meshFloat.ts'
import { hullFromFew } from '../lines/hullBody.ts'
import { measuresOf } from '../lines/measures.ts'
import type { LoftDensity } from '../lines/stations.ts'
import { hullMeshFromCraft } from '../mesh/hullFromCraft.ts'
import { hullRead, namedMesh, takeHullRead } from './namedMesh.ts'

const text = readFileSync(new URL('../../../demo/heron.yaml', import.meta.url), 'utf8')
const few = readCraft(text).craft!
/** the demo's own lines, as a drawing program would save them: a closed skin in millimetres */
const own = hullMeshFromCraft(few).mesh

function stl(mesh: Mesh, scale = 1000): Uint8Array {
  const bytes = new Uint8Array(84 + (50 * mesh.triangles.length) / 3)
  const view = new DataView(bytes.buffer)
  view.setUint32(80, mesh.triangles.length / 3, true)
  mesh.triangles.forEach((corner, i) => {
    for (let k = 0; k < 3; k++)
      view.setFloat32(
        84 + 50 * Math.floor(i / 3) + 12 + 12 * (i % 3) + 4 * k,
        scale * mesh.points[3 * corner + k]!,
        true,
      )
  })
  return bytes
}

function named(files: CraftFiles | undefined, more = ''): Craft {
  const craft = readCraft(text.replace('\nhull:\n', `\nhull:\n  mesh: sled.stl\n${more}`)).craft!
  if (files) giveFiles(craft, files)
  return craft
}
const withMesh = (mesh: Mesh, more = '') => named({ 'sled.stl': { bytes: stl(mesh) } }, more)
const find = (list: readonly { id: string; says: string; standing: string }[], id: string) =>
  list.find((f) => f.id === id)

describe('the hull file a craft names', () => {
  test('is what floats: findings, lines and drag come from it, and agree with the measures it was drawn from', () => {
    const craft = withMesh(own)
    const hull = hullMeshFromCraft(craft)
    expect(hull.from).toBe('the mesh sled.stl')
    expect(hull.volume).toBeCloseTo(hullMeshFromCraft(few).volume, 6)
    const spec = hullSpecFromCraft(craft)
    const known = hullSpecFromCraft(few)
    for (const key of ['length', 'chineBeam', 'beam', 'depth', 'noseRise', 'tailWidth'] as const)
      expect(spec[key]! / known[key]!, key).toBeCloseTo(1, 1.5)
    expect(spec.deadrise).toBeCloseTo(known.deadrise, 2)
    const drag = (c: Craft) => {
      const { spec: s, loading, conditions, float } = hullFromCraft(c)
      const model = prepareDrag(s, loading, conditions, float ? { float } : {})
      return [2, 4, 6, 9].map((v) => dragAt(model, v).drag)
    }
    const fromFew = drag(few)
    drag(craft).forEach((d, i) => {
      expect(Math.abs(d / fromFew[i]! - 1)).toBeLessThan(0.04)
    })
  })

  test('answers otherwise than the measures where it is otherwise: a hull a fifth wider floats higher', () => {
    const big = makeMesh(
      own.points.map((v, i) => (i % 3 === 1 ? 1.2 * v : v)),
      own.triangles,
    )
    const craft = withMesh(big)
    expect(hullFromCraft(craft).spec.chineBeam).toBeCloseTo(0.84, 2)
    const draft = (c: Craft) => floatFindings(c).find((f) => f.id === 'float.draft')!.value!
    expect(draft(craft)).toBeLessThan(draft(few) - 0.01)
    // and the file's own beam is asked about
    expect(floatFindings(craft).filter((f) => /which is right\?/.test(f.says))).toHaveLength(1)
  })

  test('is said to be missing, unread, leaking, inside out or self-touching, each with its name and what is used instead', () => {
    const open = makeMesh(own.points, own.triangles.slice(30))
    const knot = joined([own, boxMesh([1, -0.1, 0.1], [1.2, 0.1, 0.4])])
    const cases: [Craft, RegExp][] = [
      [named(undefined), /sled\.stl was not at hand\./],
      [
        named({ 'sled.stl': { trouble: 'is not used: beside the craft file there is no such file' } }),
        /no such file/,
      ],
      [named({ 'sled.stl': { bytes: new Uint8Array(10) } }), /neither a binary file/],
      [withMesh(open), /leaks: \d+ edges.*cm forward of the transom/],
      [withMesh(flipped(own)), /inside out/],
      [withMesh(knot), /cut through each other in \d+ places, the first \d+ cm forward/],
    ]
    for (const [craft, words] of cases) {
      const float = find(floatFindings(craft), 'float.mesh')
      expect(float?.says).toMatch(words)
      expect(float?.says).toMatch(/sled\.stl .*worked out from the few measures of the hull instead\.$/)
      expect(float?.standing).toBe('watch')
      expect(find(hullDragFindings(craft), 'hull.mesh')?.says).toBe(float?.says)
    }
  })

  test('its unit and lie are guessed and said, with the words that settle them; written, nothing is asked', () => {
    const asked = (c: Craft) => floatFindings(c).filter((f) => /Is that right|bow forward\?/.test(f.says))
    const guessed = asked(withMesh(own))
    expect(guessed.map((f) => f.says).join(' ')).toMatch(
      /"mesh unit: mm".*"bow along: \+x" and "deck faces: \+z"/,
    )
    const settled = withMesh(own, '  mesh unit: mm\n  bow along: +x\n  deck faces: +z\n')
    expect(asked(settled)).toEqual([])
    expect(hullMeshFromCraft(settled).length).toBeCloseTo(2.4, 6)
  })

  test('stays with a craft that is tried on: the copy floats by the same file', () => {
    const craft = withMesh(own)
    expect(hullMeshFromCraft(whatIf(craft, { 'rider.mass': 90 })).from).toBe('the mesh sled.stl')
  })

  test('with two hulls side by side still floats by its own shape, and says that its lines are taken from the measures', () => {
    const slim = makeMesh(
      own.points.map((v, i) => (i % 3 === 1 ? 0.3 * v : v)),
      own.triangles,
    )
    const craft = withMesh(joined([moved(slim, [0, 0.3, 0]), moved(slim, [0, -0.3, 0])]))
    expect(hullMeshFromCraft(craft).volume).toBeCloseTo(0.6 * solidProperties(own).volume, 6)
    expect(find(hullDragFindings(craft), 'hull.mesh')?.says).toMatch(/not one ring/)
    expect(hullSpecFromCraft(craft).length).toBe(few.hull.length.value)
  })
})

const fineHull = (density: LoftDensity) =>
  hullFromFew({ ...measuresOf(few.hull), deckCamber: few.hull.deckCamber.value }, density)

test('a heavy mesh is lightened for the findings only where volume, centre and float stay the same', () => {
  const fine = fineHull({ along: 90, bottom: 10, side: 6, deck: 10 }).mesh
  const craft = withMesh(fine)
  const named = namedMesh(craft)!
  const whole = 'hull' in named ? named.hull : expect.unreachable()
  const light = hullMeshFromCraft(craft)
  expect(light.mesh.triangles.length).toBeLessThan(0.2 * whole.mesh.triangles.length)
  expect(light.volume / whole.volume).toBeCloseTo(1, 2)
  const at = (h: typeof whole) => meshFloat(h)(142, 0.95, 0.3, 999).value
  expect(at(light).draft).toBeCloseTo(at(whole).draft, 3)
  expect(at(light).length).toBeCloseTo(at(whole).length, 2)
})

describe('a hull file that another thread read', () => {
  test('is taken as it is, its light form too, and gives the same findings', () => {
    const craft = withMesh(fineHull({ along: 60, bottom: 8, side: 5, deck: 8 }).mesh)
    const own = floatFindings(craft)
    const sent = structuredClone(hullRead(craft)!)
    takeHullRead(sent)
    const there = withMesh(fineHull({ along: 60, bottom: 8, side: 5, deck: 8 }).mesh)
    const taken = namedMesh(there)!
    expect(taken).toBe(sent.made)
    expect(hullMeshFromCraft(there).mesh).toBe(sent.light!.mesh)
    expect(floatFindings(there)).toEqual(own)
  })
  test('is none where the craft names none, or the file was not there', () => {
    expect(hullRead(few)).toBeUndefined()
    expect(hullRead(named({ 'sled.stl': { trouble: 'is not there' } }))).toBeUndefined()
  })
})
