/** A thread's surface as corners, for the gauges: its section swept up the helix. Lengths m. */
import { radiusAt, type TurnProfile } from './threadProfile.ts'

/** Corners of a thread swept round an axis on so many sides, m, 64 along each pitch; `hand` −1 for a left one. Geometry alone. */
export function sweptCorners(profile: TurnProfile, length: number, facets: number, hand = 1): Float64Array {
  const along = 64
  const turns = Math.round((length / profile.pitch) * along)
  const out = new Float64Array(3 * facets * (turns + 1))
  let k = 0
  for (let i = 0; i < facets; i++) {
    const angle = (2 * Math.PI * i) / facets
    for (let j = 0; j <= turns; j++) {
      const z = (j / along) * profile.pitch
      const r = radiusAt(profile, z - (hand * profile.pitch * angle) / (2 * Math.PI))
      out[k++] = r * Math.cos(angle)
      out[k++] = r * Math.sin(angle)
      out[k++] = z
    }
  }
  return out
}
