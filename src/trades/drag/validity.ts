/** Where the methods stop being evidence: warnings as data. Ranges: Mercier and Savitsky (1973), Savitsky (1964), from memory. */
import { inDegrees, inPercent, inTimes } from '../../base/answers/amounts.ts'
import { type Sentence, say } from '../../base/answers/sentence.ts'
import { type Flag, flagOf, type Solved } from '../../base/answers/solved.ts'
import type { RestForm } from '../../hull/afloat/restForm.ts'
import type { DragModel } from './drag.ts'
import { criticalSpeed, type HullSpec } from './hullSpec.ts'
import { porpoisingBand } from './porpoising.ts'
import { preplaningRange } from './preplaning.ts'
import type { Balance } from './trimBalance.ts'

const one = (code: string, text: string): readonly Flag[] => Object.freeze([Object.freeze({ code, text })])

/** Warnings of one speed. */
export const pointFlags = {
  none: Object.freeze([]) as readonly Flag[],
  shallow: one(
    'shallow',
    'near the wave speed of this depth: drag can be tens of per cent off the deep-water value',
  ),
  mushing: one('mushing', 'weight too far aft: no balance below 20° of trim, the craft ploughs bow high'),
  bowDown: one('bow down', 'weight too far forward: the bottom is wet to the stem'),
  intakeDry: one(
    'intake dry',
    'the wetted bottom ends aft of the front of the intake: the jet will suck air',
  ),
  rockerWet: one('rocker wet', 'the curved nose is in the water: planing theory is for a straight bottom'),
  chinesDry: one('chines dry', 'the chines are dry: planing theory is for wet chines'),
  long: one('wetted long', 'wetted length above four beams: outside the tests behind the planing theory'),
  trimOutside: one('trim outside', 'trim outside 2 to 15°: outside the tests behind the planing theory'),
  porpoise: one('porpoise', 'trim above the porpoising limit: expect the bow to bounce'),
  mayPorpoise: one('may porpoise', 'trim within 1.5° of the porpoising limit'),
}

const outside = (value: number, [low, high]: readonly [number, number]) => value < low || value > high

/** Warnings of the hull and its loading, the same at every speed. */
export function formFlags(rest: Solved<RestForm>, spec: HullSpec, floored = false): readonly Flag[] {
  const f = rest.value
  const flags: Flag[] = []
  if (!rest.converged) {
    flags.push({
      code: 'does not float',
      text: 'no level float found at this weight: see the float page',
      path: 'hull',
    })
    return flags
  }
  const r = preplaningRange
  const slender = f.length / Math.cbrt(f.volume)
  const add = (code: string, says: Sentence) => flags.push(flagOf(code, says, 'hull'))
  if (outside(slender, r.slenderness))
    add(
      'slenderness outside',
      say`length over cube root of volume ${inTimes(slender)} is outside the tests' 3.07 to 12.4`,
    )
  if (outside(f.length / f.beam, r.lengthOverBeam))
    add(
      'length-beam outside',
      say`length over beam ${inTimes(f.length / f.beam)} is outside the tests' 2.52 to 18.3`,
    )
  if (outside(f.beam / f.draft, r.beamOverDraft))
    add(
      'beam-draft outside',
      say`beam over draft ${inTimes(f.beam / f.draft, 0.1)} is outside the tests' 1.7 to 9.8`,
    )
  if (outside(f.entrance, r.entrance))
    add(
      'entrance clamped',
      say`half angle of entrance ${inDegrees(f.entrance, 1)} is outside the tests' 3.7 to 28.6°; the nearest is used`,
    )
  if (floored)
    add(
      'regression outside',
      'these proportions are so far outside the tests that friction and a small wave drag stand in for them',
    )
  // aft of mid-length, as a part of the length
  const aft = 0.5 - f.centre / spec.length
  if (aft < -0.066 || aft > 0.016)
    add(
      'centre outside',
      say`centre of mass ${inPercent(aft)} of length aft of the middle is outside the tests' −6.6 to 1.6 %: drag through the hump is on the optimistic side`,
    )
  return flags
}

/** Fv between which the regression hands over to the planing equilibrium. */
export const blendRange: readonly [number, number] = [1.6, 2.4]

/** Width of an opening twice as long as wide, m. */
export function intakeWidth(area: number): number {
  return Math.sqrt(area / 2)
}

/** True near the wave speed of water shallower than half the hull. */
export function shallowAt(m: DragModel, speed: number): boolean {
  const depth = m.conditions.depth
  const Fh = speed / criticalSpeed(depth)
  return depth < 0.5 * m.spec.length && Fh > 0.7 && Fh < 1.3
}

/** Warnings of one speed; `s` is the planing state there. */
export function flagsAt(
  m: DragModel,
  speed: number,
  Fv: number,
  s: { lambda: number; trim: number; wettedKeel: number; wettedChine: number },
  balance: Balance,
  margin: number,
): readonly Flag[] {
  const found: Flag[] = []
  const add = (list: readonly Flag[]) => {
    for (const f of list) found.push(f)
  }
  if (shallowAt(m, speed)) add(pointFlags.shallow)
  if (Fv < 1.2) return found
  if (balance === 'mushing') add(pointFlags.mushing)
  if (balance === 'bow down') add(pointFlags.bowDown)
  if (Fv < blendRange[0]) return found
  const intake = m.spec.intake
  if (intake) {
    // wetted length at the edge of the opening, between keel and chine
    const edge = intakeWidth(intake.area) / m.beam
    if (s.wettedKeel - (s.wettedKeel - s.wettedChine) * edge < intake.front - 1e-3) add(pointFlags.intakeDry)
  }
  if (s.wettedKeel > (m.spec.noseRiseFrom ?? 0.65 * m.spec.length)) add(pointFlags.rockerWet)
  if (s.wettedChine < 0) add(pointFlags.chinesDry)
  if (s.lambda > 4) add(pointFlags.long)
  if (s.trim < (2 * Math.PI) / 180 || s.trim > (15 * Math.PI) / 180) add(pointFlags.trimOutside)
  if (margin < -porpoisingBand) add(pointFlags.porpoise)
  else if (margin < porpoisingBand) add(pointFlags.mayPorpoise)
  return found
}
