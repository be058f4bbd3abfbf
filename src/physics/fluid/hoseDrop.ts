/**
 * Pressure that a liquid loses in a hose.
 * Laminar: G. Hagen 1839, J. Poiseuille 1840, Δp = 128 μ L Q/(π d⁴). Turbulent: C. F. Colebrook, J. Inst. Civil Engineers 11 (1939),
 * 1/√f = −2 log10(ε/3.7d + 2.51/(Re √f)), with Darcy and Weisbach. Between Reynolds 2000 and 4000 nothing is sure: the factor is led
 * over by a cubic in Re that meets both ends in value, and the regime says so. Fittings: Σζ·½ρv² in their narrowest hole.
 */

export interface Hose {
  /** m */
  bore: number
  length: number
  /** m, of its wall; 0 smooth */
  roughness: number
  /** loss factors added up, counted on the speed in `narrowest` */
  losses: number
  /** m, hole of the narrowest fitting */
  narrowest: number
  /** Pa for each m³/s besides, as a clean filter takes */
  linear?: number
}

export interface Liquid {
  /** kg/m³ */
  density: number
  /** dynamic, Pa·s */
  viscosity: number
}

export type FlowRegime = 'still' | 'laminar' | 'between' | 'turbulent'

const laminarTo = 2000
const turbulentFrom = 4000

/** Darcy's friction factor after Colebrook; Re 2000 and up, `roughness` over bore 0 to 0.05. */
export function colebrook(Re: number, roughness: number): number {
  if (!(Re > 0)) throw new RangeError(`Reynolds number ${Re} must be above 0`)
  // fixed point in s = 1/√f; it contracts by 0.87/s a pass
  let s = 7
  for (let i = 0; i < 60; i++) {
    const next = -2 * Math.log10(roughness / 3.7 + (2.51 * s) / Re)
    const step = Math.abs(next - s)
    s = next
    if (step < 1e-14 * s) break
  }
  return 1 / (s * s)
}

/** Darcy's factor at any Reynolds number above 0. */
function darcy(Re: number, roughness: number): number {
  if (Re <= laminarTo) return 64 / Re
  if (Re >= turbulentFrom) return colebrook(Re, roughness)
  const t = (Re - laminarTo) / (turbulentFrom - laminarTo)
  const smooth = t * t * (3 - 2 * t)
  return (1 - smooth) * (64 / laminarTo) + smooth * colebrook(turbulentFrom, roughness)
}

export interface HoseFlow {
  /** Pa lost, with the sign of the flow */
  drop: number
  reynolds: number
  regime: FlowRegime
}

/** What a flow (m³/s, either way) loses in a hose. RangeError on a hose without a bore. */
export function hoseDrop(flow: number, hose: Hose, { density, viscosity }: Liquid): HoseFlow {
  if (!(hose.bore > 0)) throw new RangeError(`bore: ${hose.bore} m, expected above 0`)
  if (!(hose.narrowest > 0)) throw new RangeError(`narrowest: ${hose.narrowest} m, expected above 0`)
  if (flow === 0) return { drop: 0, reynolds: 0, regime: 'still' }
  const Q = Math.abs(flow)
  const speed = (4 * Q) / (Math.PI * hose.bore ** 2)
  const reynolds = (density * speed * hose.bore) / viscosity
  const friction =
    (darcy(reynolds, hose.roughness / hose.bore) * hose.length * density * speed ** 2) / (2 * hose.bore)
  const narrow = (4 * Q) / (Math.PI * hose.narrowest ** 2)
  const drop = friction + 0.5 * hose.losses * density * narrow ** 2 + (hose.linear ?? 0) * Q
  const regime = reynolds <= laminarTo ? 'laminar' : reynolds >= turbulentFrom ? 'turbulent' : 'between'
  return { drop: Math.sign(flow) * drop, reynolds, regime }
}

/** Flow (m³/s) that a pressure (Pa, either way) drives through a hose, and how it grows with the pressure, m³/(s·Pa). */
export function hoseFlow(pressure: number, hose: Hose, liquid: Liquid): { flow: number; slope: number } {
  const want = Math.abs(pressure)
  const laminar =
    (128 * liquid.viscosity * hose.length) / (Math.PI * hose.bore ** 4) + (hose.linear ?? 0) || 1e3
  const at = (Q: number) => hoseDrop(Q, hose, liquid).drop
  const slopeAt = (Q: number) => {
    const d = Math.max(1e-4 * Q, 1e-14)
    return (at(Q + d) - at(Q)) / d
  }
  if (want === 0) return { flow: 0, slope: 1 / slopeAt(0) }
  // laminar flow alone is the most that the pressure can drive; the drop rises with the flow, so there is one root
  let low = 0
  let high = want / laminar
  while (at(high) < want) high *= 2
  let Q = Math.min(high, want / laminar)
  for (let i = 0; i < 80; i++) {
    const over = at(Q) - want
    if (Math.abs(over) <= 1e-13 * want) break
    if (over > 0) high = Q
    else low = Q
    const next = Q - over / slopeAt(Q)
    Q = next > low && next < high ? next : (low + high) / 2
    if (high - low <= 1e-15 * high) break
  }
  return { flow: Math.sign(pressure) * Q, slope: 1 / slopeAt(Q) }
}
