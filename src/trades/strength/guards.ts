/** What stands between a hot part and foam: nothing, one bright plate, or glass wrap; and how far off each needs to be. */
import { brent } from '../../base/numerics/roots.ts'
import type { BayAir } from '../../hull/site/airOfBay.ts'
import type { Foam } from './foams.ts'
import { distanceFor, foamFace, type HotSpot, shieldedFoamFace, wrapSurface } from './hotFoam.ts'
import { strengthLimits } from './strengthLimits.ts'

export type Guard = 'bare' | 'shield' | 'wrap'

export interface HotPart {
  name: string
  spot: HotSpot
  guard: Guard
  foam: Foam
  /** K, ends of the likely range of the part's skin */
  low: number
  high: number
  /** the air of the bay it stands in */
  bay: BayAir
}

export const guardWord = { bare: 'bare', shield: 'behind one bright shield', wrap: 'wrapped' } as const

/** K a foam should stay below: ten under what its data sheet gives for long. */
export const foamLimit = (h: Pick<HotPart, 'foam'>): number => h.foam.hottest - strengthLimits.foamBelow.value

/** a bright plate dulled by a season, still air on both sides */
export const plate = { emissivity: 0.15, film: 8 }
/** two turns of glass tape: thickness, m, and W/(m·K) */
export const wrapping = { thickness: 0.005, conductivity: 0.08 }

export interface Guarded {
  guard: Guard
  /** K of the foam's face with the part as hot as likely, and at the ends of its range; NaN where none was found */
  face: number
  low: number
  high: number
  /** m from the part's middle to the foam that it needs; Infinity when 3 m are not enough */
  clear: number
}

/** A part behind a guard. Ends: the doubts of its skin and of the bay's air, taken as independent. */
export function guarded(h: HotPart, guard: Guard): Guarded {
  const at = (pipe: number, air = h.spot.air) => faceAt({ ...h.spot, pipe, air }, guard)
  const face = at(h.spot.pipe)
  const off = (pipe: number, air: number) =>
    Math.hypot(at(pipe) - face, h.bay.known ? at(h.spot.pipe, air) - face : 0)
  return {
    guard,
    face,
    low: face - off(h.low, h.bay.low),
    high: face + off(h.high, h.bay.high),
    clear: clearance(h, guard),
  }
}

/** Temperature of the foam's face, K; NaN when not found. */
export function faceAt(spot: HotSpot, guard: Guard): number {
  if (guard === 'shield') {
    const s = shieldedFoamFace(spot, plate)
    return s.converged ? s.value.foam : Number.NaN
  }
  if (guard === 'wrap') {
    const outside = Math.min(spot.radius + wrapping.thickness, 0.98 * spot.distance)
    const skin = wrapSurface(spot.pipe, spot.air, spot.radius, outside, wrapping.conductivity, spot.film)
    if (!skin.converged) return Number.NaN
    const f = foamFace({ ...spot, radius: outside, pipe: skin.value, emissivity: 0.9 })
    return f.converged ? f.value : Number.NaN
  }
  const f = foamFace(spot)
  return f.converged ? f.value : Number.NaN
}

/** Least distance from the part's middle to the foam, m; Infinity when 3 m are not enough. */
function clearance(h: HotPart, guard: Guard): number {
  const limit = foamLimit(h)
  if (guard === 'bare') {
    const clear = distanceFor(h.spot, limit)
    return clear.converged ? clear.value : Infinity
  }
  // the plate wants its air gap, the wrap its thickness
  const nearest = h.spot.radius + (guard === 'shield' ? 0.02 : wrapping.thickness) + 0.005
  const over = (distance: number) => faceAt({ ...h.spot, distance }, guard) - limit
  if (over(nearest) <= 0) return nearest
  if (!(over(3) < 0)) return Infinity
  const found = brent(over, nearest, 3, { tolerance: 1e-5 })
  return found.converged ? found.value : Infinity
}
