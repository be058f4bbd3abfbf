import fc from 'fast-check'
import { strToU8, zipSync } from 'fflate'
import { describe, expect, test } from 'vitest'
import { solidProperties } from '../../physics/solid/integrals.ts'
import { boundsOf, flipped, joined, type Mesh, makeMesh, mapPoints, moved } from '../../physics/solid/mesh.ts'
import { boxMesh } from '../../physics/solid/primitives.ts'
import { read3mf } from '../../physics/solid/read3mf.ts'
import { MeshFileError, readStl } from '../../physics/solid/readStl.ts'
import { hullFromFew } from '../lines/hullBody.ts'
import { importHull } from './importMesh.ts'

const sled = hullFromFew({
  length: 2.4,
  beam: 0.8,
  chineBeam: 0.7,
  depth: 0.24,
  deadrise: 0.1,
  noseRise: 0.16,
}).mesh

function corners(mesh: Mesh): number[] {
  return Array.from(mesh.triangles).flatMap((i) => [
    mesh.points[3 * i]!,
    mesh.points[3 * i + 1]!,
    mesh.points[3 * i + 2]!,
  ])
}

function binaryStl(mesh: Mesh, scale = 1, head = ''): Uint8Array {
  const c = corners(mesh)
  const bytes = new Uint8Array(84 + (50 * c.length) / 9)
  bytes.set(strToU8(head).slice(0, 80))
  const view = new DataView(bytes.buffer)
  view.setUint32(80, c.length / 9, true)
  for (let t = 0; t < c.length / 9; t++)
    for (let k = 0; k < 9; k++) view.setFloat32(84 + 50 * t + 12 + 4 * k, scale * c[9 * t + k]!, true)
  return bytes
}

function textStl(mesh: Mesh): Uint8Array {
  const c = corners(mesh)
  let s = 'solid hull\n'
  for (let t = 0; t < c.length; t += 9) {
    s += 'facet normal 0 0 0\n outer loop\n'
    for (let k = 0; k < 9; k += 3) s += `  vertex ${c[t + k]} ${c[t + k + 1]} ${c[t + k + 2]}\n`
    s += ' endloop\nendfacet\n'
  }
  return strToU8(`${s}endsolid hull\n`)
}

function threeMf(
  mesh: Mesh,
  more: { unit?: string; item?: string; extra?: string; head?: string } = {},
): Uint8Array {
  const v = Array.from(
    { length: mesh.points.length / 3 },
    (_, i) =>
      `<vertex x="${mesh.points[3 * i]}" y="${mesh.points[3 * i + 1]}" z="${mesh.points[3 * i + 2]}"/>`,
  )
  const t = Array.from(
    { length: mesh.triangles.length / 3 },
    (_, i) =>
      `<triangle v1="${mesh.triangles[3 * i]}" v2="${mesh.triangles[3 * i + 1]}" v3="${mesh.triangles[3 * i + 2]}"/>`,
  )
  const xml = `<?xml version="1.0"?>${more.head ?? ''}<model unit="${more.unit ?? 'meter'}" xmlns="http://schemas.microsoft.com/3dmanufacturing/core/2015/02"><resources><object id="1" type="model"><mesh><vertices>${v.join('')}</vertices><triangles>${t.join('')}</triangles></mesh></object>${more.extra ?? ''}</resources><build>${more.item ?? '<item objectid="1"/>'}</build></model>`
  return zipSync({ '3D/3dmodel.model': strToU8(xml) })
}

describe('reading a hull', () => {
  test('binary and text STL and 3MF give the same hull', () => {
    const want = solidProperties(sled).volume
    for (const bytes of [binaryStl(sled), textStl(sled), threeMf(sled)]) {
      const { mesh } = importHull(bytes)
      expect(Math.abs(solidProperties(mesh).volume / want - 1)).toBeLessThan(1e-5)
    }
  })
  test('millimetres, inches and metres are told apart by size, and the guess is said', () => {
    for (const [scale, unit] of [
      [1000, 'mm'],
      [1, 'm'],
      [1 / 0.0254, 'in'],
    ] as const) {
      const { mesh, flags } = importHull(binaryStl(sled, scale))
      expect(boundsOf(mesh).high[0]).toBeCloseTo(2.4, 4)
      expect(flags.find((f) => f.code === 'mesh unit')?.text).toContain(`taken as ${unit}`)
    }
  })
  test('a unit that is told is not asked about, but an odd size is', () => {
    const { flags } = importHull(binaryStl(sled), { unit: 'mm' })
    expect(flags.some((f) => f.code === 'mesh unit')).toBe(false)
    expect(flags.find((f) => f.code === 'mesh size')?.text).toMatch(/0.0024\d* m long/)
  })
  test('however it lies in the file it comes out bow forward, deck up, origin at the transom foot', () => {
    const lies: ((x: number, y: number, z: number) => [number, number, number])[] = [
      (x, y, z) => [-x, -y, z],
      (x, y, z) => [y, -x, z],
      (x, y, z) => [-y, x, z],
      (x, y, z) => [x + 7, y - 3, z + 2],
    ]
    for (const lie of lies) {
      const { mesh, flags } = importHull(binaryStl(mapPoints(sled, lie)))
      const b = boundsOf(mesh)
      expect(b.low[0]).toBeCloseTo(0, 5)
      expect(b.low[2]).toBeCloseTo(0, 5)
      expect(b.high[1] + b.low[1]).toBeCloseTo(0, 5)
      expect(solidProperties(mesh).centroid[0]).toBeCloseTo(solidProperties(sled).centroid[0], 3)
      expect(flags.some((f) => f.code === 'mesh lie')).toBe(true)
    }
  })
  test('told axes are kept', () => {
    const upright = mapPoints(sled, (x, y, z) => [y, z, x])
    const { mesh } = importHull(binaryStl(upright), { forward: '+z', up: '+y' })
    expect(solidProperties(mesh).centroid[2]).toBeCloseTo(solidProperties(sled).centroid[2], 5)
    expect(() => importHull(binaryStl(sled), { forward: 'x', up: '-x' })).toThrow(/same axis/)
    expect(() => importHull(binaryStl(sled), { up: 'w' })).toThrow(/\+x, -x/)
  })
})

describe('refusing a hull', () => {
  test('a leak is refused with its place', () => {
    const open = makeMesh(sled.points, sled.triangles.slice(0, -3))
    expect(() => importHull(binaryStl(open))).toThrow(
      /leaks: 3 edges.*240 cm forward of the transom, on the centreline, 24 cm up/,
    )
  })
  test('inside out is refused', () => {
    expect(() => importHull(binaryStl(flipped(sled)))).toThrow(/inside out/)
  })
  test('a box through the skin is refused as self-touching', () => {
    const bump = moved(boxMesh([0, 0, 0], [0.31, 0.13, 0.17]), [0.83, 0.11, 0.15])
    expect(() => importHull(binaryStl(joined([sled, bump])))).toThrow(/cut through each other/)
  })
  test('rubbish, short files, wild counts and wild numbers are refused, never crash', () => {
    expect(() => readStl(new Uint8Array(0))).toThrow(MeshFileError)
    expect(() => readStl(strToU8('solid but nothing'))).toThrow(/no triangles/)
    const short = binaryStl(sled).slice(0, 3000)
    expect(() => readStl(short)).toThrow(/cut short/)
    const wild = new Uint8Array(84)
    new DataView(wild.buffer).setUint32(80, 4e9, true)
    expect(() => readStl(wild)).toThrow(/4000000000 triangles, expected at most/)
    const nan = binaryStl(sled)
    new DataView(nan.buffer).setFloat32(96, Number.NaN, true)
    expect(() => readStl(nan)).toThrow(/triangle 0: corner NaN/)
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 400 }), (bytes) => {
        try {
          importHull(bytes)
        } catch (e) {
          expect(e).toBeInstanceOf(MeshFileError)
        }
      }),
    )
  })
  test('a binary file whose header begins with "solid" is still read as binary', () => {
    expect(readStl(binaryStl(sled, 1, 'solid made by a careless program')).triangles.length).toBe(
      sled.triangles.length,
    )
  })
  test('3MF: components inside themselves, missing objects, bad indices, a DOCTYPE and odd units are refused', () => {
    const loop = '<object id="2"><components><component objectid="2"/></components></object>'
    expect(() => read3mf(threeMf(sled, { extra: loop, item: '<item objectid="2"/>' }))).toThrow(
      /inside themselves/,
    )
    expect(() => read3mf(threeMf(sled, { item: '<item objectid="9"/>' }))).toThrow(/"9" is not in the file/)
    const bad = { points: sled.points.slice(0, 9), triangles: sled.triangles }
    expect(() => read3mf(threeMf(bad))).toThrow(/expected 0 to 2/)
    expect(() => read3mf(threeMf(sled, { head: '<!DOCTYPE x [<!ENTITY a "b">]>' }))).toThrow(/DOCTYPE/)
    expect(() => read3mf(threeMf(sled, { unit: 'cubit' }))).toThrow(/cubit/)
    expect(() => read3mf(strToU8('PK no zip'))).toThrow(MeshFileError)
    expect(() => read3mf(zipSync({ 'a.txt': strToU8('x') }))).toThrow(/no 3D/)
  })
  test('3MF transforms move, turn and mirror without turning the faces inside out', () => {
    const { mesh } = read3mf(
      threeMf(sled, {
        unit: 'millimeter',
        item: '<item objectid="1" transform="-1000 0 0 0 1000 0 0 0 1000 5000 0 0"/>',
      }),
    )
    expect(solidProperties(mesh).volume).toBeCloseTo(solidProperties(sled).volume, 9)
    expect(boundsOf(mesh).high[0]).toBeCloseTo(5, 9)
    expect(() => read3mf(threeMf(sled, { item: '<item objectid="1" transform="1 2 3"/>' }))).toThrow(
      /twelve numbers/,
    )
  })
})
