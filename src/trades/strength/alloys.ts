/**
 * Sheet alloys of small craft: strengths, as bought and as welded. Minima, Pa.
 * Sources: EN 485-2 (5083); ASTM B209 (5052, 6061, from memory); as welded: American Bureau of Shipping, Guide for High Speed Craft,
 * 2-5-A1 table 2 (5083, 5086, 6061); 5052 welded taken at its annealed temper (Aluminum Design Manual, from memory).
 */
export interface Alloy {
  id: string
  /** Pa, least */
  yield: number
  ultimate: number
  weldedYield: number
  weldedUltimate: number
  /** kg/m³ */
  density: number
  /** W/(m·K) */
  conductivity: number
  /** K, above which it should not work for long; absent when not limited in this use */
  hottest?: number
  note: string
}

/** Pa, K⁻¹: alike for all of them */
export const aluminium = { modulus: 70e9, poisson: 0.33, expansion: 23.5e-6 }

const MPa = 1e6

const alloys: readonly Alloy[] = [
  {
    id: '5052-H32',
    yield: 160 * MPa,
    ultimate: 215 * MPa,
    weldedYield: 65 * MPa,
    weldedUltimate: 170 * MPa,
    density: 2680,
    conductivity: 138,
    note: 'bends and welds well; the usual thin deck sheet',
  },
  {
    id: '5052-O',
    yield: 65 * MPa,
    ultimate: 170 * MPa,
    weldedYield: 65 * MPa,
    weldedUltimate: 170 * MPa,
    density: 2680,
    conductivity: 138,
    note: 'annealed: soft',
  },
  {
    id: '5083-O/H111',
    yield: 125 * MPa,
    ultimate: 275 * MPa,
    weldedYield: 145 * MPa,
    weldedUltimate: 269 * MPa,
    density: 2660,
    conductivity: 117,
    hottest: 338,
    note: 'keep below 65 °C for long spells',
  },
  {
    id: '5083-H116',
    yield: 215 * MPa,
    ultimate: 305 * MPa,
    weldedYield: 165 * MPa,
    weldedUltimate: 276 * MPa,
    density: 2660,
    conductivity: 117,
    hottest: 338,
    note: 'strong when welded; keep below 65 °C for long spells',
  },
  {
    id: '5086-H116',
    yield: 195 * MPa,
    ultimate: 275 * MPa,
    weldedYield: 131 * MPa,
    weldedUltimate: 241 * MPa,
    density: 2660,
    conductivity: 125,
    hottest: 338,
    note: 'as 5083, a little softer',
  },
  {
    id: '6061-T6',
    yield: 240 * MPa,
    ultimate: 290 * MPa,
    weldedYield: 138 * MPa,
    weldedUltimate: 165 * MPa,
    density: 2700,
    conductivity: 167,
    note: 'strong as bought; loses half its strength beside a weld; cracks when bent tight',
  },
]

export const alloyNames: readonly string[] = alloys.map((a) => a.id)

/** The alloy of a name; RangeError listing the names. */
export function alloyOf(id: string): Alloy {
  const found = alloys.find((a) => a.id === id)
  if (found === undefined) throw new RangeError(`alloy: "${id}", expected one of ${alloyNames.join(', ')}`)
  return found
}

/** Yield and ultimate strength that count, Pa: as welded within about 25 mm of a weld. */
export function strengthOf(alloy: Alloy, welded: boolean): { yield: number; ultimate: number } {
  if (!welded) return { yield: alloy.yield, ultimate: alloy.ultimate }
  return {
    yield: Math.min(alloy.yield, alloy.weldedYield),
    ultimate: Math.min(alloy.ultimate, alloy.weldedUltimate),
  }
}
