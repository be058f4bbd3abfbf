/**
 * A rectangle drawn into a circle: a flat triangle on each side and a quarter of an oblique cone from each corner; exactly developable.
 * Handbooks of sheet-metal pattern drafting (transition pieces by triangulation).
 */
import { inMm } from '../base/answers/amounts.ts'
import { say } from '../base/answers/sentence.ts'
import { type Development, developed, type Sheeting } from './development.ts'
import type { Vec } from './placing.ts'
import { extremes, mustLie } from './shapeFault.ts'
import { type Ruling, unrolled } from './unroll.ts'

/** Rectangle round z at z = 0, its length along x; circle round (offsetX, offsetY, height). Mean sizes, m. */
export interface SquareToRound {
  length: number
  width: number
  radius: number
  height: number
  offsetX: number
  offsetY: number
}

/** rulings kept and laid over each corner */
const kept = 96
const finer = 4

/** ShapeFault naming the value that is out of range. */
function checkTransition(s: SquareToRound): void {
  mustLie('length', s.length, extremes.least, extremes.most)
  mustLie('width', s.width, extremes.least, extremes.most)
  mustLie('radius', s.radius, extremes.least, extremes.most)
  mustLie('height', s.height, extremes.least, extremes.most)
  mustLie('offsetX', s.offsetX, -10 * s.height, 10 * s.height)
  mustLie('offsetY', s.offsetY, -10 * s.height, 10 * s.height)
}

const corners = [
  [1, 1],
  [-1, 1],
  [-1, -1],
  [1, -1],
] as const

const round = (s: SquareToRound, psi: number): Vec => [
  s.offsetX + s.radius * Math.cos(psi),
  s.offsetY + s.radius * Math.sin(psi),
  s.height,
]

const cornerOf = (s: SquareToRound, q: number): Vec => [
  (corners[q % 4]![0] * s.length) / 2,
  (corners[q % 4]![1] * s.width) / 2,
  0,
]

/** True lengths from the corner in the first quarter to the circle at azimuth ψ, rad from x; m. */
export function cornerElement(s: SquareToRound, psi: number): number {
  const [a, b] = [cornerOf(s, 0), round(s, psi)]
  return Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2])
}

/** Flat angle at the corner in the first quarter, rad; ShapeFault naming the value that is out of range. */
export function cornerSector(s: SquareToRound): number {
  checkTransition(s)
  const n = 4 * kept * finer
  let sum = 0
  for (let i = 0; i < n; i++) {
    const [from, to] = [i, i + 1].map((k) => (k * Math.PI) / (2 * n)) as [number, number]
    const [a, b] = [cornerElement(s, from), cornerElement(s, to)]
    const [p, q] = [round(s, from), round(s, to)]
    const chord = (p[0] - q[0]) ** 2 + (p[1] - q[1]) ** 2
    sum += Math.acos(Math.min(1, (a * a + b * b - chord) / (2 * a * b)))
  }
  return sum
}

/** Pattern of the transition, its seam up the middle of the side at +x. ShapeFault naming the value that is out of range. */
export function developSquareToRound(s: SquareToRound, sheeting: Sheeting): Development {
  checkTransition(s)
  const seamFoot: Vec = [s.length / 2, 0, 0]
  const rulings: Ruling[] = [[seamFoot, round(s, 0)]]
  for (let q = 0; q < 4; q++)
    for (let i = 0; i <= kept * finer; i++)
      rulings.push([cornerOf(s, q), round(s, ((q + i / (kept * finer)) * Math.PI) / 2)])
  rulings.push([seamFoot, round(s, 2 * Math.PI)])
  const fan = kept * finer + 1
  const strip = unrolled(
    rulings,
    true,
    (i) => i === 0 || i === rulings.length - 1 || ((i - 1) % fan) % finer === 0,
  )
  const per = kept + 1
  // bends in the corners only, six to a quarter; ticks where the round end meets the middles of the sides
  const rolls = [0, 1, 2, 3].flatMap((q) => [0, 1, 2, 3, 4, 5, 6].map((k) => 1 + q * per + (k * kept) / 6))
  const ticks = [0, 1, 2, 3, 4].map((q) => Math.min(strip.count - 1, q * per + (q === 0 ? 0 : 1)))
  return developed(strip, sheeting, [say`corner element ${inMm(cornerElement(s, Math.PI / 4), 0.1)}`], {
    rolls,
    near: ticks,
    far: ticks,
  })
}
