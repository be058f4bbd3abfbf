/**
 * Tolerances of metric threads, ISO 965-1, from memory; the rows up to 2 mm of pitch were compared with printed tables of limits, the others
 * with the standard's own formulas (clause 13) to one step of the R40 series. Grades differ from grade 6 by whole steps of that series:
 * 4, 8 and 12 steps are 1.26, 1.58 and 2 times. Micrometres and millimetres inside, as the standard is written; the door is metres.
 */
import { threadError } from './threadForms.ts'

/** the R40 series over one decade (ISO 3, rounded as the standard rounds) */
const r40 = [
  100, 106, 112, 118, 125, 132, 140, 150, 160, 170, 180, 190, 200, 212, 224, 236, 250, 265, 280, 300, 315,
  335, 355, 375, 400, 425, 450, 475, 500, 530, 560, 600, 630, 670, 710, 750, 800, 850, 900, 950,
] as const

/** nearest number of the series, µm */
export function nearestStep(um: number): number {
  const decade = 10 ** Math.floor(Math.log10(um) - 2)
  let best = 0
  for (const base of r40)
    for (const x of [base * decade, base * decade * 10])
      if (Math.abs(Math.log(x / um)) < Math.abs(Math.log(best / um || Number.MIN_VALUE))) best = x
  return Math.round(best * 10) / 10
}

/** a number of the series, so many steps on; µm, whole where it is above 100 */
export function stepped(um: number, steps: number): number {
  const decade = Math.floor(Math.log10(um) - 2 + 1e-9)
  const at = r40.findIndex((x) => Math.abs(x * 10 ** decade - um) < 0.006 * um)
  const to = (at < 0 ? r40.findIndex((x) => x * 10 ** decade >= um) : at) + steps
  const value = r40[((to % 40) + 40) % 40]! * 10 ** (decade + Math.floor(to / 40))
  return value < 100 ? Math.round(value) : value
}

/** pitch, mm: fundamental deviation of e, f and g (0 where none), tolerance of the outside major and the inside minor diameter in grade 6, µm */
type PitchRow = readonly [pitch: number, e: number, f: number, g: number, Td: number, TD1: number]

const pitchRows: readonly PitchRow[] = [
  [0.2, 0, 0, 17, 56, 60],
  [0.25, 0, 0, 18, 67, 71],
  [0.3, 0, 0, 18, 75, 85],
  [0.35, 0, 34, 19, 85, 100],
  [0.4, 0, 34, 19, 95, 112],
  [0.45, 0, 35, 20, 100, 125],
  [0.5, 50, 36, 20, 106, 140],
  [0.6, 53, 36, 21, 125, 160],
  [0.7, 56, 38, 22, 140, 180],
  [0.75, 56, 38, 22, 140, 190],
  [0.8, 60, 38, 24, 150, 200],
  [1, 60, 40, 26, 180, 236],
  [1.25, 63, 42, 28, 212, 265],
  [1.5, 67, 45, 32, 236, 300],
  [1.75, 71, 48, 34, 265, 335],
  [2, 71, 52, 38, 280, 375],
  [2.5, 80, 58, 42, 335, 450],
  [3, 85, 63, 48, 375, 500],
  [3.5, 90, 70, 53, 425, 560],
  [4, 95, 75, 60, 475, 600],
  [4.5, 100, 80, 63, 500, 670],
  [5, 106, 85, 71, 530, 710],
  [5.5, 112, 90, 75, 560, 750],
  [6, 118, 95, 80, 600, 800],
  [8, 140, 118, 100, 710, 950],
]

/** pitches ISO 965-1 has tolerances for, mm */
export const isoPitches: readonly number[] = pitchRows.map(([p]) => p)

/** ends of the ranges of diameter, mm: over the first, up to and with the second */
export const isoRanges = [0.99, 1.4, 2.8, 5.6, 11.2, 22.4, 45, 90, 180, 355] as const

/** tolerance of the outside pitch diameter in grade 6 by range of diameter and pitch, µm */
const pitchDiameterRows: readonly (readonly (readonly [pitch: number, um: number])[])[] = [
  [
    [0.2, 48],
    [0.25, 53],
    [0.3, 56],
  ],
  [
    [0.2, 50],
    [0.25, 56],
    [0.35, 63],
    [0.4, 67],
    [0.45, 71],
  ],
  [
    [0.35, 67],
    [0.5, 75],
    [0.6, 85],
    [0.7, 90],
    [0.75, 90],
    [0.8, 95],
  ],
  [
    [0.75, 100],
    [1, 112],
    [1.25, 118],
    [1.5, 132],
  ],
  [
    [1, 118],
    [1.25, 132],
    [1.5, 140],
    [1.75, 150],
    [2, 160],
    [2.5, 170],
  ],
  [
    [1, 125],
    [1.5, 150],
    [2, 170],
    [3, 200],
    [3.5, 212],
    [4, 224],
    [4.5, 236],
  ],
  [
    [1.5, 160],
    [2, 180],
    [3, 212],
    [4, 236],
    [5, 250],
    [5.5, 265],
    [6, 280],
  ],
  [
    [2, 190],
    [3, 224],
    [4, 250],
    [6, 300],
    [8, 335],
  ],
  [
    [3, 250],
    [4, 280],
    [6, 315],
    [8, 355],
  ],
]

const same = (a: number, b: number) => Math.abs(a - b) < 1e-6

/** The standard's formula of that tolerance, µm: 90 P^0.4 d^0.1, d the geometric mean of the range's ends; mm. */
export function pitchToleranceFormula(range: number, pitch: number): number {
  return 90 * pitch ** 0.4 * Math.sqrt(isoRanges[range]! * isoRanges[range + 1]!) ** 0.1
}

/** Every row of the table of pitch diameter tolerances: range number, pitch in mm, µm. */
export const pitchToleranceRows: readonly (readonly [range: number, pitch: number, um: number])[] =
  pitchDiameterRows.flatMap((rows, i) => rows.map(([p, um]) => [i, p, um] as const))

/** grade: steps of the series from grade 6, for outside threads and for the pitch diameter of inside ones over outside grade 6 */
const outsideSteps: Readonly<Record<number, number>> = { 3: -12, 4: -8, 5: -4, 6: 0, 7: 4, 8: 8, 9: 12 }
const insideSteps: Readonly<Record<number, number>> = { 4: -3, 5: 1, 6: 5, 7: 9, 8: 13 }

export interface IsoTolerances {
  /** the fundamental deviation, towards clearance on both sides, m on the diameter */
  outside: number
  inside: number
  /** tolerances on the diameter, m */
  Td: number
  Td2: number
  TD1: number
  TD2: number
  /** whether the standard's table has the pitch for the diameter; false where its formula was used */
  tabled: boolean
}

export interface IsoClass {
  /** as "6g": grade and place of the outside thread's tolerance */
  outside: string
  /** as "6H" */
  inside: string
}

const placeOf = (row: PitchRow, letter: string): number => {
  const at = { e: row[1], f: row[2], g: row[3], h: 0 }[letter.toLowerCase()]
  if (at === undefined || (at === 0 && letter.toLowerCase() !== 'h'))
    throw threadError('class', `"${letter}"`, `what ISO 965-1 has at a pitch of ${row[0]} mm`)
  return at
}

/**
 * Tolerances of a metric thread by ISO 965-1, m on the diameter. Diameter 0.99 to 355 mm, pitches of the standard; RangeError naming field,
 * value and limit else, as a thread outside the standard has none.
 */
export function isoTolerances(d: number, pitch: number, { outside, inside }: IsoClass): IsoTolerances {
  const [D, P] = [1e3 * d, Math.round(1e6 * pitch) / 1e3]
  const shown = (x: number) => `${Math.round(x * 1e3) / 1e3} mm`
  const row = pitchRows.find(([p]) => same(p, P))
  if (!row)
    throw threadError(
      'pitch',
      shown(P),
      `the pitches of ISO 965-1 (${isoPitches.join(', ')} mm): it has no tolerances for it`,
    )
  const range = isoRanges.findIndex((from, i) => D > from && D <= (isoRanges[i + 1] ?? 0))
  if (range < 0) throw threadError('d', shown(D), '0.99 to 355 mm of ISO 965-1: it has no tolerances for it')
  const outGrade = Number(outside[0])
  const inGrade = Number(inside[0])
  const [outSteps, inSteps] = [outsideSteps[outGrade], insideSteps[inGrade]]
  if (outSteps === undefined || !/^[3-9][efgh]$/.test(outside))
    throw threadError('class', `"${outside}"`, '3 to 9 with e, f, g or h')
  if (inSteps === undefined || !/^[4-8][GH]$/.test(inside))
    throw threadError('class', `"${inside}"`, '4 to 8 with G or H')
  const tabled = pitchDiameterRows[range]!.find(([p]) => same(p, P))
  const six = tabled?.[1] ?? nearestStep(pitchToleranceFormula(range, P))
  // the major diameter has grades 4, 6 and 8 only, and takes the next of them
  const majorGrade = outGrade <= 4 ? 4 : outGrade >= 8 ? 8 : 6
  const um = 1e-6
  return {
    outside: um * placeOf(row, outside[1]!),
    inside: um * placeOf(row, inside[1]!),
    Td: um * stepped(row[4], outsideSteps[majorGrade]!),
    Td2: um * stepped(six, outSteps),
    TD1: um * stepped(row[5], outsideSteps[inGrade]!),
    TD2: um * stepped(six, inSteps),
    tabled: tabled !== undefined,
  }
}
