/**
 * Rotation at which cavitation begins to cost, and at which the rotor chokes.
 * Torque falls past the knee, so the engine runs away from it: the throttle must close to about nine tenths of the knee
 * before the rotor fills again (engineering default).
 */

import { brent } from '../../base/numerics/roots.ts'
import type { JetSpec } from './jetTypes.ts'
import { jetPoint, type PumpMap } from './pumpMap.ts'

export interface Knee {
  /** 3 % of the head lost, rev/s; NaN when beyond the rotations looked at */
  onset: number
  /** choked: thrust falls and rotation runs away, rev/s */
  choke: number
  /** rotation to come down to, rev/s, before the rotor runs full again */
  reWet: number
}

/** Lowest rotation (rev/s) up to `most` at which 3 % of the head is lost at boat speed V; NaN when there is none. */
export function cavitationOnset(map: PumpMap, spec: JetSpec, V: number, most: number): number {
  // above nought while the head holds; what the blades need over what they have is followed rather than halved at
  const spare = (n: number) => {
    const { Ka, K3, cavitating } = jetPoint(map, spec, n, V)
    const more = Ka / K3 - 1
    return cavitating ? Math.min(more, -1e-9) : Math.max(more, 1e-9)
  }
  if (spare(most) > 0) return Number.NaN
  const least = 0.02 * most
  if (spare(least) < 0) return least
  const root = brent((n) => spare(n), least, most, { tolerance: 1e-5 * most })
  return root.converged ? root.value : Number.NaN
}

/** Onset and choking at boat speed V, up to impeller rotation `most` (rev/s). */
export function cavitationKnee(map: PumpMap, spec: JetSpec, V: number, most: number): Knee {
  const choke = firstAt(most, (n) => jetPoint(map, spec, n, V).state === 'choked')
  return { onset: cavitationOnset(map, spec, V, most), choke, reWet: 0.9 * choke }
}

/** Lowest rotation where `past` holds, given that it goes on holding above; NaN when it never does up to `most`. */
function firstAt(most: number, past: (n: number) => boolean): number {
  if (!past(most)) return Number.NaN
  let low = 0.02 * most
  let high = most
  for (let i = 0; i < 40 && high - low > 1e-5 * most; i++) {
    const middle = (low + high) / 2
    if (past(middle)) high = middle
    else low = middle
  }
  return high
}
