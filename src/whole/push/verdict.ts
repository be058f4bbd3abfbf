/**
 * Is the impeller too steep or too shallow? It is right where its pitch does what the builder wants about as well as the best pitch
 * of the same blades on the whole balance (pitchScan.ts). Where the engines then turn against their best power is the reason that
 * goes with it, never the yardstick: on a belt the best lies a little over their peak, on a direct drive well below it.
 */
import { inMm, inPercent, inRpm, inSpeed } from '../../base/answers/amounts.ts'
import { type Sentence, say } from '../../base/answers/sentence.ts'
import type { Range } from '../../base/answers/solved.ts'
import type { JetSpec } from '../../trades/jet/jetTypes.ts'
import type { Verdict } from './balanceTypes.ts'
import { type Wants, wantsSays } from './merit.ts'
import type { Table } from './operatingTable.ts'
import { type PitchPoint, type PitchScan, rightWithin } from './pitchScan.ts'

/** engine rotation over rotation of most power within which their power is counted as used */
export const nearPeak = { low: 0.95, high: 1.08 }

/** loss of merit up to which a pitch is only a little off */
const littleOff = 0.05

/** The same blades with their pitch, at both edges, multiplied. */
export function withPitch(spec: JetSpec, share: number): JetSpec {
  const { rotor } = spec
  return {
    ...spec,
    rotor: { ...rotor, pitchLeading: rotor.pitchLeading * share, pitchTrailing: rotor.pitchTrailing * share },
  }
}

/** Where the reason is looked at. */
export interface Design {
  speed: number
  at: 'tied up' | 'at the hump' | 'at top speed'
}

/** The speed that matters for this craft: the hump while thrust is scarce there, else the top speed. */
export function designOf(table: Table, stuck: boolean): Design {
  const hump = table.rows[table.humpRow]
  if (!table.top || !hump) return { speed: 0, at: 'tied up' }
  const scarce = hump.propulsion.thrust < 1.5 * hump.drag.drag
  if (stuck || scarce) return { speed: Math.min(hump.speed, table.top.speed), at: 'at the hump' }
  return { speed: table.top.speed, at: 'at top speed' }
}

const whole = (x: number) => Math.round(x * 1000)

/** "92 to 104 mm", or one pitch where the two round to the same. */
function pitchSpan(low: number, high: number): Sentence {
  return whole(low) === whole(high) ? say`${inMm(low)}` : say`${inMm(low)} to ${inMm(high)}`
}

/** What a verdict is made from. */
export interface Judged {
  /** engine rotation at the design speed, rev/s */
  rotation: Range
  powerPeak: number
  design: Design
  wants: Wants
  /** absent while it is still to be worked out */
  scan?: PitchScan
  /** the pitch that is fitted, and what it does */
  now: Pick<PitchPoint, 'pitch' | 'merit'>
  /** an engine is off in the file */
  off?: boolean
}

const none = { value: Number.NaN, low: Number.NaN, high: Number.NaN }

/** The verdict; its `bestPitch` is the best of the scan with the pitches that do as well. */
export function judge({ rotation, powerPeak, design, wants, scan, now, off }: Judged): Verdict {
  const bestPitch = scan ? { value: scan.best, low: scan.low, high: scan.high } : none
  const base = { bestPitch, pitchNow: now.pitch, designSpeed: design.speed, judged: design.at, rotation }
  if (off)
    return {
      ...base,
      code: 'unknown',
      says: 'Whether the impeller suits is not judged while an engine is off.',
    }
  if (!scan) return { ...base, code: 'unknown', says: 'Which pitch suits is still to be worked out.' }
  if (!Number.isFinite(scan.best))
    return { ...base, code: 'unknown', says: 'The engines cannot turn an impeller of these blades at all.' }
  const most = Math.max(...scan.points.map((p) => p.merit))
  const loss = 1 - now.merit / most
  const span = pitchSpan(scan.low, scan.high)
  const reason = reasonOf(rotation.value / powerPeak, rotation.value, powerPeak, design)
  // a dip inside the best stretch is still what the stretch is; just outside it the loss decides
  const inside = now.pitch >= scan.low && now.pitch <= scan.high
  if (inside || loss <= rightWithin)
    return {
      ...base,
      code: 'right',
      says: say`The impeller suits these engines: its ${inMm(now.pitch)} of pitch lies where ${wantsSays[wants]} is best, ${span}; ${reason}.`,
    }
  const code = now.pitch > scan.best ? 'too steep' : 'too shallow'
  const little = loss < littleOff ? 'a little ' : ''
  return {
    ...base,
    code,
    says: say`The impeller is ${little}${code}: ${span} of pitch instead of ${inMm(now.pitch)} does best for ${wantsSays[wants]}; ${reason}.`,
  }
}

/** Where the engines turn against their best power, with the pitch that is fitted. */
function reasonOf(ratio: number, rotation: number, powerPeak: number, design: Design): Sentence {
  if (!Number.isFinite(ratio)) return 'the engines cannot turn the one that is fitted'
  const where: Sentence = design.at === 'at top speed' ? say`at ${inSpeed(design.speed)}` : design.at
  const off = Math.abs(ratio - 1)
  return off < 0.005
    ? say`${where} they turn ${inRpm(rotation)}, where they have most power`
    : say`${where} it holds them at ${inRpm(rotation)}, ${inPercent(off)} ${ratio >= 1 ? 'past' : 'short of'} their most power at ${inRpm(powerPeak)}`
}
