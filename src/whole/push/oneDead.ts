/**
 * One engine dead: what is left, by its place on the shaft. On one shaft it is dragged round (trades/engine/deadDrag.ts), behind a
 * one-way clutch it stands still, with a jet each only its own jet is gone. Ranges by draws of the engines' doubts, the drag of the
 * dead one and the hull's (ISO/IEC Guide 98-3/Suppl. 1:2008); what else the balance doubts is added as squares.
 */

import type { Range } from '../../base/answers/solved.ts'
import { spreadPoint } from '../../base/numerics/lowDiscrepancy.ts'
import type { Craft } from '../../craft/index.ts'
import { dragAt } from '../../trades/engine/deadDrag.ts'
import type { SolvedCurves } from '../../trades/engine/enginesFromCraft.ts'
import type { LeftWithOneDead, OneDead } from './balanceTypes.ts'
import { type Leeway, type MapStore, modelFromCraft, shaftsOf } from './craftModel.ts'
import { type Doubt, doubtsOf, leantBy } from './draws.ts'
import { type CraftModel, idleOf, propel } from './propulsionModel.ts'
import { type DragTable, dragTableOf, quickSums } from './quickSums.ts'

/** draws of the doubts; the middle 95 % of them is the range */
const draws = 24

/** What is left in one case: engine rotations tied up and at the top speed (rev/s), pull N, top speed m/s. */
interface Case {
  stalls: boolean
  rotation: number
  topRotation: number
  pull: number
  topSpeed: number
  planes: boolean
}

const stalled: Case = {
  stalls: true,
  rotation: Number.NaN,
  topRotation: Number.NaN,
  pull: 0,
  topSpeed: 0,
  planes: false,
}

/** `idle`: factor on the idle speeds below which living engines die. */
function caseOf(model: CraftModel, table: DragTable, idle = 1): Case {
  const tied = propel(model, 0, model.units.map(idleOf))
  const alive = model.units.findIndex((u) => u.shaft.engines.some((e) => e.running))
  const unit = model.units[alive]
  if (!unit) return stalled
  const { ratio, engines } = unit.shaft
  const rotation = tied.states[alive]!.rotation * ratio
  const least = idle * Math.max(0, ...engines.filter((e) => e.running).map((e) => e.idle))
  if (!tied.steady || !(rotation >= least)) return stalled
  const sums = quickSums(model, table)
  const topSpeed = Number.isFinite(sums.topSpeed) ? sums.topSpeed : 0
  const there = propel(
    model,
    topSpeed,
    tied.states.map((s) => s.rotation),
  )
  return {
    stalls: false,
    rotation,
    topRotation: there.states[alive]!.rotation * ratio,
    pull: tied.thrust,
    topSpeed,
    planes: topSpeed > (table.hump?.to ?? 0),
  }
}

/** The craft with engine `index` off. */
function withDead(craft: Craft, index: number): Craft {
  const engines = craft.engines.map((e, i) =>
    i === index ? { ...e, running: false } : e,
  ) as Craft['engines']
  return { ...craft, engines }
}

const freed = (craft: Craft): Craft => ({ ...craft, drive: { ...craft.drive, clutch: 'one-way' } })

/** What the draws move: engines, their curves, and the drag of the hull. */
const counts = (d: Doubt) => d.moves.startsWith('engine') || d.moves === 'drag' || /^engines\./.test(d.path)

/** Middle 95 % of values, ends included by straight lines between. */
function middle(values: readonly number[]): { low: number; high: number } {
  const sorted = values.filter(Number.isFinite).sort((a, b) => a - b)
  if (sorted.length === 0) return { low: Number.NaN, high: Number.NaN }
  const at = (part: number) => {
    const x = part * (sorted.length - 1)
    const k = Math.min(sorted.length - 2, Math.floor(x))
    return k < 0 ? sorted[0]! : sorted[k]! + (x - k) * (sorted[k + 1]! - sorted[k]!)
  }
  return { low: at(0.025), high: at(0.975) }
}

export interface DeadOptions {
  maps: MapStore
  solved?: SolvedCurves
  /** ranges of the craft as it is, for what the draws here leave out; absent for a quick answer without ranges */
  ranges?: { pull: Range }
}

/** With two or more engines running: what is left when the one dies that leaves least. Undefined with fewer. */
export function oneDeadOf(craft: Craft, { maps, solved, ranges }: DeadOptions): OneDead | undefined {
  const alive = craft.engines.flatMap((e, i) => (e.running ? [i] : []))
  if (alive.length < 2) return undefined
  const model = modelFromCraft(craft, maps, {}, solved)
  const table = dragTableOf(model)
  // only the engines differ between the cases
  const modelOf = (c: Craft, leeway: Leeway = {}): CraftModel => {
    const shafts = shaftsOf(c, leeway, solved)
    return { ...model, units: model.units.map((u, i) => ({ ...u, shaft: shafts[i]! })) }
  }
  const cases = alive.map((index) => ({ index, now: caseOf(modelOf(withDead(craft, index)), table) }))
  const worst = cases.reduce((a, b) => (b.now.pull < a.now.pull ? b : a))
  const each = craft.drive.arrangement === 'a jet each'
  const clutch = craft.drive.clutch === 'one-way'
  const dead = withDead(craft, worst.index)
  const doubts = doubtsOf(craft, solved).filter(counts)
  const rest = ranges ? restOf(ranges.pull, tiedPulls(craft, doubts, modelOf)) : undefined
  const left = (c: Craft, now: Case) =>
    leftOf(now, rest && { cases: cloudOf(c, doubts, modelOf, table), rest })
  const dragged = !each && !clutch
  const answer: OneDead = {
    ...left(dead, worst.now),
    engine: worst.index,
    place: each ? 'its own jet' : clutch ? 'standing still' : 'dragged',
  }
  if (dragged) {
    const shaft = modelOf(dead).units[0]!.shaft
    const own = shaft.engines[worst.index]!
    const n = Number.isFinite(worst.now.rotation) ? worst.now.rotation : own.idle
    if (own.dead) {
      const at = (lean: number) => dragAt(own.dead!, n, lean)
      answer.drag = { value: at(0), low: at(-1), high: at(1) }
      answer.dragFrom = own.dead.from
    }
    const loose = freed(dead)
    answer.withClutch = left(loose, caseOf(modelOf(loose), table))
  }
  return answer
}

type ModelOf = (c: Craft, leeway?: Leeway) => CraftModel

/** One draw of the engines' and the hull's doubts, with two places of its own behind them. */
const drawn = (c: Craft, doubts: readonly Doubt[], i: number) => {
  const u = spreadPoint(i, doubts.length + 2, 5)
  return { ...leantBy(c, doubts, u), dead: 2 * u[doubts.length]! - 1, idle: u[doubts.length + 1]! }
}

/** Cases of a craft over the draws, engine and hull doubts together with the dead one's drag and the idle speed. */
function cloudOf(c: Craft, doubts: readonly Doubt[], modelOf: ModelOf, table: DragTable): Case[] {
  const engine = c.engines.find((e) => 'idle' in e)
  const idle = engine && 'idle' in engine ? engine.idle : undefined
  return Array.from({ length: draws }, (_, i) => {
    const { craft, leeway, dead, idle: part } = drawn(c, doubts, i)
    const at = idle ? (idle.low + part * (idle.high - idle.low)) / idle.value : 1
    const share = leeway.drag ?? 1
    const { drag } = table
    const scaled = { ...drag, y: drag.y.map((d) => d * share), slope: drag.slope.map((d) => d * share) }
    return caseOf(modelOf(craft, { ...leeway, dead }), { ...table, drag: scaled }, at)
  })
}

/** Pulls of the craft as it is, all engines running, over the same draws. */
function tiedPulls(craft: Craft, doubts: readonly Doubt[], modelOf: ModelOf): number[] {
  return Array.from({ length: draws }, (_, i) => {
    const leant = drawn(craft, doubts, i)
    const model = modelOf(leant.craft, leant.leeway)
    return propel(model, 0, model.units.map(idleOf)).thrust
  })
}

/** Parts by which the whole craft's pull is doubtful beyond what the draws move: the jet, the loading. */
function restOf(pull: Range, drawn: readonly number[]): { down: number; up: number } {
  const { low, high } = middle(drawn)
  const centre = (low + high) / 2
  const left = (all: number, own: number) =>
    Math.sqrt(Math.max(0, (all / pull.value - 1) ** 2 - (own / centre - 1) ** 2)) || 0
  return { down: left(pull.low, low), up: left(pull.high, high) }
}

/**
 * The nominal case with its ranges. What the draws leave out counts in full for the pull, by half for the speed (below the hump drag
 * rises about as its square) and by half for the rotation (torque rises as its square).
 */
function leftOf(
  now: Case,
  cloud: { cases: readonly Case[]; rest: { down: number; up: number } } | undefined,
): LeftWithOneDead {
  const range = (pick: (c: Case) => number, share: number): Range => {
    const value = pick(now)
    if (!cloud) return { value, low: Number.NaN, high: Number.NaN }
    const { low, high } = middle(cloud.cases.map(pick))
    const centre = Number.isFinite(value) ? value : (low + high) / 2
    const down = Math.hypot(Math.max(0, centre - low), share * cloud.rest.down * centre)
    const up = Math.hypot(Math.max(0, high - centre), share * cloud.rest.up * centre)
    return { value, low: Math.max(0, centre - down), high: centre + up }
  }
  const running = [now, ...(cloud?.cases ?? [])].filter((c) => !c.stalls)
  const heard = running.flatMap((c) => [c.rotation, c.topRotation]).filter(Number.isFinite)
  const stalling = cloud?.cases.filter((c) => c.stalls).length ?? 0
  return {
    stalls: now.stalls,
    stallShare: cloud ? stalling / cloud.cases.length : Number(now.stalls),
    planes: now.planes,
    rotation: range((c) => c.rotation, 0.5),
    pull: range((c) => c.pull, 1),
    topSpeed: range((c) => c.topSpeed, 0.5),
    ...(heard.length > 0 ? { band: { low: Math.min(...heard), high: Math.max(...heard) } } : {}),
  }
}
