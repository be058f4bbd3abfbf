import fc from 'fast-check'
import { strFromU8, unzipSync } from 'fflate'
import { STLLoader } from 'three/examples/jsm/loaders/STLLoader.js'
import { describe, expect, test } from 'vitest'
import type { SolidMesh } from '../../base/answers/madePart.ts'
import { flawsOf } from '../../physics/solid/closed.ts'
import { solidProperties } from '../../physics/solid/integrals.ts'
import { read3mf } from '../../physics/solid/read3mf.ts'
import { atWorkbench, facetsFor } from './kernel.ts'
import { writeStl } from './stl.ts'
import { thinWall } from './thinWall.ts'
import { threadSweep } from './threadSweep.ts'
import { write3mf } from './threeMf.ts'

const chord = 0.03e-3
const asMesh = ({ corners, triangles }: SolidMesh) => ({ points: corners, triangles })
/** an ISO-like section: M27 with a pitch of 1.5 mm */
const section = {
  pitch: 1.5e-3,
  z: [0.1e-3, 0.6e-3, 0.9e-3, 1.4e-3],
  r: [13.4e-3, 12.6e-3, 12.6e-3, 13.4e-3],
}

describe('a swept thread', () => {
  test('is closed and outward for any pitch, length, facets, hand, lead-in and fade', () => {
    fc.assert(
      fc.property(
        fc.record({
          pitch: fc.double({ min: 0.5e-3, max: 6e-3, noNaN: true }),
          turns: fc.double({ min: 0.3, max: 9, noNaN: true }),
          facets: fc.integer({ min: 12, max: 90 }),
          hand: fc.constantFrom(1 as const, -1 as const),
          hollow: fc.boolean(),
          lead: fc.boolean(),
          fade: fc.double({ min: 0, max: 1, noNaN: true }),
        }),
        ({ pitch: P, turns, lead, ...o }) => {
          const mesh = threadSweep({
            section: {
              pitch: P,
              z: [0.1 * P, 0.4 * P, 0.6 * P, 0.9 * P],
              r: [14e-3, 14e-3 - P / 2, 14e-3 - P / 2, 14e-3],
            },
            length: turns * P,
            ...(lead ? { lead: [o.hollow ? 14.2e-3 : 13.8e-3 - P / 2, undefined] as const } : {}),
            ...o,
          })
          expect(flawsOf(asMesh(mesh), { touching: false })).toEqual([])
          expect(solidProperties(asMesh(mesh)).volume).toBeGreaterThan(0)
        },
      ),
      { numRuns: 60 },
    )
  })

  test('volume comes to length times the mean of πr², with an error that falls as the square of the facets', () => {
    const P = section.pitch
    let mean = 0
    const steps = 4000
    for (let i = 0; i < steps; i++) {
      const z = ((i + 0.5) / steps) * P
      const r =
        z < 0.1e-3 || z > 1.4e-3
          ? 13.4e-3
          : z < 0.6e-3
            ? 13.4e-3 - (0.8 * (z - 0.1e-3)) / 0.5
            : z < 0.9e-3
              ? 12.6e-3
              : 12.6e-3 + (0.8 * (z - 0.9e-3)) / 0.5
      mean += (Math.PI * r * r) / steps
    }
    const off = (n: number) => {
      const v = solidProperties(asMesh(threadSweep({ section, length: 6 * P, facets: n }))).volume
      return Math.abs(v / (6 * P * mean) - 1)
    }
    expect(off(96)).toBeLessThan(2e-3)
    expect(off(24) / off(96)).toBeGreaterThan(12)
  })

  test('a left-hand thread has the same volume and is outward too', () => {
    const of = (hand: 1 | -1) =>
      solidProperties(asMesh(threadSweep({ section, length: 8e-3, facets: 48, hand }))).volume
    expect(of(-1)).toBeCloseTo(of(1), 12)
  })

  test('a length of no turn and facets that are none are named', () => {
    expect(() => threadSweep({ section, length: 0, facets: 48 })).toThrow(/length/)
    expect(() => threadSweep({ section, length: 5e-3, facets: 5 })).toThrow(/facets/)
  })
})

describe('the workbench', () => {
  test('a facet stays within the chord error asked for, and a bore leaves the room asked for', async () => {
    await atWorkbench(chord, (b) => {
      const rod = b.mesh(b.rod(20e-3, 5e-3))
      const bore = b.mesh(b.bore(20e-3, 5e-3))
      const least = (m: SolidMesh) => {
        const n = facetsFor(20e-3, chord)
        let r = 0
        for (let i = 0; i < m.corners.length; i += 3)
          r = Math.max(r, Math.hypot(m.corners[i]!, m.corners[i + 1]!))
        return r * Math.cos(Math.PI / n)
      }
      expect(20e-3 - least(rod)).toBeLessThan(chord)
      expect(least(bore)).toBeGreaterThan(20e-3 - 1e-8)
    })
  })

  test('a threaded hole cut from a block is closed, and its volume is block less rod', async () => {
    await atWorkbench(chord, (b) => {
      const rod = b.given(threadSweep({ section, length: 12e-3, facets: 96, hollow: true }))
      const block = b.rod(20e-3, 10e-3, 1e-3)
      const nut = b.mesh(b.cut(block, rod))
      expect(flawsOf(asMesh(nut), { touching: false })).toEqual([])
      const { volume } = solidProperties(asMesh(nut))
      const inner = solidProperties(asMesh(b.mesh(b.common(block, rod)))).volume
      expect(volume + inner).toBeCloseTo(solidProperties(asMesh(b.mesh(block))).volume, 10)
    })
  })

  test('an open surface is refused', async () => {
    await atWorkbench(chord, (b) => {
      const open = { corners: Float64Array.of(0, 0, 0, 1, 0, 0, 0, 1, 0), triangles: Uint32Array.of(0, 1, 2) }
      expect(() => b.mesh(b.given(open))).toThrow(RangeError)
    })
  })

  test('a wall of two millimetres is found to be two millimetres', async () => {
    await atWorkbench(chord, (b) => {
      const cup = b.cut(
        b.box([0, 0, 0], [30e-3, 30e-3, 20e-3]),
        b.box([2e-3, 3e-3, 3e-3], [27e-3, 27e-3, 21e-3]),
      )
      expect(thinWall(b.mesh(cup)).wall).toBeCloseTo(2e-3, 7)
    })
  })
})

describe('files for the printer', () => {
  const nut = () =>
    atWorkbench(chord, (b) =>
      b.mesh(
        b.cut(
          b.rod(20e-3, 10e-3),
          b.moved(b.given(threadSweep({ section, length: 12e-3, facets: 64 })), 0, 0, -1e-3),
        ),
      ),
    )

  test('an STL is read back by another library: same triangles, millimetres, normals out', async () => {
    const mesh = await nut()
    const bytes = writeStl(mesh, 'nut')
    const read = new STLLoader().parse(bytes.buffer)
    const p = read.getAttribute('position')
    expect(p.count).toBe(mesh.triangles.length)
    read.computeBoundingBox()
    expect(read.boundingBox!.max.x).toBeCloseTo(20, 3)
    expect(read.boundingBox!.max.z).toBeCloseTo(10, 4)
    let volume = 0
    for (let i = 0; i < p.count; i += 3) {
      const c = (k: number) => [p.getX(i + k), p.getY(i + k), p.getZ(i + k)] as const
      const [a, b, d] = [c(0), c(1), c(2)]
      volume +=
        (a[0] * (b[1] * d[2] - b[2] * d[1]) +
          a[1] * (b[2] * d[0] - b[0] * d[2]) +
          a[2] * (b[0] * d[1] - b[1] * d[0])) /
        6
    }
    expect(volume).toBeCloseTo(1e9 * solidProperties(asMesh(mesh)).volume, 0)
  })

  test('a 3MF has units, names, and the same closed mesh, read back by a reader of its own', async () => {
    const mesh = await nut()
    const bytes = write3mf([{ name: 'cap <A> & "ring"', mesh }])
    const back = read3mf(bytes)
    expect(back.unit).toBe('millimeter')
    expect(flawsOf(back.mesh, { touching: false })).toEqual([])
    expect(solidProperties(back.mesh).volume / solidProperties(asMesh(mesh)).volume).toBeCloseTo(1, 4)
    expect(strFromU8(unzipSync(bytes)['3D/3dmodel.model']!)).toContain(
      'name="cap &lt;A&gt; &amp; &quot;ring&quot;"',
    )
    expect(Object.keys(unzipSync(bytes))).toEqual(['[Content_Types].xml', '_rels/.rels', '3D/3dmodel.model'])
  })

  test('the same part is the same file, byte by byte', async () => {
    const mesh = await nut()
    expect(write3mf([{ name: 'a', mesh }])).toEqual(write3mf([{ name: 'a', mesh }]))
  })
})
