import { expect, test } from 'vitest'
import { developCone } from './cone.ts'
import { deckSkin } from './deckSkin.ts'
import { developed, inGores } from './development.ts'
import { developElbow } from './elbow.ts'
import { foldedMesh } from './foldedMesh.ts'
import { developOblique } from './obliqueCone.ts'
import { cross, dot, minus, type Vec } from './placing.ts'
import { developBox } from './profile.ts'
import { foldAngles, proveFold, refold } from './refold.ts'
import { developSaddle } from './saddle.ts'
import { tight } from './seam.ts'
import { ShapeFault } from './shapeFault.ts'
import { developSquareToRound } from './squareToRound.ts'
import { type Strip, spaceAt, spaceRim, stripArea } from './strip.ts'

const sheeting = { id: 'o', title: 'Part', thickness: 1e-3, seam: tight }
const cone = { startRadius: 0.06, endRadius: 0.03, height: 0.2 }

/** part of the facets whose marked face looks away from the part's middle */
function facingOut(strip: Strip): number {
  const all = [...spaceRim(strip, 'near'), ...spaceRim(strip, 'far')]
  const middle = [0, 1, 2].map((k) => all.reduce((s, p) => s + p[k]!, 0) / all.length) as unknown as Vec
  let [out, count] = [0, 0]
  for (let i = 0; i + 1 < strip.count; i++) {
    const [a, b, c, d] = [
      spaceAt(strip, i, 'near'),
      spaceAt(strip, i, 'far'),
      spaceAt(strip, i + 1, 'near'),
      spaceAt(strip, i + 1, 'far'),
    ]
    const n = cross(minus(d, a), minus(b, c))
    if (dot(n, n) < 1e-22) continue
    count++
    if (dot(n, minus(a, middle)) > 0) out++
  }
  return out / count
}

test('every pattern is drawn as seen from outside: folded away from the reader, the marked face is out', () => {
  const pipes = developElbow(
    { startRadius: 0.03, endRadius: 0.03, bendRadius: 0.09, turn: 1, joints: 3 },
    sheeting,
    1,
  )
  const closed = [
    developCone(cone, sheeting),
    ...pipes.pieces,
    developOblique({ baseRadius: 0.05, topRadius: 0.03, height: 0.1, offset: 0.02 }, sheeting),
    developSquareToRound(
      { length: 0.1, width: 0.08, radius: 0.03, height: 0.08, offsetX: 0, offsetY: 0 },
      sheeting,
    ),
    developSaddle({ branchRadius: 0.02, headerRadius: 0.03, angle: 1, offset: 0, length: 0.2 }, sheeting),
    developBox({ a: 0.1, b: 0.08, width: 0.2, inside: 5e-3, k: 0.4 }, sheeting),
  ]
  for (const made of closed) {
    expect(facingOut(made.strips[0]!)).toBe(1)
    expect(made.area).toBeGreaterThan(0)
  }
  const grid = [0, 0.5, 1].map((x) => [-0.3, 0, 0.3].map((y): Vec => [x, y, -y * y]))
  for (const band of deckSkin(grid, 1e-3, sheeting).pieces[0]!.strips) {
    const [a, b, c] = [spaceAt(band, 0, 'near'), spaceAt(band, 0, 'far'), spaceAt(band, 1, 'near')]
    expect(cross(minus(c, a), minus(b, a))[2]).toBeGreaterThan(0)
  }
})

test('a pattern that is wrong does not fold to its surface: 1 mm too long, mirrored, or a sector of another angle', () => {
  const { strips } = developCone(cone, sheeting)
  const strip = strips[0]!
  const bad = (change: (x: number, y: number) => [number, number]): Strip => {
    const flat = strip.flat.slice()
    for (let o = 0; o < flat.length; o += 2) flat.set(change(flat[o]!, flat[o + 1]!), o)
    return { ...strip, flat }
  }
  expect(proveFold(bad((x, y) => [x, y * 1.005])).edge).toBeGreaterThan(1e-4)
  expect(proveFold(bad((x, y) => [x * 1.003, y])).edge).toBeGreaterThan(1e-4)
  expect(proveFold(bad((x, y) => [-x, y])).edge).toBeGreaterThan(1e-3)
  expect(proveFold(bad((x, y) => [x * 1.003, y])).kept.rim).toBeGreaterThan(1e-4)
})

test('fold angles of a full turn add up to it', () => {
  const { strips } = developCone({ ...cone, endRadius: cone.startRadius }, sheeting)
  const sum = foldAngles(strips[0]!).reduce((s, a) => s + a, 0)
  expect(sum).toBeCloseTo((2 * Math.PI * 359) / 360, 9)
  expect(stripArea(refold(strips[0]!))).toBe(stripArea(strips[0]!))
})

test('gores have in all the area of the part, and meet each other when folded', () => {
  const whole = developCone(cone, sheeting)
  const gores = inGores(whole, 3, sheeting)
  expect(gores.reduce((s, g) => s + g.area, 0)).toBeCloseTo(whole.area, 9)
  for (const g of gores) expect(proveFold(g.strips[0]!).edge).toBeLessThan(1e-4)
  expect(new Set(gores.map((g) => g.piece.id)).size).toBe(3)
  expect(() => inGores(whole, 1, sheeting)).toThrow(/gores/)
})

test('what is wrong carries field, value and limit, and what to do', () => {
  try {
    developed(developCone(cone, sheeting).strips[0]!, { ...sheeting, thickness: 1 })
    expect.unreachable()
  } catch (e) {
    expect(e).toBeInstanceOf(ShapeFault)
    expect(e).toMatchObject({ field: 'thickness', value: 1, limit: 0.02 })
  }
})

test('the shell of a folded pattern is closed, faces out, and holds its sheet’s volume', () => {
  const made = developCone(cone, sheeting)
  const { corners, triangles } = foldedMesh(made.strips[0]!, 1e-3)
  const edges = new Map<string, number>()
  let volume = 0
  for (let t = 0; t < triangles.length; t += 3) {
    const [a, b, c] = [0, 1, 2].map((k) => {
      const o = 3 * triangles[t + k]!
      return [corners[o]!, corners[o + 1]!, corners[o + 2]!] as Vec
    }) as [Vec, Vec, Vec]
    volume += dot(a, cross(b, c)) / 6
    for (const k of [0, 1, 2]) {
      const [from, to] = [triangles[t + k]!, triangles[t + ((k + 1) % 3)]!]
      const key = from < to ? `${from} ${to}` : `${to} ${from}`
      edges.set(key, (edges.get(key) ?? 0) + (from < to ? 1 : -1))
    }
  }
  expect([...edges.values()].every((n) => n === 0)).toBe(true)
  expect(volume / (made.area * 1e-3)).toBeCloseTo(1, 3)
})
