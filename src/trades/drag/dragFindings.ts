/** What the drag model has to say about a craft: rider's place, hump, porpoising, intake, depth, and how far the methods can be trusted. */
import {
  inCm,
  inDegrees,
  inKg,
  inKgPerM2,
  inMetres,
  inNewtons,
  inPercent,
  inSpeed,
  withEnds,
} from '../../base/answers/amounts.ts'
import type { Because, Finding, MeasureNext } from '../../base/answers/finding.ts'
import { type Sentence, say } from '../../base/answers/sentence.ts'
import { fieldAt } from '../../craft/index.ts'
import { usualLoading } from '../../hull/aboard/aboard.ts'
import type { DragModel, DragPoint } from './drag.ts'
import type { Answered, DragAnswer, DragInputs } from './dragAnswer.ts'
import type { DragLimits } from './dragLimits.ts'
import { criticalSpeed } from './hullSpec.ts'

const savitsky = 'Savitsky 1964, Hydrodynamic design of planing hulls'
const mercier = 'Mercier and Savitsky 1973, Resistance of transom-stern craft in the pre-planing regime'

const tow: MeasureNext = {
  what: 'tow it at a steady walk and note pull and speed, with the rider on board',
  with: 'luggage scale, rope and phone',
  minutes: 20,
}

/** The measurement the craft file's own field asks for. */
function measureOf(path: string): { measureNext?: MeasureNext } {
  const how = fieldAt(path)?.measure
  return how ? { measureNext: { ...how, path } } : {}
}

/** All findings of an answer. */
export function dragFindingsOf(inputs: DragInputs, a: DragAnswer, limits: DragLimits): Finding[] {
  const { model, answered } = a
  if (!answered) return [...meshWords(inputs), doesNotFloat(model)]
  return [
    ...meshWords(inputs),
    ...(inputs.weightsAssumed ? [noWeights(inputs.loading.mass)] : []),
    riderPlace(inputs, model, answered, limits),
    ...porpoising(answered.here, limits),
    ...intakeDry(inputs, answered.here),
    ...ploughing(answered.here, limits),
    ...shallow(model, limits),
    trust(model, answered),
  ]
}

function meshWords({ meshUnused }: DragInputs): Finding[] {
  if (!meshUnused) return []
  return [
    {
      id: 'hull.mesh',
      question: 'push',
      says: meshUnused.says,
      standing: 'watch',
      because: [{ says: `the file names ${meshUnused.name}`, link: 'hull.mesh' }],
      sources: ['The craft file and the hull file beside it'],
    },
  ]
}

function noWeights(mass: number): Finding {
  return {
    id: 'hull.weights-assumed',
    question: 'push',
    says: say`The file lists no weights: ${inKg(mass, 1)} is taken for a craft of this size, and drag and trim hang on it.`,
    value: mass,
    low: 0.6 * mass,
    high: 1.5 * mass,
    unit: 'kg',
    standing: 'unknown',
    because: [
      { says: 'no weights in the file', link: 'weights' },
      { says: say`${inKgPerM2(usualLoading)} of length times beam: judgement, no source` },
    ],
    measureNext: {
      what: 'weigh each end of the craft, then list what is on board',
      with: 'luggage scale',
      minutes: 30,
      path: 'weights',
    },
    sources: ['judgement, no source'],
  }
}

function doesNotFloat(model: DragModel): Finding {
  return {
    id: 'hull.drag-unknown',
    question: 'push',
    says: 'The drag is not known: at this weight no level float was found for the hull.',
    standing: 'unknown',
    because: model.flags.map((f) => ({ says: f.says ?? f.text, link: 'hull' })),
    sources: [savitsky],
  }
}

function riderPlace(
  { riderAt, fastest }: DragInputs,
  model: DragModel,
  { climb, top }: Answered,
  limits: DragLimits,
): Finding {
  const { speed, now, best, step, moved } = climb
  const gain = now.drag - moved.drag
  const near = now.drag / best.drag - 1 <= limits.placeCost.value
  const way = step > 0 ? 'forward' : 'aft'
  const buys = say`${gain >= 0 ? 'saves' : 'costs'} ${inNewtons(Math.abs(gain))}`
  const says: Sentence = near
    ? say`In the climb onto the plane, at ${inSpeed(speed)}, the rider sits close to the best place: ${inNewtons(now.drag)} to push through.`
    : say`The climb onto the plane is hardest at ${inSpeed(speed)}: it takes ${inNewtons(now.drag)} with the rider ${inMetres(riderAt)} forward of the transom; ${inNewtons(best.drag)} with the rider at ${inMetres(best.riderAt)}. Moving ${inCm(Math.abs(step))} ${way} ${buys}.`
  return {
    id: 'hull.rider-place',
    question: 'push',
    says,
    ...known(best.riderAt, 'm'),
    standing: near ? 'good' : 'watch',
    because: [
      {
        says: say`trim there ${inDegrees(now.trim)} now, ${inDegrees(best.trim)} at the best place`,
        link: 'rider.position',
      },
      {
        says: say`at ${inSpeed(fastest)} the best place is ${inMetres(top.best.riderAt)}: ${inNewtons(top.best.drag)} against ${inNewtons(top.now.drag)}`,
        link: 'rider.position',
      },
      { says: say`${inKg(model.mass, 1)} all aboard`, link: 'weights' },
    ],
    ...(near ? {} : { act: say`move the rider to ${inMetres(best.riderAt)} for the climb` }),
    ...measureOf('rider.position'),
    sources: [savitsky, mercier],
  }
}

const known = (value: number, unit: string): Pick<Finding, 'value' | 'unit'> =>
  Number.isFinite(value) ? { value, unit } : {}

/** Speeds of the points that match, as one range, m/s. */
function rangeOf(
  points: readonly DragPoint[],
  matches: (p: DragPoint) => boolean,
): [number, number] | undefined {
  const hit = points.filter(matches)
  return hit.length > 0 ? [hit[0]!.speed, hit.at(-1)!.speed] : undefined
}

const span = ([a, b]: [number, number]): Sentence =>
  b - a < 0.05 ? say`at ${inSpeed(a)}` : say`from ${inSpeed(a)} to ${inSpeed(b)}`

function porpoising(points: readonly DragPoint[], limits: DragLimits): Finding[] {
  const band = limits.porpoising.value
  const open = rangeOf(points, (p) => p.porpoiseMargin < band)
  if (!open) return []
  const worst = points.reduce((a, b) =>
    b.porpoiseMargin < (a.porpoiseMargin || Number.POSITIVE_INFINITY) ? b : a,
  )
  const margin = worst.porpoiseMargin
  return [
    {
      id: 'hull.porpoising',
      question: 'push',
      says: say`The bow ${margin < -band ? 'will likely' : 'may'} start to bounce by itself ${span(open)}: trim ${inDegrees(worst.trim)} at ${inSpeed(worst.speed)}, limit ${inDegrees(worst.trim + margin)} give or take ${inDegrees(band)}.`,
      value: margin,
      low: margin - band,
      high: margin + band,
      unit: 'rad',
      standing: 'watch',
      because: [
        {
          says: 'weight further forward, or a wedge under the transom, lowers the trim',
          link: 'rider.position',
        },
        { says: 'more deadrise raises the limit', link: 'hull.deadrise' },
        { says: 'light craft fall at the edge of the tests behind the limit' },
      ],
      sources: [savitsky, 'Celano 1998, The prediction of porpoising inception for modern planing craft'],
    },
  ]
}

function intakeDry({ intakeFront }: DragInputs, points: readonly DragPoint[]): Finding[] {
  const dry = rangeOf(points, (p) => p.flags.some((f) => f.code === 'intake dry'))
  if (!dry) return []
  return [
    {
      id: 'hull.intake-dry',
      question: 'push',
      says: say`The jet will suck air ${span(dry)}: the wetted bottom ends aft of the intake's front edge, ${inMetres(intakeFront)} forward of the transom.`,
      value: dry[0],
      unit: 'm/s',
      standing: 'watch',
      because: [
        { says: say`intake front at ${inMetres(intakeFront)}`, link: 'jet.intake.front' },
        { says: 'the rider further forward wets more bottom', link: 'rider.position' },
      ],
      ...measureOf('jet.intake.front'),
      sources: [savitsky],
    },
  ]
}

function ploughing(points: readonly DragPoint[], limits: DragLimits): Finding[] {
  const out: Finding[] = []
  const mush = rangeOf(points, (p) => p.balance === 'mushing')
  if (mush)
    out.push({
      id: 'hull.mushing',
      question: 'push',
      says: say`With the rider where the file says, the craft ploughs bow high ${span(mush)}: the weight is too far aft for any balance below 20° of trim.`,
      value: mush[0],
      unit: 'm/s',
      standing: 'stop',
      because: [
        { says: 'the rider', link: 'rider.position' },
        { says: 'where the weights are', link: 'weights' },
      ],
      sources: [savitsky],
    })
  const nose = rangeOf(
    points,
    (p) =>
      p.regime !== 'displacement' && p.balance === 'bow down' && p.methods.share > limits.nosePlaning.value,
  )
  if (nose)
    out.push({
      id: 'hull.bow-down',
      question: 'push',
      says: say`With the rider where the file says, the bottom is wet to the nose ${span(nose)}: the bow may dig in on a wave or a turn.`,
      value: nose[0],
      unit: 'm/s',
      standing: 'watch',
      because: [{ says: 'the rider', link: 'rider.position' }],
      sources: [savitsky],
    })
  return out
}

/** parts of the wave speed between which shallow water is felt */
const felt: readonly [number, number] = [0.7, 1.3]

function shallow(model: DragModel, limits: DragLimits): Finding[] {
  const depth = model.conditions.depth
  if (!(depth < limits.shallow.value * model.spec.length)) return []
  const c = criticalSpeed(depth)
  return [
    {
      id: 'hull.shallow',
      question: 'push',
      says: say`In ${inMetres(depth)} of water its own wave runs at ${inSpeed(c)}: between ${inSpeed(felt[0] * c)} and ${inSpeed(felt[1] * c)} the drag can be tens of per cent above these numbers.`,
      value: c,
      low: felt[0] * c,
      high: felt[1] * c,
      unit: 'm/s',
      standing: 'watch',
      because: [
        {
          says: say`depth ${inMetres(depth)} is less than ${inPercent(limits.shallow.value)} of the hull's length`,
          link: 'place.depth',
        },
      ],
      ...measureOf('place.depth'),
      sources: ['√(g h), linear long-wave theory (Airy 1845)'],
    },
  ]
}

function trust(model: DragModel, { hump: { point } }: Answered): Finding {
  const far = model.flags.some((f) => f.code.endsWith('outside') && f.code !== 'centre outside')
  return {
    id: 'hull.drag-trust',
    question: 'push',
    says: say`With the rider in the best place the climb onto the plane takes ${withEnds(inNewtons(point.drag), point)}: the methods come from models of ${inKg(10, 1)} and boats of tonnes, not from sleds.`,
    value: point.drag,
    low: point.low,
    high: point.high,
    unit: 'N',
    standing: far ? 'watch' : 'good',
    because: [
      ...model.flags.map((f): Because => ({ says: f.says ?? f.text, ...(f.path ? { link: f.path } : {}) })),
      { says: 'rough water adds 15 to 30 % (common practice, no source)' },
    ],
    measureNext: tow,
    sources: [mercier, savitsky],
  }
}
