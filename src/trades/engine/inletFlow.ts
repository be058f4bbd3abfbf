/**
 * Inlet: the column of mixture in the tract as one mass between the air outside and the crankcase, held back by the
 * carburettor and by the reed or the piston-port window (lumped inertance; elementary momentum balance). Petals: quasi-
 * static, opening in proportion to the pressure drop across them, up to their stop. Cantilever frequency: W. T.
 * Thomson, Theory of Vibration with Applications (1981), table of beam modes (1.875^2 = 3.516).
 */

/** Mass flow after dt, kg/s, positive into the case. Semi-implicit, so a shut valve just stops the column. */
export function advanceColumn(
  flow: number,
  dt: number,
  area: number,
  length: number,
  drop: number,
  rho: number,
  carbArea: number,
  valveArea: number,
): number {
  if (valveArea < 1e-9) return 0
  const k = (1 / (carbArea * carbArea) + 1 / (valveArea * valveArea)) / (2 * rho)
  const g = (dt * area) / length
  return (flow + g * drop) / (1 + g * k * Math.abs(flow))
}

/** Open area of the reed times its discharge coefficient, m2, for the pressure drop from air to case, Pa. */
export function reedArea(full: number, crack: number, span: number, drop: number): number {
  const lift = (drop - crack) / span
  return lift <= 0 ? 0 : full * Math.min(1, lift)
}

/** Young's modulus Pa and density kg/m3 of petal materials; handbook values, from memory. */
export const petalMaterials = {
  steel: { modulus: 206e9, density: 7850 },
  glass: { modulus: 22e9, density: 1900 },
  carbon: { modulus: 55e9, density: 1500 },
} as const

/** Lowest frequency of a petal clamped at one end, Hz; metres. */
export function petalFrequency(
  material: keyof typeof petalMaterials,
  length: number,
  thickness: number,
): number {
  const { modulus, density } = petalMaterials[material]
  return (
    (3.516 / (2 * Math.PI * length * length)) * Math.sqrt((modulus * thickness * thickness) / (12 * density))
  )
}
