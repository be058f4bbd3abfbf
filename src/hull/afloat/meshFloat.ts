/** The hull at rest from its mesh, in the form the drag methods take: exact integrals in place of strips. */
import type { Solved } from '../../base/answers/solved.ts'
import type { Hull } from '../lines/hullBody.ts'
import { hullFormOf } from '../mesh/meshForm.ts'
import { floaterOf } from './load.ts'
import type { RestForm } from './restForm.ts'
import { settle } from './settle.ts'

/** A float for the drag model: mass (kg), centre forward and up (m), water density (kg/m³) to the form at rest, upright. */
export function meshFloat(
  hull: Hull,
): (mass: number, x: number, z: number, density: number) => Solved<RestForm> {
  const bodies = [{ name: 'hull', mesh: hull.mesh, share: 1 }]
  return (mass, x, z, density) => {
    const rest = settle(floaterOf({ bodies, mass, centre: [x, 0, z], density }), undefined, {
      freeHeel: false,
    })
    const f = rest.converged ? hullFormOf(hull.mesh, rest.value) : undefined
    const ct = Math.cos(rest.value.trim)
    return {
      converged: f !== undefined,
      iterations: rest.iterations,
      residual: rest.residual,
      value: {
        volume: f?.volume ?? Number.NaN,
        length: f?.waterlineLength ?? Number.NaN,
        beam: f?.waterlineBeam ?? Number.NaN,
        draft: f?.draft ?? Number.NaN,
        entrance: f?.entrance ?? Number.NaN,
        transomRatio: f === undefined ? Number.NaN : Math.min(1, f.transomArea / f.greatestSection),
        // the transom is left out: it runs dry as soon as the craft moves
        wettedSurface: f === undefined ? Number.NaN : f.wettedSurface - f.transomArea,
        trim: rest.value.trim,
        centre: f === undefined ? Number.NaN : f.lcb,
        // the water surface meets the transom plane x = 0 at h/cos θ
        waterAtTransom: rest.value.h / ct,
        waterplane: f?.waterplaneArea ?? Number.NaN,
        section: f?.greatestSection ?? Number.NaN,
      },
    }
  }
}
