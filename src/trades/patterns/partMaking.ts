/** From developed pieces to a part: mass, hours, steps, what is wrong with it, the text it was made from. */
import { inMm } from '../../base/answers/amounts.ts'
import type { Finding } from '../../base/answers/finding.ts'
import type { FlatPiece, MadePart, SolidMesh } from '../../base/answers/madePart.ts'
import { joined, type Sentence, say } from '../../base/answers/sentence.ts'
import type { Development } from '../../shapes/development.ts'
import { foldedMesh } from '../../shapes/foldedMesh.ts'
import { pieceNumbers } from '../../shapes/nest.ts'
import { ShapeFault } from '../../shapes/shapeFault.ts'
import { hoursOf, type Job, rivetSteps, weldCautions, weldSteps } from './workPlan.ts'

/** kg/m³ of rolled sheet: handbook values, from memory */
export const density = { steel: 7850, aluminium: 2680 } as const
export type Metal = keyof typeof density

/** What a shape gives. */
export interface Shaped {
  flats: readonly FlatPiece[]
  /** those that are rolled or folded, to be shown in place */
  rolled?: readonly Development[]
  weld: number
  rolls?: number
  folds?: number
  rivets?: { count: number; pitch: number }
  /** after the usual steps */
  last?: readonly Sentence[]
}

export interface Wanted {
  id: string
  title: string
  of: readonly string[]
  says: Sentence
  metal: Metal
  thickness: number
  cautions?: readonly string[]
  instead?: true
  /** numbers it is made from, m and rad */
  from: Readonly<Record<string, number | string>>
  /** the field of the file that a shape's own value stands in, by the shape's name for it */
  paths?: Readonly<Record<string, string>>
  shape: () => Shaped
}

/** A sentence as an order that reads on after an arrow: no capital, no point. */
export function asOrder(sentence: Sentence): Sentence {
  const pieces = typeof sentence === 'string' ? [sentence] : [...sentence]
  const [first, last] = [pieces[0], pieces.at(-1)]
  if (typeof first === 'string') pieces[0] = first.charAt(0).toLowerCase() + first.slice(1)
  if (typeof last === 'string') pieces[pieces.length - 1] = (pieces.at(-1) as string).replace(/\.$/, '')
  return pieces.length === 1 && typeof pieces[0] === 'string' ? pieces[0] : pieces
}

function faultFinding(wanted: Wanted, fault: ShapeFault): Finding {
  const root = fault.field.split('.')[0]!
  const link = wanted.paths?.[fault.field] ?? wanted.paths?.[root] ?? wanted.of[0]
  return {
    id: `patterns.cannot.${wanted.id}`,
    question: 'make',
    says: joined([say`${wanted.title} cannot be cut as it stands`, fault.says], ': '),
    standing: 'watch',
    because: [{ says: say`made of sheet of ${inMm(wanted.thickness, 0.1)}`, ...(link ? { link } : {}) }],
    act: asOrder(fault.act),
    harm: 'comfort',
    sources: ['exact geometry'],
  }
}

/** The text that a part is made from: the same numbers to the hundredth of a millimetre give the same text. */
const madeFrom = (w: Wanted): string =>
  [w.id, w.metal, ...Object.entries({ ...w.from, thickness: w.thickness })]
    .map((e) =>
      typeof e === 'string' ? e : `${e[0]} ${typeof e[1] === 'number' ? Math.round(e[1] * 1e5) / 1e5 : e[1]}`,
    )
    .join('; ')

/** A part of sheet; one that cannot be made carries the finding that says why, and nothing to cut. */
export function sheetPart(w: Wanted): MadePart {
  const base = {
    id: w.id,
    title: w.title,
    of: w.of,
    how: 'sheet' as const,
    says: w.says,
    material: `${w.metal} sheet`,
    cautions: [...weldCautions, ...(w.cautions ?? [])],
    madeFrom: madeFrom(w),
    ...(w.instead ? { instead: w.instead } : {}),
  }
  let shaped: Shaped
  try {
    shaped = w.shape()
  } catch (error) {
    if (!(error instanceof ShapeFault)) throw error
    return { ...base, hours: [], steps: [], findings: [faultFinding(w, error)] }
  }
  const { flats, rolled, weld, rolls = 0, folds = 0, rivets, last = [] } = shaped
  const numbers = flats.map((f) => ({ n: f.count, ...pieceNumbers(f, density[w.metal]) }))
  const job: Job = {
    thickness: w.thickness,
    cut: numbers.reduce((sum, p) => sum + p.n * p.cutLength, 0),
    weld,
    rolls,
    folds,
    rivets: rivets?.count ?? 0,
  }
  return {
    ...base,
    mass: numbers.reduce((sum, p) => sum + p.n * p.mass, 0),
    hours: hoursOf(job),
    steps: [
      'Print one page, measure its square, then print the rest; glue the paper on, the R readable, and cut on the outside of the line.',
      ...weldSteps(job, flats.length),
      ...(rivets ? rivetSteps(rivets.count, rivets.pitch) : []),
      ...last,
    ],
    findings: [],
    flats: () => flats,
    ...(rolled
      ? {
          folded: (): SolidMesh[] =>
            rolled.flatMap((d) => d.strips.map((s) => foldedMesh(s, d.piece.thickness))),
        }
      : {}),
  }
}
