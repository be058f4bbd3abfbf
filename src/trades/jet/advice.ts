/** Blades: how many, and what speaks for fewer or more at the same load. Thresholds are common practice unless a comment says more. */
import { inDegrees, inPercent, inTimes } from '../../base/answers/amounts.ts'
import { type Sentence, say } from '../../base/answers/sentence.ts'
import { type Blades, prepareBlades } from './blades.ts'
import { choosePitch } from './chooseBlades.ts'
import type { JetPoint, JetSpec } from './jetTypes.ts'

export interface BladeCase {
  blades: number
  /** pitch that takes the same torque at the same rotation, m; NaN when none does */
  pitch: number
  thrust: number
  cavitationMargin: number
  stalled: boolean
}

/** Each blade number with the pitch that loads the drive the same, at boat speed V. */
export function compareBlades(
  spec: JetSpec,
  n: number,
  torque: number,
  V: number,
  counts: readonly number[],
): BladeCase[] {
  return counts.map((blades) => {
    const tried = { ...spec, rotor: { ...spec.rotor, blades } }
    const P = spec.rotor.pitchLeading
    const found = choosePitch(tried, { torque: () => torque, target: n }, V, 0.5 * P, 1.8 * P)
    const { pitch, point } = found.value
    return found.converged
      ? {
          blades,
          pitch,
          thrust: point.F,
          cavitationMargin: point.Ka / point.K3,
          stalled: point.confidence === 'low',
        }
      : { blades, pitch: Number.NaN, thrust: Number.NaN, cavitationMargin: Number.NaN, stalled: true }
  })
}

interface BladeFacts {
  /** blades' wrap over the full circle */
  overlap: number
  /** solidity at the tip now, and with one blade fewer */
  tipSolidity: number
  tipSolidityFewer: number
  /** least open share beside the trailing edges */
  open: number
  tipAngle: number
}

function bladeFacts(spec: JetSpec): BladeFacts {
  const { rotor } = spec
  const b: Blades = prepareBlades(rotor, spec.model)
  const tipSolidity = b.solidity[b.count - 1]!
  return {
    overlap: (rotor.blades * rotor.wrap) / (2 * Math.PI),
    tipSolidity,
    tipSolidityFewer: (tipSolidity * (rotor.blades - 1)) / rotor.blades,
    open: Math.min(...b.open),
    tipAngle: Math.atan2(rotor.pitchLeading, Math.PI * rotor.tipDiameter),
  }
}

/** What speaks for one blade fewer with more pitch, and against it, in words with the numbers. */
export function bladeReasons(spec: JetSpec, point: JetPoint): { fewer: Sentence[]; keep: Sentence[] } {
  const f = bladeFacts(spec)
  const margin = point.Ka / point.K3
  const fewer: Sentence[] = []
  const keep: Sentence[] = []
  if (f.open < 0.92) fewer.push(say`the trailing edges block ${inPercent(1 - f.open)} of the way out`)
  if (f.overlap > 1.3 && spec.rotor.roughness > 5e-6)
    fewer.push(say`blades overlap ${inTimes(f.overlap)} times with a rough finish`)
  if (margin < 1.1)
    fewer.push(say`cavitation margin is ${inTimes(margin)}, and wide passages pass bubbles best`)
  if (f.tipAngle < (11 * Math.PI) / 180) fewer.push(say`the tip stands at only ${inDegrees(f.tipAngle)}`)
  // below a solidity of about 1 the lattice loses turning fast
  if (f.tipSolidityFewer < 1)
    keep.push(say`one blade fewer leaves a solidity of ${inTimes(f.tipSolidityFewer)} at the tip`)
  if (point.diffusion > 0.6)
    keep.push(say`the blades are loaded to a diffusion factor of ${inTimes(point.diffusion)} already`)
  return { fewer, keep }
}
