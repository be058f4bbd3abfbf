/**
 * The impeller as it is solved: helical mean lines whose pitch grows evenly with the angle walked, the same trailing edge, nose and root thickness,
 * the tip one gap inside the ring. Skew and rake are left out, as the model has none. Hub fillets are grown into the sections. Key sizes: DIN 6885,
 * from memory, handed in as values. Lengths m, angles rad.
 */
import { bladeLoft, filletGrowth, type MeanLine, type Section } from '../../../shapes/solid/bladeLoft.ts'
import { facetsFor, type Solid, type Workbench } from '../../../shapes/solid/kernel.ts'
import {
  angle,
  defineShape,
  holeOffset,
  inMillimetres,
  length,
  misfit,
  number,
  wanted,
} from './solidShape.ts'

/** Mean line of a blade: z = (P1 θ + (P2 − P1) θ² / 2θw) / 2π. */
export function meanLine(leading: number, trailing: number, wrap: number): MeanLine {
  return {
    angle: (u) => u * wrap,
    along: (u) => (wrap * u * (leading + ((trailing - leading) * u) / 2)) / (2 * Math.PI),
  }
}

/** sections from hub to tip, and least wall round a bore, m */
const span = 24
const leastWall = 3e-3

const values = {
  ring: length('Bore of the ring', 120, 40, 300),
  gap: length('Tip gap', 0.4, 0.1, 5),
  growth: length('Growth in water and sun, on the radius', 0, 0, 3),
  hub: length('Hub at the leading edge', 50, 14, 200),
  hubOut: length('Hub at the trailing edge', 50, 14, 200),
  blades: number('Blades', 3, 1, 8),
  left: number('Blades left away on one side', 0, 0, 7),
  hand: number('Hand: 1 right, -1 left', 1, -1, 1),
  pitch: length('Pitch, leading edge', 108, 20, 600),
  pitchOut: length('Pitch, trailing edge', 108, 20, 600),
  wrap: angle('Wrap', 150, 20, 360),
  root: length('Root thickness', 9, 1, 30),
  tip: length('Tip thickness', 4, 0.8, 20),
  trailing: length('Trailing edge', 1.5, 0.4, 8),
  nose: length('Leading edge radius', 1, 0.2, 8),
  fillet: length('Fillet', 5, 0, 12),
  shaft: length('Shaft', 15, 4, 60),
  key: length('Key width', 5, 0, 20),
  keyHigh: length('Key height in the hub', 2.3, 0, 10),
  sleeve: length('Metal sleeve round the shaft, wall', 0, 0, 10),
  balance: length('Balance hole', 0, 0, 30),
  balanceDeep: length('Balance hole, depth', 0, 0, 60),
  holeOffset,
}

type Values = { [K in keyof typeof values]: number }

/** m of hub before and behind the blades */
const overhang = (n: Pick<Values, 'fillet' | 'root'>) => n.fillet + n.root / 2 + 1e-3

/** Length of the blades along the axis, m. */
export const axialLength = (n: Pick<Values, 'pitch' | 'pitchOut' | 'wrap'>): number =>
  ((n.pitch + n.pitchOut) * n.wrap) / (4 * Math.PI)

export interface RotorPlace {
  tip: number
  /** heights of the leading and trailing edge as it stands to be printed */
  leading: number
  trailing: number
}

/** Where the edges of the blades stand in the finished solid; m. It stands on its trailing end. */
export function rotorPlace(n: Values): RotorPlace {
  const high = axialLength(n) + 2 * overhang(n)
  return { tip: n.ring / 2 - n.gap - n.growth, leading: high - overhang(n), trailing: overhang(n) }
}

function sectionsOf(n: Values, tip: number): Section[] {
  const inner = Math.min(n.hub, n.hubOut) / 2
  const outer = Math.max(n.hub, n.hubOut) / 2
  const line = meanLine(n.pitch, n.pitchOut, n.wrap)
  const thick = (r: number) => n.root + ((n.tip - n.root) * (r - inner)) / (tip - inner)
  const at = (radius: number): Section => ({
    radius,
    line,
    thickest: Math.max(n.trailing, thick(Math.max(inner, radius))),
    nose: n.nose,
    trailing: n.trailing,
    more: filletGrowth(Math.max(0, radius - outer), n.fillet),
  })
  const radii = [0.8 * inner]
  if (outer > inner) radii.push(inner)
  radii.push(outer)
  // close together up the fillet, then evenly to a little past the tip
  const top = Math.min(n.fillet, 0.9 * (tip - outer))
  const up = n.fillet > 0 ? 8 : 0
  for (let i = 1; i <= up; i++) radii.push(outer + top * (1 - Math.cos((Math.PI / 2) * (i / up))))
  const from = outer + (up > 0 ? top : 0)
  const end = tip * 1.01 + 0.2e-3
  for (let i = 1; i <= span; i++) radii.push(from + ((end - from) * i) / span)
  return radii.map(at)
}

function hubOf(b: Workbench, n: Values): Solid {
  const L = axialLength(n)
  const o = overhang(n)
  const [r1, r2] = [n.hub / 2, n.hubOut / 2]
  // the rim of the front end is taken off for the water
  const c = Math.min(1.5e-3, 0.2 * r1, o / 2)
  return b.lathe([
    [0, -o],
    [r1 - c, -o],
    [r1, -o + c],
    [r1, 0],
    [r2, L],
    [r2, L + o],
    [0, L + o],
  ])
}

/** a sleeve has the key in it */
const keyed = (n: Values) => wanted(n.key) && wanted(n.keyHigh) && !wanted(n.sleeve)
/** How far from the axis the hub is cut out, m. */
const bored = (n: Values) => (n.shaft + n.holeOffset) / 2 + n.sleeve + (keyed(n) ? n.keyHigh : 0)

/** What is cut out of the hub for the shaft, its key and the sleeve. */
function drive(b: Workbench, n: Values): Solid {
  const high = axialLength(n) + 2 * overhang(n)
  const low = -overhang(n)
  const r = (n.shaft + n.holeOffset) / 2 + n.sleeve
  const hole = b.bore(r, high + 2e-3, low - 1e-3)
  if (!keyed(n)) return hole
  const half = (n.key + n.holeOffset) / 2
  return b.join(hole, b.box([-half, 0, low - 1e-3], [half, r + n.keyHigh, low + high + 1e-3]))
}

/** What lies between the middles of two blades at the hub, square to them, m: roots and fillets have to go in. */
export function rootRoom(n: Pick<Values, 'hub' | 'hubOut' | 'pitch' | 'pitchOut' | 'blades'>): number {
  const round = Math.PI * Math.min(n.hub, n.hubOut)
  const beta = Math.atan2(Math.min(n.pitch, n.pitchOut), round)
  return (round / n.blades) * Math.sin(beta)
}

function checked(n: Values): void {
  const fail = (name: string, says: string) => misfit(undefined, name, n[name as keyof Values], says)
  const { tip } = rotorPlace(n)
  const hub = Math.max(n.hub, n.hubOut)
  if (tip < hub / 2 + 3e-3)
    throw fail('hub', `must leave blades of at least 3 mm inside a tip radius of ${inMillimetres(tip)}`)
  if (n.hand === 0) throw new RangeError('hand: 0 is neither 1 (right) nor -1 (left)')
  const wall = Math.min(n.hub, n.hubOut) / 2 - bored(n)
  if (wall < leastWall)
    throw fail(
      'shaft',
      `leaves ${inMillimetres(wall)} of hub round it; at least ${inMillimetres(leastWall)} is wanted`,
    )
  if (n.left >= n.blades) throw new RangeError(`left: ${n.left}, must be below the ${n.blades} blades`)
  const room = rootRoom(n)
  if (n.blades > 1 && n.root + 2 * n.fillet > room)
    throw fail('root', `and its fillets must stay below ${inMillimetres(room)} between ${n.blades} blades`)
  if (wanted(n.balance) && n.balance + 4e-3 > wall)
    throw fail('balance', `must leave 2 mm either side in a hub wall of ${inMillimetres(wall)}`)
}

export const impeller = defineShape({
  title: 'Impeller',
  values,
  build: (b, { n }) => {
    checked(n)
    const { tip } = rotorPlace(n)
    const hand = n.hand < 0 ? -1 : 1
    const facets = facetsFor(tip, b.chord)
    // corners gather at both edges: in the middle they are π/2 apart of an even share
    const points = Math.max(60, Math.ceil((Math.PI / 2) * ((facets * n.wrap) / (2 * Math.PI))))
    const raw = b.given(bladeLoft(sectionsOf(n, tip), points, hand))
    const blade = b.common(raw, b.rod(tip, axialLength(n) + 4 * overhang(n), -2 * overhang(n)))
    const step = (2 * Math.PI) / n.blades
    const blades = Array.from({ length: n.blades - n.left }, (_, i) =>
      b.turned(blade, 0, 0, step * (i + n.left)),
    )
    const hub = hubOf(b, n)
    const high = axialLength(n) + 2 * overhang(n)
    // blades that reach past the ends of a short hub are cut level
    const whole = b.common(b.join(hub, ...blades), b.rod(tip + 1e-3, high, -overhang(n)))
    const tools = [drive(b, n)]
    if (n.left > 0 && wanted(n.balance) && wanted(n.balanceDeep)) {
      // opposite the middle of the blades that are not there
      const away = step * ((n.left - 1) / 2) + (hand * n.wrap) / 2 + Math.PI
      const at = (Math.min(n.hub, n.hubOut) / 2 + bored(n)) / 2
      const deep = Math.min(n.balanceDeep, high - 3e-3)
      const hole = b.bore(n.balance / 2, deep + 1e-3, -overhang(n) - 1e-3)
      tools.push(b.moved(hole, at * Math.cos(away), at * Math.sin(away), 0))
    }
    const solid = b.cut(whole, ...tools)
    // the water comes from above: printed standing on its trailing end
    const up = b.turned(solid, Math.PI, 0, 0)
    return [{ name: 'impeller', solid: b.moved(up, 0, 0, axialLength(n) + overhang(n)) }]
  },
})
