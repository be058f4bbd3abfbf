/** What the drag model has to say about a craft: rider's place, hump, porpoising, intake, depth, and how far the methods can be trusted. */
import type { Because, Finding, MeasureNext } from '../../base/answers/finding.ts'
import { type Craft, fieldAt } from '../../craft/index.ts'
import { meshNotUsed, namedMesh } from '../../hull/mesh/namedMesh.ts'
import { type DragModel, type DragPoint, dragAt, dragCurve, prepareDrag } from './drag.ts'
import { hullFromCraft, meshGivesLines } from './dragFromCraft.ts'
import { criticalSpeed } from './hullSpec.ts'
import { humpOf } from './hump.ts'
import { porpoisingBand } from './porpoising.ts'

const savitsky = 'Savitsky 1964, Hydrodynamic design of planing hulls'
const mercier = 'Mercier and Savitsky 1973, Resistance of transom-stern craft in the pre-planing regime'

const N = (f: number) => `${Math.round(f)} N`
const m = (x: number) => `${x.toFixed(2)} m`
const ms = (v: number) => `${v.toFixed(1)} m/s`
const deg = (a: number) => `${((a * 180) / Math.PI).toFixed(1)}°`

const tow: MeasureNext = {
  what: 'tow it at a steady walk and note pull and speed, with the rider on board',
  with: 'luggage scale, rope and phone',
  minutes: 20,
}

/** The measurement the craft file's own field asks for. */
function measureOf(path: string): MeasureNext | undefined {
  const how = fieldAt(path)?.measure
  return how ? { ...how, path } : undefined
}

/** Findings of drag and trim; `topSpeed` (m/s) limits them to speeds the craft reaches, 10 m/s when not known. */
export function hullDragFindings(craft: Craft, topSpeed = 10): Finding[] {
  const { spec, loading, conditions, riderAt, weightsAssumed, float } = hullFromCraft(craft)
  const model = prepareDrag(spec, loading, conditions, float ? { float } : {})
  if (!model.rest.converged) return [...meshWords(craft), doesNotFloat(model)]
  const fastest = Number.isFinite(topSpeed) ? Math.max(2, topSpeed) : 10
  const speeds = Array.from({ length: 41 }, (_, i) => 0.5 + ((fastest - 0.5) * i) / 40)
  const here = dragCurve(model, speeds, { riderAt })
  return [
    ...meshWords(craft),
    ...(weightsAssumed ? [noWeights(loading.mass)] : []),
    riderPlace(model, riderAt, fastest),
    ...porpoising(here),
    ...intakeDry(craft, here),
    ...ploughing(here),
    ...shallow(model),
    trust(model),
  ]
}

/** A hull file that is named and gives the drag methods nothing to work with. */
function meshWords(craft: Craft): Finding[] {
  const named = namedMesh(craft)
  if (!named) return []
  if ('hull' in named && meshGivesLines(craft)) return []
  const says =
    'trouble' in named
      ? meshNotUsed(craft, named.trouble).text
      : `${craft.hull.mesh} has sections that are not one ring each: it floats by its own shape, but the lines for its drag are taken from the measures in the file.`
  return [
    {
      id: 'hull.mesh',
      question: 'push',
      says,
      standing: 'watch',
      because: [{ says: `the file names ${craft.hull.mesh}`, link: 'hull.mesh' }],
      sources: ['The craft file and the hull file beside it'],
    },
  ]
}

function noWeights(mass: number): Finding {
  return {
    id: 'hull.weights-assumed',
    question: 'push',
    says: `The file lists no weights: ${Math.round(mass)} kg is taken for a craft of this size, and drag and trim hang on it.`,
    value: mass,
    low: 0.6 * mass,
    high: 1.5 * mass,
    unit: 'kg',
    standing: 'unknown',
    because: [{ says: 'no weights in the file', link: 'weights' }],
    measureNext: {
      what: 'weigh each end of the craft, then list what is on board',
      with: 'luggage scale',
      minutes: 30,
      path: 'weights',
    },
    sources: ['33 kg for each square metre of length times beam: judgement'],
  }
}

function doesNotFloat(model: DragModel): Finding {
  return {
    id: 'hull.drag-unknown',
    question: 'push',
    says: 'The drag is not known: at this weight no level float was found for the hull.',
    standing: 'unknown',
    because: model.flags.map((f) => ({ says: f.text, link: 'hull' })),
    sources: [savitsky],
  }
}

function riderPlace(model: DragModel, riderAt: number, fastest: number): Finding {
  // the worst of the climb with the rider where the file says; the best place is judged there
  const { speed, point: now } = humpOf(model, { riderAt })
  const best = dragAt(model, speed)
  const step = best.riderAt > riderAt ? 0.2 : -0.2
  const moved = dragAt(model, speed, { riderAt: riderAt + step })
  const gain = now.drag - moved.drag
  const lost = now.drag / best.drag - 1
  const near = Math.abs(best.riderAt - riderAt) < 0.05 || lost < 0.03
  const top = dragAt(model, fastest, { riderAt })
  const topBest = dragAt(model, fastest)
  const way = step > 0 ? 'forward' : 'aft'
  const says = near
    ? `In the climb onto the plane, at ${ms(speed)}, the rider sits close to the best place: ${N(now.drag)} to push through.`
    : `The climb onto the plane is hardest at ${ms(speed)}: it takes ${N(now.drag)} with the rider ${m(riderAt)} forward of the transom; ${N(best.drag)} with the rider at ${m(best.riderAt)}. Moving 20 cm ${way} ${gain >= 0 ? `saves ${N(gain)}` : `costs ${N(-gain)}`}.`
  const because: Because[] = [
    {
      says: `trim there ${deg(now.trim)} now, ${deg(best.trim)} at the best place`,
      link: 'rider.position',
    },
    {
      says: `at ${ms(fastest)} the best place is ${m(topBest.riderAt)}: ${N(topBest.drag)} against ${N(top.drag)}`,
      link: 'rider.position',
    },
    { says: `${Math.round(model.mass)} kg all aboard`, link: 'weights' },
  ]
  const measure = measureOf('rider.position')
  return {
    id: 'hull.rider-place',
    question: 'push',
    says,
    value: best.riderAt,
    unit: 'm',
    standing: lost > 0.1 ? 'watch' : 'good',
    because,
    ...(measure ? { measureNext: measure } : {}),
    sources: [savitsky, mercier],
  }
}

/** Speeds of the points that match, as one range. */
function rangeOf(
  points: readonly DragPoint[],
  matches: (p: DragPoint) => boolean,
): [number, number] | undefined {
  const hit = points.filter(matches)
  return hit.length ? [hit[0]!.speed, hit[hit.length - 1]!.speed] : undefined
}
const span = ([a, b]: [number, number]) => (b - a < 0.05 ? `at ${ms(a)}` : `from ${ms(a)} to ${ms(b)}`)

function porpoising(points: readonly DragPoint[]): Finding[] {
  const amber = rangeOf(points, (p) => p.porpoiseMargin < porpoisingBand)
  if (!amber) return []
  const worst = points.reduce((a, b) =>
    b.porpoiseMargin < (a.porpoiseMargin || Number.POSITIVE_INFINITY) ? b : a,
  )
  const sure = worst.porpoiseMargin < -porpoisingBand
  return [
    {
      id: 'hull.porpoising',
      question: 'push',
      says: `The bow ${sure ? 'will likely' : 'may'} start to bounce by itself ${span(amber)}: trim ${deg(worst.trim)} at ${ms(worst.speed)}, limit ${deg(worst.trim + worst.porpoiseMargin)} give or take 1.5°.`,
      value: worst.porpoiseMargin,
      low: worst.porpoiseMargin - porpoisingBand,
      high: worst.porpoiseMargin + porpoisingBand,
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

function intakeDry(craft: Craft, points: readonly DragPoint[]): Finding[] {
  const dry = rangeOf(points, (p) => p.flags.some((f) => f.code === 'intake dry'))
  if (!dry) return []
  const front = craft.jet.intake.front
  const measure = measureOf('jet.intake.front')
  return [
    {
      id: 'hull.intake-dry',
      question: 'push',
      says: `The jet will suck air ${span(dry)}: the wetted bottom ends aft of the intake's front edge, ${m(front.value)} forward of the transom.`,
      value: dry[0],
      unit: 'm/s',
      standing: 'watch',
      because: [
        { says: `intake front at ${m(front.value)}`, link: 'jet.intake.front' },
        { says: 'the rider further forward wets more bottom', link: 'rider.position' },
      ],
      ...(measure ? { measureNext: measure } : {}),
      sources: [savitsky],
    },
  ]
}

function ploughing(points: readonly DragPoint[]): Finding[] {
  const out: Finding[] = []
  const mush = rangeOf(points, (p) => p.balance === 'mushing')
  if (mush)
    out.push({
      id: 'hull.mushing',
      question: 'push',
      says: `With the rider where the file says, the craft ploughs bow high ${span(mush)}: the weight is too far aft for any balance below 20° of trim.`,
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
    (p) => p.regime !== 'displacement' && p.balance === 'bow down' && p.methods.share > 0,
  )
  if (nose)
    out.push({
      id: 'hull.bow-down',
      question: 'push',
      says: `With the rider where the file says, the bottom is wet to the nose ${span(nose)}: the bow may dig in on a wave or a turn.`,
      value: nose[0],
      unit: 'm/s',
      standing: 'watch',
      because: [{ says: 'the rider', link: 'rider.position' }],
      sources: [savitsky],
    })
  return out
}

function shallow(model: DragModel): Finding[] {
  const depth = model.conditions.depth
  if (!(depth < 0.5 * model.spec.length)) return []
  const c = criticalSpeed(depth)
  const measure = measureOf('place.depth')
  return [
    {
      id: 'hull.shallow',
      question: 'push',
      says: `In ${m(depth)} of water its own wave runs at ${ms(c)}: between ${ms(0.7 * c)} and ${ms(1.3 * c)} the drag can be tens of per cent above these numbers.`,
      value: c,
      low: 0.7 * c,
      high: 1.3 * c,
      unit: 'm/s',
      standing: 'watch',
      because: [{ says: `depth ${m(depth)} is less than half the hull's length`, link: 'place.depth' }],
      ...(measure ? { measureNext: measure } : {}),
      sources: ['√(g h), linear long-wave theory (Airy 1845)'],
    },
  ]
}

function trust(model: DragModel): Finding {
  const hump = humpOf(model).point
  const far = model.flags.some((f) => f.code.endsWith('outside') && f.code !== 'centre outside')
  return {
    id: 'hull.drag-trust',
    question: 'push',
    says: `With the rider in the best place the climb onto the plane takes ${N(hump.drag)}, likely ${N(hump.low)} to ${N(hump.high)}: the methods come from models of 10 kg and boats of tonnes, not from sleds.`,
    value: hump.drag,
    low: hump.low,
    high: hump.high,
    unit: 'N',
    standing: far ? 'watch' : 'good',
    because: [
      ...model.flags.map((f): Because => ({ says: f.text, ...(f.path ? { link: f.path } : {}) })),
      { says: 'rough water adds 15 to 30 % (common practice, no source)' },
    ],
    measureNext: tow,
    sources: [mercier, savitsky],
  }
}
