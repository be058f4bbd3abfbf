/**
 * The rotor cut into strips: what each strip's blades are, before any flow.
 * Helical surfaces: pitch P = 2πr tan β, β from the plane of rotation. Outflow rule: lattice turning (lattice.ts) times a
 * viscous factor; between a thin lone arc (no-turning direction γ - θ/4) and a dense lattice (γ - θ/2); derived.
 */

import { type JetModel, type RotorGeometry, standardModel } from './jetTypes.ts'
import { turningShare } from './lattice.ts'

/** Strips from hub to tip; each array has one entry a strip. Scratch arrays are the march's own. */
export interface Blades {
  rotor: RotorGeometry
  model: JetModel
  count: number
  /** annulus areas at inlet and exit, m² */
  areaIn: number
  areaOut: number
  /** share of the annulus area */
  share: Float64Array
  r1: Float64Array
  r2: Float64Array
  chord: Float64Array
  solidity: Float64Array
  stagger: Float64Array
  /** blade angles from the axis, rad */
  lambda1: Float64Array
  lambda2: Float64Array
  camber: Float64Array
  /** ideal and viscous turning share */
  ideal: Float64Array
  turning: Float64Array
  tanOut: Float64Array
  /** open share of the exit beside the trailing edges */
  open: Float64Array
  /** c_u2 = (work U) + drift c_ref - slope c_m2; U per rev/s */
  slope: Float64Array
  axialLength: number
  span: number
  /** scratch: axial and swirl velocity behind the rotor, and the march's derivatives */
  cm: Float64Array
  a: Float64Array
  da: Float64Array
  db: Float64Array
}

/** Derivative of y over x at the knots, central where it can be. */
function slopes(x: Float64Array, y: Float64Array, out: Float64Array): void {
  const last = x.length - 1
  for (let i = 0; i <= last; i++) {
    const lo = Math.max(0, i - 1)
    const hi = Math.min(last, i + 1)
    if (lo === i || hi === i) {
      out[i] = (y[hi]! - y[lo]!) / (x[hi]! - x[lo]!)
      continue
    }
    // three-point rule on uneven knots
    const h0 = x[i]! - x[lo]!
    const h1 = x[hi]! - x[i]!
    out[i] = (((y[hi]! - y[i]!) / h1) * h0 + ((y[i]! - y[lo]!) / h0) * h1) / (h0 + h1)
  }
}

export const derivativeAt = slopes

/** Cuts the rotor into strips of equal span, each followed at the same share of annulus flow. RangeError when the hub is not inside the tip. */
export function prepareBlades(rotor: RotorGeometry, model?: Partial<JetModel>): Blades {
  const m = { ...standardModel, ...model }
  if (!(rotor.hubDiameter > 0 && Math.max(rotor.hubDiameter, rotor.hubDiameterExit ?? 0) < rotor.tipDiameter))
    throw new RangeError(
      `rotor.hubDiameter: ${rotor.hubDiameter} m must lie between 0 and the tip's ${rotor.tipDiameter} m`,
    )
  const n = m.strips
  const arr = () => new Float64Array(n)
  const rt = rotor.tipDiameter / 2
  const rh1 = rotor.hubDiameter / 2
  const rh2 = (rotor.hubDiameterExit ?? rotor.hubDiameter) / 2
  const span2 = rt * rt - rh2 * rh2
  const b: Blades = {
    rotor,
    model: m,
    count: n,
    areaIn: Math.PI * (rt * rt - rh1 * rh1),
    areaOut: Math.PI * span2,
    share: arr(),
    r1: arr(),
    r2: arr(),
    chord: arr(),
    solidity: arr(),
    stagger: arr(),
    lambda1: arr(),
    lambda2: arr(),
    camber: arr(),
    ideal: arr(),
    turning: arr(),
    tanOut: arr(),
    open: arr(),
    slope: arr(),
    axialLength: ((rotor.pitchLeading + rotor.pitchTrailing) / 2) * (rotor.wrap / (2 * Math.PI)),
    span: rt - (rh1 + rh2) / 2,
    cm: arr(),
    a: arr(),
    da: arr(),
    db: arr(),
  }
  const rise = rh2 - rh1
  const z = rotor.blades
  for (let i = 0; i < n; i++) {
    const inner = rh2 + ((rt - rh2) * i) / n
    const outer = rh2 + ((rt - rh2) * (i + 1)) / n
    const r2 = Math.sqrt((inner * inner + outer * outer) / 2)
    const part = (r2 * r2 - rh2 * rh2) / span2
    const r1 = Math.sqrt(rh1 * rh1 + part * (rt * rt - rh1 * rh1))
    const rm = (r1 + r2) / 2
    b.share[i] = (outer * outer - inner * inner) / span2
    b.r1[i] = r1
    b.r2[i] = r2
    const pitch = (rotor.pitchLeading + rotor.pitchTrailing) / 2
    const slant = rise === 0 ? 0 : r2 - r1
    b.chord[i] = Math.hypot(Math.hypot(b.axialLength, slant), rm * rotor.wrap)
    b.solidity[i] = (z * b.chord[i]!) / (2 * Math.PI * rm)
    b.lambda1[i] = Math.atan2(2 * Math.PI * r1, rotor.pitchLeading)
    b.lambda2[i] = Math.atan2(2 * Math.PI * r2, rotor.pitchTrailing)
    b.stagger[i] = Math.atan2(2 * Math.PI * rm, pitch)
    // the helix's own change of angle with radius is no camber; only the growth of pitch along the blade is
    b.camber[i] =
      Math.atan2(2 * Math.PI * rm, rotor.pitchLeading) - Math.atan2(2 * Math.PI * rm, rotor.pitchTrailing)
    b.ideal[i] = turningShare(b.solidity[i]!, b.stagger[i]!)
    b.turning[i] = m.turning * b.ideal[i]!
    const out = Math.atan2(2 * Math.PI * r2, pitch) - (b.camber[i]! / 4) * (1 + b.turning[i]!)
    b.tanOut[i] = Math.tan(out)
    b.open[i] = Math.max(0.5, 1 - (z * rotor.trailingEdge) / (2 * Math.PI * r2 * Math.cos(b.lambda2[i]!)))
    b.slope[i] = b.tanOut[i]! / b.open[i]!
  }
  slopes(b.r2, b.slope, b.db)
  return b
}
