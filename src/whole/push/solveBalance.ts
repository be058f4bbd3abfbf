/** The main job: one craft in, how it will go and what to change out. */
import type { Flag, Range } from '../../base/answers/solved.ts'
import { type Craft, whatIf } from '../../craft/index.ts'
import type { SolvedCurves } from '../../trades/engine/enginesFromCraft.ts'
import { jetFlagTexts } from '../../trades/jet/jetFlags.ts'
import type { Balance, BalanceCurve, Change, OperatingPoint } from './balanceTypes.ts'
import { bogOf } from './bog.ts'
import { changesFor } from './changes.ts'
import { MapStore, modelFromCraft } from './craftModel.ts'
import { drawable, type Ranges, rangesOf } from './doubts.ts'
import { rangeLeft } from './fitted.ts'
import { matchingOf } from './matching.ts'
import { wantsOf } from './merit.ts'
import { oneDeadOf } from './oneDead.ts'
import { cannotTurn } from './oneDeadFindings.ts'
import { humpOf, operatingTable, type Table, type TableRow } from './operatingTable.ts'
import { type PitchScan, pitchPoint, scanPitches } from './pitchScan.ts'
import { type CraftModel, dragOf, type Propulsion, propel, unitRoots } from './propulsionModel.ts'
import { dragTableOf } from './quickSums.ts'
import { runFromRest } from './runUp.ts'
import { beyondTable, engineTorque, shaftPowerPeak, shaftRedline } from './shaft.ts'
import { designOf, judge } from './verdict.ts'
import { limitOf } from './whatLimits.ts'

export interface BalanceOptions {
  /** kept between calls so that an unchanged pump is not sampled again */
  maps?: MapStore
  /** false for the quick answer while a slider moves: no ranges, no changes */
  ranges?: boolean
  /** every pitch of these blades, known from before: it does not depend on the pitch being tried; false leaves it out */
  pitches?: PitchScan | false
  /** torque curves worked out elsewhere, by engine index */
  solved?: SolvedCurves
  /** speeds in the table */
  steps?: number
  /** false leaves out one engine dead, which takes two more solutions */
  oneDead?: boolean
  /** told of the balance with ranges from few draws and without changes, while the good ones are worked out */
  early?: (first: Balance) => void
}

const bare = (value: number): Range => ({ value, low: Number.NaN, high: Number.NaN })

/** Solves the whole craft. Throws NotBalanced when an engine has no torque curve. */
export function solveBalance(craft: Craft, options: BalanceOptions = {}): Balance {
  const maps = options.maps ?? new MapStore()
  const ranged = options.ranges ?? true
  const solved = options.solved
  const model = modelFromCraft(craft, maps, {}, solved)
  const unit = model.units[0]!
  const table = operatingTable(model, { steps: options.steps ?? (ranged ? 44 : 28) })
  const first = table.rows[0]!
  const tiedUp = pointOf(model, first)
  const top = table.top && pointOf(model, table.top)
  const bog = bogOf(unit)
  const peak = shaftPowerPeak(unit.shaft)
  const pitchNow = craft.jet.rotor.pitch.value
  const run = runFromRest(model, table)
  const design = designOf(table, run.stuck)
  const drag = dragTableOf(model)
  const fan = maps.fan(unit.spec)
  // an engine that is off says nothing about the impeller: no pitch is judged by half a craft
  const off = craft.engines.some((e) => !e.running)
  const scan =
    options.pitches === false || off ? undefined : (options.pitches ?? scanPitches(craft, model, fan, drag))
  const bestPitch = scan?.best ?? Number.NaN

  const rotations = (p: Propulsion) => p.states.map((s) => s.rotation)
  const tied = rotations(first.propulsion)
  const hump = humpPointOf(humpOf(model, table))
  const exact = {
    rotation: tiedUp.rotation,
    pull: tiedUp.thrust,
    torque: tiedUp.torque,
    topSpeed: top?.speed ?? Number.NaN,
    hump: hump.margin,
    planing: run.timeToPlane ?? Number.POSITIVE_INFINITY,
    judged: propel(model, design.speed, tied).states[0]!.rotation * unit.shaft.ratio,
  }
  const settled = { craft, model, table, judgedAt: design.speed, exact, maps, solved }
  const able = ranged ? drawable(settled) : undefined
  const matching = matchingOf(craft, model, maps, table, bestPitch / pitchNow, bog, ranged ? 72 : 40)
  const now = scan ? pitchPoint(craft, model, drag, fan, pitchNow) : { pitch: pitchNow, merit: Number.NaN }
  const heat = craft.engines.map((_, i) => solved?.get(i)?.heat ?? null)
  const balanceWith = (ranges: Ranges | undefined, changes: Change[]): Balance => {
    const rangeOf = (name: keyof typeof exact) =>
      ranges ? rangeLeft(craft.fitted, name, ranges.answers[name]) : bare(exact[name])
    const verdict = judge({
      rotation: rangeOf('judged'),
      powerPeak: peak.rotation,
      design,
      wants: wantsOf(craft),
      ...(scan ? { scan } : {}),
      off,
      now,
    })
    return {
      curve: curveOf(model, table, craft.rider.position.value),
      tiedUp,
      ...(top ? { top } : {}),
      tiedUpRoots: unitRoots(unit, 0).map(({ sharp: _, ...root }) => ({
        ...root,
        rotation: root.rotation * unit.shaft.ratio,
      })),
      topSpeed: rangeOf('topSpeed'),
      pull: rangeOf('pull'),
      tiedUpRotation: rangeOf('rotation'),
      tiedUpTorque: rangeOf('torque'),
      humpMargin: rangeOf('hump'),
      timeToPlane: rangeOf('planing'),
      limitedBy:
        off && !Number.isFinite(tiedUp.rotation)
          ? { code: 'engine', says: `Nothing pushes: ${cannotTurn(craft)}.` }
          : limitOf(model, table, tiedUp, top, run, off ? 'right' : verdict.code),
      matching,
      run,
      hump,
      verdict,
      changes,
      drivers: ranges?.drivers ?? [],
      explained: ranges?.explained ?? { rotation: Number.NaN, pull: Number.NaN, topSpeed: Number.NaN },
      ranged,
      flags: flagsOf(model, tiedUp, top),
      ...(heat.some((h) => h !== null) ? { heat } : {}),
    }
  }
  if (able) options.early?.(balanceWith(rangesOf(settled, able, true), []))
  const ranges = able && rangesOf(settled, able)
  const balance = balanceWith(ranges, able ? changesFor(craft, exact, bestPitch, maps, able, solved) : [])
  const dead =
    (options.oneDead ?? true)
      ? oneDeadOf(craft, {
          maps,
          ...(solved ? { solved } : {}),
          ...(ranges ? { ranges: { pull: balance.pull } } : {}),
        })
      : undefined
  return dead ? { ...balance, oneDead: dead } : balance
}

function pointOf(model: CraftModel, row: TableRow): OperatingPoint {
  const unit = model.units[0]!
  const state = row.propulsion.states[0]!
  const jet = state.jet
  const flags: Flag[] = (jet?.flags ?? []).map((code) => ({ code, text: jetFlagTexts[code] }))
  const impeller = state.rotation
  const rotation = impeller * unit.shaft.ratio
  const peak = shaftPowerPeak(unit.shaft)
  if (!state.sharp) flags.push({ code: 'not settled', text: 'engines and impeller meet only at a jump' })
  return {
    speed: row.speed,
    rotation,
    impellerRotation: impeller,
    thrust: row.propulsion.steady && jet ? row.propulsion.thrust : Number.NaN,
    torque: jet?.T ?? Number.NaN,
    engineTorque: jet ? engineTorque(unit.shaft, rotation) : Number.NaN,
    flow: jet?.Q ?? Number.NaN,
    power: jet ? 2 * Math.PI * impeller * jet.T : Number.NaN,
    pumpEfficiency: jet?.eta ?? Number.NaN,
    ofPowerPeak: rotation / peak.rotation,
    flags,
  }
}

function curveOf(model: CraftModel, table: Table, riderAt: number): BalanceCurve {
  const { shaft } = model.units[0]!
  const ratio = shaft.ratio
  const rows = table.rows
  const of = (pick: (r: TableRow) => number) => rows.map(pick)
  const lead = (r: TableRow) => r.propulsion.states[0]!
  return {
    speed: of((r) => r.speed),
    rpm: of((r) => lead(r).rotation * ratio * 60),
    thrust: of((r) => (r.propulsion.steady ? r.propulsion.thrust : Number.NaN)),
    drag: of((r) => r.drag.drag),
    dragLow: of((r) => r.drag.low),
    dragHigh: of((r) => r.drag.high),
    dragRiderStill: of((r) => dragOf(model, r.speed, riderAt).drag),
    torque: of((r) => lead(r).jet?.T ?? Number.NaN),
    engineTorque: of((r) => (lead(r).jet ? engineTorque(shaft, lead(r).rotation * shaft.ratio) : Number.NaN)),
    flow: of((r) => lead(r).jet?.Q ?? Number.NaN),
    trim: of((r) => r.drag.trim),
    riderAt: of((r) => r.drag.riderAt),
    cavitating: rows.map((r) => lead(r).jet?.cavitating ?? false),
  }
}

function humpPointOf(row: TableRow): Balance['hump'] {
  const thrust = row.propulsion.thrust
  return { speed: row.speed, drag: row.drag.drag, thrust, margin: thrust / row.drag.drag }
}

function flagsOf(model: CraftModel, tiedUp: OperatingPoint, top?: OperatingPoint): Flag[] {
  const flags: Flag[] = []
  const shaft = model.units[0]!.shaft
  for (const [at, point] of [
    ['tied up', tiedUp],
    ['at top speed', top],
  ] as const) {
    if (!point || !Number.isFinite(point.rotation)) continue
    if (beyondTable(shaft, point.rotation))
      flags.push({
        code: 'beyond the torque curve',
        text: `${at} the engines turn beyond their torque curve`,
        path: 'engines',
      })
    if (point.rotation > shaftRedline(shaft))
      flags.push({
        code: 'past the redline',
        text: `${at} the engines turn past their redline`,
        path: 'engines.0.redline',
      })
  }
  return flags
}

/** The craft with tried values put in by path: SI numbers, words or yes and no. */
export function tryValues(craft: Craft, values: Readonly<Record<string, number | string | boolean>>): Craft {
  return whatIf(craft, values)
}
