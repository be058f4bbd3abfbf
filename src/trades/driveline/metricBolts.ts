/**
 * Metric coarse bolts. Threads: ISO 261 pitches; ISO 965-2 limits of 6g bolts and 6H nuts; stress area and proof stress: ISO 898-1
 * (stainless: ISO 3506-1). Heads: ISO 4762; holes: ISO 273 medium; washers: ISO 7089 and ISO 7093; keys: ISO 2936. Sizes from memory,
 * the thread limits of M6 and up checked against a printed table.
 */
import type { BoltSize } from '../../craft/schema/boltSizes.ts'

/** All lengths m. */
export interface Bolt {
  size: BoltSize
  d: number
  pitch: number
  /** least and most by their tolerances: bolt's outside and pitch diameters, nut's pitch and inside diameters */
  dMin: number
  d2Min: number
  D2Max: number
  D1Max: number
  /** under the head, hole, plain washer and wide washer across */
  head: number
  hole: number
  washer: number
  wide: number
  /** long arm of its key */
  key: number
}

type Row = readonly [
  pitch: number,
  dMin: number,
  d2Min: number,
  D2Max: number,
  D1Max: number,
  head: number,
  hole: number,
  washer: number,
  wide: number,
  key: number,
]

/** mm */
const rows: Readonly<Record<BoltSize, Row>> = {
  M3: [0.5, 2.874, 2.58, 2.775, 2.599, 5.5, 3.4, 7, 9, 56],
  M4: [0.7, 3.838, 3.433, 3.663, 3.422, 7, 4.5, 9, 12, 63],
  M5: [0.8, 4.826, 4.361, 4.605, 4.334, 8.5, 5.5, 10, 15, 70],
  M6: [1, 5.794, 5.212, 5.5, 5.153, 10, 6.6, 12, 18, 80],
  M8: [1.25, 7.76, 7.042, 7.348, 6.912, 13, 9, 16, 24, 90],
  M10: [1.5, 9.732, 8.862, 9.206, 8.676, 16, 11, 20, 30, 112],
  M12: [1.75, 11.701, 10.679, 11.063, 10.441, 18, 13.5, 24, 37, 125],
}

const made = new Map<BoltSize, Bolt>(
  (Object.keys(rows) as BoltSize[]).map((size) => {
    const [pitch, dMin, d2Min, D2Max, D1Max, head, hole, washer, wide, key] = rows[size].map(
      (x) => 1e-3 * x,
    ) as unknown as Row
    const d = 1e-3 * Number(size.slice(1))
    return [size, { size, d, pitch, dMin, d2Min, D2Max, D1Max, head, hole, washer, wide, key }]
  }),
)

/** The bolt of a size; RangeError for a size that is not in the table. */
export function boltOf(size: string): Bolt {
  const bolt = made.get(size as BoltSize)
  if (!bolt) throw new RangeError(`size: "${size}" is not one of ${[...made.keys()].join(', ')}`)
  return bolt
}

/** Pitch diameter, m: d − 0.6495 P. */
export const pitchDiameter = (b: Bolt): number => b.d - 0.649519 * b.pitch

/** Diameter of the stress area, m: the mean of pitch and root diameter. */
export const stressDiameter = (b: Bolt): number => b.d - 0.938194 * b.pitch

/** Stress area, m²: π/4 ((d2 + d3)/2)². */
export const stressArea = (b: Bolt): number => (Math.PI / 4) * stressDiameter(b) ** 2

export interface BoltClass {
  /** stress at 0.2 % lasting stretch, proof stress and strength, Pa */
  yields: number
  proof: number
  breaks: number
}

const classes = {
  'A2-70': { yields: 450e6, proof: 450e6, breaks: 700e6 },
  'steel 4.6': { yields: 240e6, proof: 225e6, breaks: 400e6 },
  'steel 8.8': { yields: 640e6, proof: 580e6, breaks: 800e6 },
  'steel 10.9': { yields: 940e6, proof: 830e6, breaks: 1040e6 },
  'steel 12.9': { yields: 1100e6, proof: 970e6, breaks: 1220e6 },
} as const satisfies Readonly<Record<string, BoltClass>>

export type ClassName = keyof typeof classes
export const classNames = Object.keys(classes) as ClassName[]

/** Strengths of a class by its name; RangeError for one that is not in the table. */
export function classOf(name: string): BoltClass {
  const known = classes[name as ClassName]
  if (!known) throw new RangeError(`class: "${name}" is not one of ${classNames.join(', ')}`)
  return known
}

/** Size above this one, for a stronger joint; undefined above the last. */
export function nextSize(size: BoltSize): BoltSize | undefined {
  const names = [...made.keys()]
  return names[names.indexOf(size) + 1]
}

/** Area a head, or a washer under it, bears on, m². */
export function bearingArea(b: Bolt, under: 'none' | 'plain' | 'wide' | 'disc springs'): number {
  const out = under === 'none' ? b.head : under === 'plain' ? b.washer : b.wide
  return (Math.PI / 4) * (out ** 2 - b.hole ** 2)
}
