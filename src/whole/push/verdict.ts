/**
 * Is the impeller too steep or too shallow for these engines? At the speed that matters they should turn
 * 1-5 % faster than where they give most power: there the thrust hardly changes with pitch, and
 * over-pitching costs about twice what under-pitching does (model result; the aim itself is common
 * practice, no source). The speed that matters is the hump while thrust is scarce there, else the top
 * speed; a craft without a steady run is judged tied up.
 */
import type { Range } from '../../base/answers/solved.ts'
import { brent } from '../../base/numerics/roots.ts'
import type { JetSpec } from '../../trades/jet/jetTypes.ts'
import { jetPoint } from '../../trades/jet/pumpMap.ts'
import type { Verdict } from './balanceTypes.ts'
import type { MapStore } from './craftModel.ts'
import type { Table } from './operatingTable.ts'
import type { CraftModel, Unit } from './propulsionModel.ts'
import { impellerDrive, shaftPowerPeak } from './shaft.ts'

/** engine rotation over rotation of most power: aim, and the ends of what counts as right */
export const aim = { value: 1.03, low: 0.99, high: 1.06 }

/** Share of the power peak below which an engine is not yet on its pipe. */
const onPipe = 0.85

/** The same blades with their pitch, at both edges, multiplied. */
export function withPitch(spec: JetSpec, share: number): JetSpec {
  const { rotor } = spec
  return {
    ...spec,
    rotor: { ...rotor, pitchLeading: rotor.pitchLeading * share, pitchTrailing: rotor.pitchTrailing * share },
  }
}

/** Torque of the impeller at rotation n and speed V with its pitch multiplied by `share`. */
function loadAt(unit: Unit, maps: MapStore, n: number, V: number, share: number): number {
  const spec = withPitch(unit.spec, share)
  return jetPoint(maps.of(spec), spec, n, V).T
}

/** Pitch factor that puts the unit at the aim at speed V; NaN when no pitch between half and twice does. */
export function bestPitchShare(unit: Unit, maps: MapStore, V: number): number {
  const n = (aim.value * shaftPowerPeak(unit.shaft).rotation) / unit.shaft.ratio
  if (!Number.isFinite(n)) return Number.NaN
  const drive = impellerDrive(unit.shaft, n)
  const f = (s: number) => loadAt(unit, maps, n, V, s) - drive
  // torque rises with pitch until the blades stall: bracket outwards from now
  const ladder = [1, 0.9, 1.12, 0.8, 1.26, 0.7, 1.42, 0.6, 1.6, 0.5, 1.8, 2]
  let below = Number.NaN
  let above = Number.NaN
  for (const s of ladder) {
    const miss = f(s)
    if (miss <= 0 && !(s < below)) below = s
    if (miss > 0 && !(s > above)) above = s
    if (Number.isFinite(below) && Number.isFinite(above)) break
  }
  if (!(below < above)) return Number.NaN
  const root = brent(f, below, above, { tolerance: 2e-4 })
  return root.converged ? root.value : Number.NaN
}

/** Share of pitch that one part of torque is worth, dln P / dln T at the aim. */
export function pitchPerTorque(unit: Unit, maps: MapStore, V: number, share: number): number {
  const n = (aim.value * shaftPowerPeak(unit.shaft).rotation) / unit.shaft.ratio
  const at = (s: number) => loadAt(unit, maps, n, V, s)
  return Math.log(1.02 / 0.98) / Math.log(at(share * 1.02) / at(share * 0.98))
}

/** Where the pitch is judged. */
export interface Design {
  speed: number
  at: 'tied up' | 'at the hump' | 'at top speed'
}

/** The speed that matters for this craft. */
export function designOf(table: Table, stuck: boolean): Design {
  const hump = table.rows[table.humpRow]
  if (!table.top || !hump) return { speed: 0, at: 'tied up' }
  const scarce = hump.propulsion.thrust < 1.5 * hump.drag.drag
  if (stuck || scarce) return { speed: Math.min(hump.speed, table.top.speed), at: 'at the hump' }
  return { speed: table.top.speed, at: 'at top speed' }
}

const percent = (x: number) => `${Math.abs(Math.round(x * 100))} %`
const rpm = (n: number) => `${Math.round((n * 60) / 10) * 10} rpm`
const mm = (x: number) => `${Math.round(x * 1000)} mm`

/**
 * The verdict from the rotation at the design speed (range, rev/s of the engine), the rotation of most
 * power and the best pitch (m, range; NaN where there is none).
 */
export function judge(
  rotation: Range,
  powerPeak: number,
  design: Design,
  pitchNow: number,
  bestPitch: Range,
): Verdict {
  const ratio = rotation.value / powerPeak
  const base = { bestPitch, pitchNow, designSpeed: design.speed, judged: design.at, rotation }
  if (!Number.isFinite(ratio))
    return { ...base, code: 'unknown', says: 'The engines cannot turn this impeller at all.' }
  const sure =
    Number.isFinite(rotation.low) &&
    (rotation.high / powerPeak < aim.low || rotation.low / powerPeak > aim.high)
  const likely = sure ? '' : 'likely '
  const change = Number.isFinite(bestPitch.value)
    ? `; ${mm(bestPitch.value)} of pitch instead of ${mm(pitchNow)} would put them 1–5 % over it`
    : '; no pitch of these blades puts them there'
  const peak = `their most power at ${rpm(powerPeak)}`
  const where = design.at === 'at top speed' ? `at ${design.speed.toFixed(1)} m/s` : design.at
  if (ratio < aim.low) {
    const why =
      ratio >= onPipe
        ? `${where} it holds the engines at ${rpm(rotation.value)}, ${percent(1 - ratio)} short of ${peak}`
        : `it holds the engines at ${rpm(rotation.value)}, ${percent(1 - ratio)} short of ${peak} and not yet in their power band`
    return { ...base, code: 'too steep', says: `The impeller is ${likely}too steep: ${why}${change}.` }
  }
  if (ratio > aim.high)
    return {
      ...base,
      code: 'too shallow',
      says: `The impeller is ${likely}too shallow: ${where} the engines run on to ${rpm(rotation.value)}, ${percent(ratio - 1)} past ${peak}${change}.`,
    }
  const place = ratio >= 1 ? 'over' : 'under'
  return {
    ...base,
    code: 'right',
    says: `The impeller suits these engines: ${where} they turn ${rpm(rotation.value)}, ${percent(ratio - 1)} ${place} ${peak}.`,
  }
}

/**
 * Worst share of the engines' torque the impeller takes on the way up to the power band, and where
 * (engine rotation). Above 0.95 the engines hang there.
 */
export function bogPoint(model: CraftModel): { ratio: number; rotation: number } {
  const unit = model.units[0]!
  if (!unit.shaft.engines.some((e) => e.running))
    return { ratio: Number.POSITIVE_INFINITY, rotation: Number.NaN }
  const peak = shaftPowerPeak(unit.shaft).rotation / unit.shaft.ratio
  let ratio = 0
  let rotation = Number.NaN
  for (let i = 0; i <= 40; i++) {
    const n = peak * (0.25 + ((onPipe - 0.25) * i) / 40)
    const drive = impellerDrive(unit.shaft, n)
    if (drive <= 0) return { ratio: Number.POSITIVE_INFINITY, rotation: n * unit.shaft.ratio }
    const share = jetPoint(unit.map, unit.spec, n, 0).T / drive
    if (share > ratio) {
      ratio = share
      rotation = n * unit.shaft.ratio
    }
  }
  return { ratio, rotation }
}
