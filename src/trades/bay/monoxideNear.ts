/**
 * Carbon monoxide near the rider of a craft that lies still with its engine running: the exhaust spreads over the water in the wind as a
 * plume from a point, c = q/(π σ_y σ_z u) on the water (F. Pasquill and F. B. Smith, Atmospheric Diffusion, 1983, from memory). Over a few
 * metres σ is taken as a fifth of the way (an eighth to a third), after a first spread of the jet itself: judgement. Ideal gas. An order of
 * magnitude, no more.
 */
import { monoxide } from '../../physics/gas/monoxide.ts'

const monoxideMass = 0.02801
const exhaustMass = 0.0285
const gasConstant = 8.314462618

/** m: the outlet's own cloud */
const firstSpread = 0.15

/**
 * Volume part near a rider `distance` m down wind of the outlet. `exhaust` kg/s, `wind` m/s, `spread` σ over the way.
 */
export function monoxideAt(
  exhaust: number,
  lambda: number,
  distance: number,
  wind: number,
  T: number,
  pressure: number,
  spread = 0.2,
): number {
  if (!(wind > 0)) throw new RangeError(`wind: ${wind} m/s, expected above 0`)
  if (!(distance > 0)) throw new RangeError(`distance: ${distance} m, expected above 0`)
  const q = (exhaust * monoxide(lambda) * monoxideMass) / exhaustMass
  const sigma = firstSpread + spread * distance
  const perVolume = q / (Math.PI * sigma * sigma * wind)
  // kg/m³ to a part by volume, never more than the exhaust itself holds
  return Math.min(monoxide(lambda), (perVolume / monoxideMass) * ((gasConstant * T) / pressure))
}
