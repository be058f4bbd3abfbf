/** What to do about a joint that slips, in the order a builder should try it; each build is answered with the same draws as the joint itself. */
import type { FileChange } from '../../base/answers/decision.ts'
import { formatQuantity } from '../../base/units/format.ts'
import { usualTorque } from './boltTorque.ts'
import type { DriveLimits } from './driveLimits.ts'
import { exactly, type Joint, type Locking } from './driveLinks.ts'
import { boltOf, classOf, nextSize } from './metricBolts.ts'
import { jointLasts, type Lasting, stripPull } from './partMargins.ts'

export interface Fix {
  joint: Joint
  lasts: Lasting
  changes: readonly FileChange[]
}

/** locking that keeps a bolt from turning in this build: a nut where it has one, wedges on hard seats, wire */
const goodLocking = (j: Joint): Locking =>
  j.into === 'nut' || (j.data.plastic && !j.sleeves) ? 'nut' : 'wedge washers'

/** half a newton metre finely, whole ones above ten: as a torque wrench is set */
const asSet = (torque: number): number => (torque > 10 ? Math.floor(torque) : Math.floor(2 * torque) / 2)

/** The joint built as its bolts want it: tightened by a wrench to three quarters of what they stand. */
function tightened(j: Joint): Joint {
  const torque = asSet(usualTorque(j.bolt, j.strength))
  // a value that is changed keeps the width of its doubt, one that was never given is as exact as it is set
  const was = j.torque ?? exactly(torque)
  const step = torque - was.value
  return { ...j, torque: { value: torque, low: was.low + step, high: was.high + step } }
}

const held = (j: Joint): Joint => ({
  ...j,
  sleeves: j.data.plastic,
  into: j.data.plastic && j.into !== 'nut' ? 'nut' : j.into,
  locking: goodLocking(j),
  engaged: j.data.plastic && j.into !== 'nut' ? 0.8 * j.bolt.d : j.engaged,
})

const stronger = (j: Joint): Joint => ({ ...j, className: 'steel 8.8', strength: classOf('steel 8.8') })

function larger(j: Joint): Joint {
  const next = nextSize(j.bolt.size)
  if (!next) return j
  const bolt = boltOf(next)
  return { ...j, bolt, engaged: (j.engaged * bolt.d) / j.bolt.d }
}

/** Builds to try, mildest first. */
function builds(j: Joint): Joint[] {
  const base = held(j)
  const strong = stronger(base)
  const next = larger(strong)
  const more: Joint = { ...next, number: next.number + 2 }
  return [base, strong, next, larger(next), more].map(tightened)
}

/** The mildest build that keeps its margin through a season; the strongest there is where none does. Peaks N·m by draw. */
export function fixOf(j: Joint, peaks: Float64Array, part: number, limits: DriveLimits): Fix {
  const rooms = builds(j).filter((b) => room(b))
  const tried = (rooms.length > 0 ? rooms : [tightened(held(j))]).map((joint) => ({
    joint,
    lasts: jointLasts(joint, peaks, part),
  }))
  const keeps = ({ lasts }: { lasts: Lasting }) =>
    lasts.margin.season.value >= limits.keeps.value && lasts.margin.season.low >= limits.slips.value
  const most = tried.reduce((a, b) => (b.lasts.margin.season.value > a.lasts.margin.season.value ? b : a))
  const best = tried.find(keeps) ?? most
  return { ...best, changes: changesOf(j, best.joint) }
}

/** Heads have room on the circle, and the thread stands the pull. */
const room = (j: Joint): boolean =>
  j.number * 1.6 * j.bolt.d <= 2 * Math.PI * j.radius.value &&
  stripPull(j) > 0.75 * j.strength.proof * (Math.PI / 4) * (0.85 * j.bolt.d) ** 2

function changesOf(from: Joint, to: Joint): FileChange[] {
  const torque = (x: Joint) => (x.torque ? formatQuantity(x.torque.value, 'torque', 'N·m', 3) : 'not given')
  const word = (key: string, a: string, b: string): FileChange[] =>
    a === b ? [] : [{ path: `${from.path}.${key}`, from: a, to: b }]
  const yes = (x: boolean) => (x ? 'yes' : 'no')
  return [
    ...word('sleeves', yes(from.sleeves), yes(to.sleeves)),
    ...word('into', from.into, to.into),
    ...word('locking', from.locking, to.locking),
    ...word('class', from.className, to.className),
    ...word('bolts', from.bolt.size, to.bolt.size),
    ...word('number', String(from.number), String(to.number)),
    ...word('torque', torque(from), torque(to)),
  ]
}
