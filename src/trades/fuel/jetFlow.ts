/**
 * Fuel through a jet, and through a jet with a chip in it.
 * Q = Cd·A·√(2Δp/ρ), the orifice of every hydraulics text; Cd 0.70 to 0.80 for a bore two to four times as long as wide and Reynolds
 * above 1500, from memory. Blocked areas are plain geometry of a circle: a strip across its middle, a segment at its edge, a round grain.
 */

/** discharge of a carburettor jet, and its likely ends: from memory */
export const jetDischarge = { value: 0.75, low: 0.7, high: 0.8 }

/** m³/s through a jet of a bore (m) under a pressure difference (Pa); 0 where nothing draws. */
export function jetFlow(bore: number, pressure: number, density: number, discharge = 0.75): number {
  return pressure > 0 ? discharge * (Math.PI / 4) * bore ** 2 * Math.sqrt((2 * pressure) / density) : 0
}

/** Bore, m, of a jet that passes a mass flow (kg/s) under a pressure difference (Pa). */
export function jetFor(massFlow: number, pressure: number, density: number, discharge = 0.75): number {
  if (!(pressure > 0)) throw new RangeError(`pressure: ${pressure} Pa, expected above 0`)
  return Math.sqrt((4 * massFlow) / (Math.PI * discharge * Math.sqrt(2 * density * pressure)))
}

/** How a chip lies in a jet: across its middle, against its edge, or as a loose round grain. */
export type ChipForm = 'strip' | 'edge' | 'round'

/**
 * Share of a jet's area that a chip shuts, 0 to 1; `k` is its width over the jet's bore (a strip's width, an edge chip's height, a
 * grain's diameter), held to 0 to 1. RangeError when it is no number.
 */
export function chipBlocks(k: number, form: ChipForm): number {
  if (!Number.isFinite(k)) throw new RangeError(`k: ${k}, expected 0 to 1`)
  const w = Math.min(1, Math.max(0, k))
  if (form === 'round') return w * w
  // area of a unit circle between −h and h, over π
  const between = (h: number) => (2 * (h * Math.sqrt(1 - h * h) + Math.asin(h))) / Math.PI
  if (form === 'strip') return between(w)
  const d = 1 - 2 * w
  return d >= 0 ? (1 - between(d)) / 2 : (1 + between(-d)) / 2
}

/** How many times the depression at the jet has to grow for the same flow past a chip that shuts a share; Infinity when it shuts all. */
export function chokeFactor(blocked: number): number {
  return blocked < 1 ? 1 / (1 - blocked) ** 2 : Number.POSITIVE_INFINITY
}

/** Width of a strip over the jet's bore that shuts a share of it (0 to 1); by halving. */
export function stripThatBlocks(share: number): number {
  let low = 0
  let high = 1
  for (let i = 0; i < 60; i++) {
    const k = (low + high) / 2
    if (chipBlocks(k, 'strip') < share) low = k
    else high = k
  }
  return (low + high) / 2
}
