/**
 * Speed of floating: equilibrium, righting arm and the rider's room on a hull of 10 000 triangles, against a plain first version
 * (objects, a lid built for every cut, differences for derivatives) and against the targets of the Float page.
 */

import { floaterOf, reloaded } from '../src/hull/afloat/load.ts'
import { settle } from '../src/hull/afloat/settle.ts'
import { hullFromFew } from '../src/hull/lines/hullBody.ts'
import { solidProperties } from '../src/physics/solid/integrals.ts'
import { type Mesh, makeMesh } from '../src/physics/solid/mesh.ts'
import { riderEnvelope } from '../src/trades/float/envelope.ts'
import { rightingCurve } from '../src/trades/float/righting.ts'
import { alloyOf } from '../src/trades/strength/alloys.ts'
import { foams } from '../src/trades/strength/foams.ts'
import { lightestDeck } from '../src/trades/strength/lightest.ts'
import { line, median } from './best.ts'

const deg = Math.PI / 180
const hull = hullFromFew(
  {
    length: 2.4,
    beam: 0.8,
    chineBeam: 0.7,
    depth: 0.24,
    deadrise: 6 * deg,
    noseDeadrise: 24 * deg,
    noseRise: 0.16,
    noseRiseFrom: 1.55,
  },
  { bottom: 18, side: 12, deck: 12, along: 58 },
)
const [mass, x, z] = [142.5, 0.95, 0.28]
const load = {
  bodies: [{ name: 'hull', mesh: hull.mesh, share: 1 }],
  mass,
  centre: [x, 0, z] as const,
  density: 999,
}
const floater = floaterOf(load)
console.log(`${hull.mesh.triangles.length / 3} triangles`)

type P = [number, number, number]

/** The plain version of one look: turn every point, clip every face into new arrays, close the cut with a fan, integrate. */
function plainLook(mesh: Mesh, h: number, trim: number, heel: number): { volume: number; centre: P } {
  const [st, ct, sp, cp] = [Math.sin(trim), Math.cos(trim), Math.sin(heel), Math.cos(heel)]
  const turned: P[] = []
  for (let i = 0; i < mesh.points.length; i += 3) {
    const [a, b, c] = [mesh.points[i]!, mesh.points[i + 1]!, mesh.points[i + 2]!]
    turned.push([ct * a + st * sp * b - st * cp * c, cp * b + sp * c, st * a - sp * ct * b + cp * ct * c - h])
  }
  const kept: P[][] = []
  const rim: [P, P][] = []
  for (let t = 0; t < mesh.triangles.length; t += 3) {
    const corners = [0, 1, 2].map((k) => turned[mesh.triangles[t + k]!]!)
    const out: P[] = []
    let leaves: P | undefined
    let enters: P | undefined
    for (let k = 0; k < 3; k++) {
      const [a, b] = [corners[k]!, corners[(k + 1) % 3]!]
      if (a[2] < 0) out.push(a)
      if (a[2] < 0 !== b[2] < 0) {
        const u = a[2] / (a[2] - b[2])
        const p: P = [a[0] + u * (b[0] - a[0]), a[1] + u * (b[1] - a[1]), 0]
        out.push(p)
        if (a[2] < 0) leaves = p
        else enters = p
      }
    }
    for (let k = 2; k < out.length; k++) kept.push([out[0]!, out[k - 1]!, out[k]!])
    if (leaves && enters) rim.push([leaves, enters])
  }
  const hub = rim[0]?.[0]
  const soup = [...kept, ...(hub ? rim.map(([a, b]) => [hub, b, a]) : [])]
  if (soup.length === 0) return { volume: 0, centre: [0, 0, 0] }
  const p = solidProperties(
    makeMesh(
      soup.flat(2),
      Array.from({ length: 3 * soup.length }, (_, i) => i),
    ),
  )
  return { volume: Math.abs(p.volume), centre: p.centroid }
}

/** Newton on draft and trim with central differences of the plain look. */
function plainSettle(): { h: number; trim: number } {
  let [h, trim] = [0.1, 0]
  const miss = (a: number, b: number): [number, number] => {
    const { volume, centre } = plainLook(hull.mesh, a, b, 0)
    return [999 * volume - mass, 999 * volume * centre[0] - mass * (Math.cos(b) * x - Math.sin(b) * z)]
  }
  for (let i = 0; i < 12; i++) {
    const [f, g] = miss(h, trim)
    if (Math.abs(f) < 1e-8 && Math.abs(g) < 1e-8) break
    const d = 1e-5
    const [fh, gh] = [0, 1].map((k) => (miss(h + d, trim)[k]! - miss(h - d, trim)[k]!) / (2 * d)) as [
      number,
      number,
    ]
    const [ft, gt] = [0, 1].map((k) => (miss(h, trim + d)[k]! - miss(h, trim - d)[k]!) / (2 * d)) as [
      number,
      number,
    ]
    const det = fh * gt - ft * gh
    h -= (f * gt - ft * g) / det
    trim -= (fh * g - gh * f) / det
  }
  return { h, trim }
}

const [fast, plain] = [settle(floater).value, plainSettle()]
console.log(
  `same answer: draft ${(fast.h - plain.h).toExponential(1)} m, trim ${(fast.trim - plain.trim).toExponential(1)} rad apart`,
)
const naive = median(() => void plainSettle(), 5)
line('equilibrium, plain first version', naive, naive, 'itself')
const rest = median(() => void settle(floater), 41)
line('equilibrium from nothing, median', rest, naive, 'the plain version')
line('equilibrium from nothing, median', rest, 5, 'its target of 5 ms')
const near = settle(floater).value
line(
  'equilibrium after a move of the rider, median',
  median((i) => void settle(reloaded(floater, mass, [x + 0.002 * (i % 20), 0.001 * (i % 10), z]), near)),
  1000 / 60,
  'a frame at 60 a second',
)
const curve = median(() => void rightingCurve(floater), 9)
line('righting arm to 180° in 2° steps, median', curve, 150, 'its target of 150 ms')
line('righting arm, median', curve, 91 * naive, '91 plain equilibria')
const craft = { ...load, mass: 64.5, centre: [0.95, 0, 0.14] as const }
const room = median(() => void riderEnvelope({ hull, craft, rider: 78, riderHeight: 0 }), 5)
line('rider’s room on a 5 cm grid, median', room, 1000, 'its target of 1 s')
line(
  'lightest deck for a bay, all builds',
  median(
    () =>
      void lightestDeck({
        length: 0.4,
        width: 0.35,
        rider: 85,
        alloy: alloyOf('5052-H32'),
        welded: false,
        held: false,
        foams,
        foamDepth: 0.15,
      }),
    5,
  ),
  1000,
  'a second',
)
