/** What flotation has to say about a craft: draft, stability, openings, swamped, foam, guidance to compare with. */
import type { Because, Finding, Standing } from '../answers/finding.ts'
import type { Craft } from '../craft/schema/index.ts'
import type { Mesh } from '../solid/mesh.ts'
import { type FloatAnswer, type FloatInput, floatAnswer, type LoadCase } from './float/answer.ts'
import { riderEnvelope } from './float/envelope.ts'
import { basicFlotationWeights, weightCapacity } from './float/flotation.ts'
import { leakFromInput } from './float/leakCase.ts'
import { adviceHeight } from './float/openings.ts'
import { riderCentre } from './float/rider.ts'
import { wholeLift } from './float/swamped.ts'
import { oftenForgotten } from './float/weights.ts'
import { floatFromCraft } from './floatFromCraft.ts'

const naval = 'E. V. Lewis (ed.), Principles of Naval Architecture vol. I (1988)'
const own = 'Exact integrals on the hull’s own mesh, balance of weight and buoyancy'
const advice = 'Heights advised are engineering judgement, no rule'

const cm = (x: number): string => `${(100 * x).toFixed(Math.abs(x) < 0.1 ? 1 : 0)} cm`
const mm = (x: number): string => `${Math.round(1000 * x)} mm`
const kg = (x: number): string => `${x.toFixed(x < 10 ? 1 : 0)} kg`
const deg = (a: number): string => `${((a * 180) / Math.PI).toFixed(1)}°`
const litres = (v: number): string => `${Math.round(1000 * v)} L`

/** Findings of the question "float"; the mesh is the one the craft file names, when it names one. */
export function floatFindings(craft: Craft, mesh?: Mesh): Finding[] {
  const known = mesh === undefined ? kept.get(craft) : undefined
  if (known !== undefined) return known
  const { input, weightsAssumed } = floatFromCraft(craft, mesh)
  const made = floatFindingsOf(input, floatAnswer(input), weightsAssumed)
  if (mesh === undefined) kept.set(craft, made)
  return made
}

/** crafts never change once read, so their findings are made once */
const kept = new WeakMap<Craft, Finding[]>()

/** The same from an answer already at hand. */
export function floatFindingsOf(input: FloatInput, a: FloatAnswer, weightsAssumed = false): Finding[] {
  if (a.ridden.sinks) return [sinks(a.ridden), ...asked(a)]
  return [
    draft(input, a, weightsAssumed),
    stability(input, a),
    room(input),
    ...openings(a),
    swamped(input, a),
    foam(a),
    ...leak(input, a),
    guidance(input, a),
    ...asked(a),
  ]
}

function sinks(c: LoadCase): Finding {
  return {
    id: 'float.sinks',
    question: 'float',
    says: `It sinks: ${kg(c.mass)} all told is ${kg(c.deficit)} more than the whole hull can displace.`,
    value: c.deficit,
    unit: 'kg',
    standing: 'stop',
    because: [
      { says: `${kg(c.mass)} on board`, link: 'weights' },
      { says: 'volume of the hull', link: 'hull' },
    ],
    sources: [own],
  }
}

function draft(input: FloatInput, a: FloatAnswer, weightsAssumed: boolean): Finding {
  const c = a.ridden
  // a heavier or lighter craft by its own doubt, and 5 to 10 % that home lists leave out
  const perKg = 1 / (input.water * 0.6 * input.hull.length * input.hull.beam)
  const low = c.draftAft - a.weights.give * perKg
  const high = c.draftAft + Math.hypot(a.weights.give, 0.08 * a.weights.mass) * perKg
  const standing: Standing = c.over
    ? 'stop'
    : c.freeboard < 0
      ? 'stop'
      : c.freeboard < 0.05
        ? 'watch'
        : weightsAssumed
          ? 'unknown'
          : 'good'
  const trim =
    Math.abs(c.attitude.trim) < 0.003
      ? 'level'
      : `${deg(Math.abs(c.attitude.trim))} ${c.attitude.trim > 0 ? 'bow up' : 'bow down'}`
  const heel =
    Math.abs(c.attitude.heel) < 0.005
      ? ''
      : `, ${deg(Math.abs(c.attitude.heel))} over to ${c.attitude.heel > 0 ? 'port' : 'starboard'}`
  return {
    id: 'float.draft',
    question: 'float',
    says: c.over
      ? `With the rider where the file puts him it does not stay upright.`
      : `With its rider it lies ${trim}${heel}, ${cm(c.draftAft)} deep at the transom, with ${cm(c.freeboard)} from the water to the lowest deck edge.`,
    value: c.draftAft,
    low,
    high,
    unit: 'm',
    standing,
    because: [
      { says: `${kg(c.mass)} all told, centre ${cm(c.centre[0])} forward of the transom`, link: 'weights' },
      { says: `without the rider it lies ${cm(a.cases[0]!.draftAft)} deep at the transom` },
      ...(weightsAssumed
        ? [{ says: 'the file lists no weights; a usual mass for its size stands in', link: 'weights' }]
        : [{ says: `home lists often leave out: ${oftenForgotten.slice(0, 3).join('; ')}` }]),
    ],
    measureNext: {
      what: 'hang the craft at two places, read both scales and tape both distances: weight and centre together',
      with: 'luggage scale and tape',
      minutes: 20,
      path: 'weights',
    },
    sources: [own, naval],
  }
}

function stability(input: FloatInput, a: FloatAnswer): Finding {
  const { gmRigid, gmFeet } = a
  const stance = input.rider.stance
  const rigid = gmRigid.value
  const standing: Standing =
    gmFeet.high < 0 ? 'stop' : gmFeet.low < 0 ? 'watch' : rigid > 0.05 ? 'good' : 'watch'
  const says =
    gmFeet.value < 0
      ? `It cannot be ridden ${stance} at rest: even with the weight at deck height it falls over.`
      : rigid < 0
        ? `${capital(stance)}, you balance it like a bicycle: held stiff it falls over (GM ${cm(rigid)}), with the weight on the deck it stands (GM ${cm(gmFeet.value)}).`
        : rigid < 0.05
          ? `${capital(stance)}, it barely stands by itself (GM ${cm(rigid)}); keep low and move slowly.`
          : `${capital(stance)}, it stands by itself (GM ${cm(rigid)} with a stiff rider).`
  const c = riderCentre(stance, input.rider.stature)
  return {
    id: 'float.stability',
    question: 'float',
    says,
    value: rigid,
    low: gmRigid.low,
    high: gmRigid.high,
    unit: 'm',
    standing,
    because: [
      { says: `rider’s weight ${cm(c.low)} to ${cm(c.high)} above the deck ${stance}`, link: 'rider.stance' },
      { says: `GM with the weight at deck height ${cm(gmFeet.low)} to ${cm(gmFeet.high)}` },
      ...['prone', 'kneeling', 'standing'].map((n) => ({
        says: `${n}: GM ${cm(a.cases.find((x) => x.name === n)!.gmRigid)} with a stiff rider`,
      })),
      {
        says: 'Caution: wear a buoyancy aid and the kill cord; try it first in shallow, warm water with a second person',
      },
    ],
    measureNext: {
      what: 'with nobody aboard, move a 5 kg weight from the middle to the deck edge and read the heel on a phone',
      with: 'phone and a known weight',
      minutes: 10,
    },
    sources: [own, naval],
  }
}

const capital = (s: string): string => s[0]!.toUpperCase() + s.slice(1)

/** How far the rider may move, from the coarse map (the page draws the fine one). */
function room(input: FloatInput): Finding {
  const craft = input.weights.reduce((m, w) => m + w.mass, 0)
  const centre = [0, 1, 2].map((k) => input.weights.reduce((s, w) => s + w.mass * w.at[k]!, 0) / craft) as [
    number,
    number,
    number,
  ]
  const c = riderCentre(input.rider.stance, input.rider.stature)
  const stiff = input.rider.stance === 'prone'
  const e = riderEnvelope({
    hull: input.hull,
    craft: {
      bodies: [{ name: 'hull', mesh: input.hull.mesh, share: 1 }],
      mass: craft,
      centre,
      density: input.water,
    },
    rider: input.rider.mass,
    riderHeight: stiff ? c.height : 0,
    openings: input.openings,
    grid: 0.1,
  })
  const n = e.y.length
  const middle = (n - 1) / 2
  const along = Array.from(e.x).filter((_, i) => e.inside[i * n + middle] === 1)
  let wide = 0
  for (let i = 0; i < e.x.length; i++)
    for (let j = middle; j < n; j++) if (e.inside[i * n + j] === 1) wide = Math.max(wide, e.y[j]!)
  const here = e.x.reduce(
    (b, x, i) => (Math.abs(x - input.rider.x) < Math.abs(e.x[b]! - input.rider.x) ? i : b),
    0,
  )
  const inside = e.inside[here * n + middle] === 1
  return {
    id: 'float.room',
    question: 'float',
    says:
      along.length === 0
        ? 'At rest there is no place on deck where the rider keeps heel below 10° and trim below 6° with every opening dry.'
        : `At rest the rider may be from ${(along[0]! - 0.05).toFixed(1)} to ${(along.at(-1)! + 0.05).toFixed(1)} m forward of the transom, and up to ${cm(wide)} off the middle, before it heels 10°, trims 6° or dips an opening.`,
    value: e.share,
    unit: '1',
    standing: along.length === 0 || !inside ? 'watch' : 'good',
    because: [{ says: `the file puts the rider at ${input.rider.x.toFixed(2)} m`, link: 'rider.position' }],
    sources: [own, '10° is also the heel that 33 CFR 183.235 allows a swamped boat'],
  }
}

function openings(a: FloatAnswer): Finding[] {
  if (a.openings.length === 0)
    return [
      {
        id: 'float.openings',
        question: 'float',
        says: 'How high the air intake, the exhaust outlet and the vents stand above the water is not known: none is in the file.',
        standing: 'unknown',
        because: [{ says: 'no openings in the file', link: 'openings' }],
        measureNext: {
          what: 'measure the lowest point of each opening',
          with: 'tape',
          minutes: 10,
          path: 'openings',
        },
        sources: [advice],
      },
    ]
  const swampedAt = a.openingStates.indexOf('swamped')
  const afloat = (i: number) => a.openings[i]!.heights.filter((_, k) => k !== swampedAt)
  const out: Finding[] = []
  for (const [i, o] of a.openings.entries()) {
    const need = adviceHeight[o.opening.kind]
    if (!Number.isFinite(need.rest)) continue
    const rest = Math.min(
      ...[a.openingStates.indexOf('at rest, no rider'), a.openingStates.indexOf('as ridden')]
        .filter((k) => k >= 0)
        .map((k) => o.heights[k]!),
    )
    const all = afloat(i)
    const lowest = Math.min(...all)
    const state = a.openingStates.filter((_, k) => k !== swampedAt)[all.indexOf(lowest)]!
    const when = swampedAt >= 0 ? o.heights[swampedAt]! : Number.NaN
    const vital = o.opening.kind === 'air intake' || o.opening.kind === 'tank vent'
    const standing: Standing =
      rest < 0
        ? 'stop'
        : rest < need.rest || (vital && lowest < 0)
          ? 'watch'
          : vital && when < need.swamped
            ? 'watch'
            : 'good'
    const says = `${capital(o.opening.name)} is ${rest < 0 ? `${cm(-rest)} under water` : `${cm(rest)} above water`} at rest${
      lowest < rest - 0.005
        ? `, ${lowest < 0 ? `${cm(-lowest)} under` : cm(lowest)} with ${spoken(state)}`
        : ''
    }.`
    out.push({
      id: `float.opening.${i}`,
      question: 'float',
      says,
      value: rest,
      unit: 'm',
      standing,
      because: [
        { says: `advised at rest: ${cm(need.rest)}`, link: `openings.${i}.at` },
        ...(Number.isFinite(when)
          ? [
              {
                says:
                  when < 0 ? `${cm(-when)} under water when swamped` : `${cm(when)} above water when swamped`,
              },
            ]
          : []),
        ...(o.opening.kind === 'exhaust outlet' && rest < 0.05
          ? [{ says: 'a riser 15 cm above the water inside keeps water out of the engine' }]
          : []),
      ],
      sources: [own, advice],
    })
  }
  return out
}

const spoken = (state: string): string =>
  ({
    'at rest, no rider': 'nobody aboard',
    'as ridden': 'the rider aboard',
    'rider right aft': 'the rider right aft',
    '20° to port': '20° of heel to port',
    '20° to starboard': '20° of heel to starboard',
    'bow down 5°': 'the bow 5° down',
  })[state] ?? state

function swamped(input: FloatInput, a: FloatAnswer): Finding {
  const c = (name: string) => a.cases.find((x) => x.name === name)!
  const alone = c('swamped, nobody')
  const held = c('swamped, rider alongside')
  const aboard = c('swamped, rider aboard')
  const reserve = -alone.deficit
  const standing: Standing = alone.sinks
    ? 'stop'
    : held.sinks || alone.over || held.over || aboard.sinks || aboard.over
      ? 'watch'
      : 'good'
  const rolls =
    !alone.sinks && alone.over
      ? ' It rolls over as it floods: the foam is too low or too near the middle.'
      : ''
  const says = alone.sinks
    ? `Swamped, it sinks: ${kg(alone.deficit)} of lift is missing even with nobody aboard.`
    : held.sinks
      ? `Swamped, it floats by itself with ${kg(reserve)} to spare, not with a rider holding on.${rolls}`
      : aboard.sinks
        ? `Swamped, it floats and carries a rider holding on; lying on it takes ${kg(aboard.deficit)} more lift.${rolls}`
        : aboard.over
          ? `Swamped, it floats and has the lift for its rider, but rolls over with the rider lying on it.`
          : `Swamped, it floats and still carries its rider lying on deck.${rolls}`
  const air = input.compartments.filter((x) => x.sealed)
  return {
    id: 'float.swamped',
    question: 'float',
    says,
    value: reserve,
    unit: 'kg',
    standing,
    because: [
      { says: `foam lifts ${kg(a.foam.reduce((s, f) => s + f.lift, 0))} under water`, link: 'foam' },
      air.length > 0
        ? {
            says: `sealed spaces counted as dry: ${air.map((x) => x.name).join(', ')}; a sealed space can be holed, foam cannot`,
            link: 'compartments',
          }
        : { says: 'no sealed space is counted', link: 'compartments' },
      { says: 'metal and engine keep the lift of their own volume, aluminium where nothing else is known' },
      { says: 'Caution: a swamped craft is no raft to count on; wear a buoyancy aid' },
    ],
    sources: [own, `${naval}, lost buoyancy`],
  }
}

function foam(a: FloatAnswer): Finding {
  const n = a.need
  if (n.deficit <= 0 && n.upright && n.blocks.length === 0)
    return {
      id: 'float.foam',
      question: 'float',
      says: `The foam it has would carry the swamped craft with its rider lying on it, with ${kg(-n.deficit)} beyond a tenth in hand.`,
      value: 0,
      unit: 'm³',
      standing: 'good',
      because: [{ says: 'tried by settling the swamped craft' }],
      sources: [own],
    }
  const b = n.blocks[0]
  const where = b
    ? ` Along both sides from ${b.low[0].toFixed(2)} to ${b.high[0].toFixed(2)} m, the outer ${cm(b.high[1] - b.low[1])} and down to ${cm(Math.max(0, b.low[2]))} above the keel, it lies level and upright.`
    : ' The hull has no room for that much along its sides.'
  const amount =
    b && n.fitted > n.volume * 1.02
      ? n.volume > 0
        ? `${litres(n.volume)} for the lift, ${litres(n.fitted)} to stay upright as well`
        : `it has the lift, ${litres(n.fitted)} more keep it upright`
      : litres(n.fitted || n.volume)
  return {
    id: 'float.foam',
    question: 'float',
    says: `To carry its rider lying on it when swamped, level and upright, it still needs foam: ${amount}.${n.upright ? where : ' No place tried keeps it upright.'}`,
    value: n.fitted || n.volume,
    low: n.volume,
    high: 1.15 * (n.fitted || n.volume),
    unit: 'm³',
    standing: 'watch',
    because: [
      { says: `${kg(n.deficit)} of lift is missing, with a tenth in hand`, link: 'foam' },
      { says: 'foam of 30 kg/m³ that soaks 3 % lifts at most 881 kg/m³, the credit of 46 CFR 170.245' },
      {
        says: 'foam low down and near the middle rolls a swamped craft over; high and outboard keeps it upright',
      },
      { says: 'Caution: petrol eats polystyrene; keep it out of the engine and tank spaces or seal it in' },
    ],
    sources: [own, '46 CFR 170.245', 'US Coast Guard, Boatbuilder’s Handbook, flotation part'],
  }
}

function leak(input: FloatInput, a: FloatAnswer): Finding[] {
  if (a.cases[0]!.sinks) return []
  const { run, hole, space } = leakFromInput(input, a.cases[0]!)
  const minutes = (t: number) =>
    t < 120
      ? `${Math.round(t)} s`
      : t < 7200
        ? `${Math.round(t / 60)} minutes`
        : `${(t / 3600).toFixed(1)} hours`
  const end = run.under !== undefined ? run.under.time : run.endTime
  const says =
    run.under !== undefined
      ? `Left alone with a 10 mm hole at the stern, ${run.under.name} goes under after ${minutes(run.under.time)}.`
      : run.end === 'sinks' || run.end === 'goes over'
        ? `Left alone with a 10 mm hole at the stern, it ${run.end === 'sinks' ? 'sinks' : 'rolls over'} after ${minutes(run.endTime)}.`
        : `Left alone with a 10 mm hole at the stern, it takes on ${litres(run.water.at(-1) ?? 0)} in ${minutes(run.endTime)} and stays up with its openings dry.`
  return [
    {
      id: 'float.leak',
      question: 'float',
      says,
      value: end,
      low: 0.75 * end,
      high: 1.5 * end,
      unit: 's',
      standing: run.under !== undefined || run.end === 'sinks' ? (end < 600 ? 'watch' : 'good') : 'good',
      because: [
        {
          says: `hole ${mm(0.01)} across at ${hole.map((v) => v.toFixed(2)).join(', ')} m, filling ${space}`,
          link: 'compartments',
        },
        { says: 'nobody aboard, engine stopped, no pump' },
      ],
      sources: ['Q = 0.6 A √(2gz) for a sharp hole', own],
    },
  ]
}

/** Published sums beside our own: to compare with, nothing more. */
function guidance(input: FloatInput, a: FloatAnswer): Finding {
  const craft = a.weights.mass
  const displaced = input.water * input.hull.volume
  const capacity = weightCapacity(displaced, craft, 'inboard')
  const tests = basicFlotationWeights(Math.min(input.rider.mass, 0.9 * capacity), capacity)
  const reserve = wholeLift(a.swampedBodies, input.water) - craft
  const more = reserve >= tests.total
  const because: Because[] = [
    {
      says: `${kg(tests.persons)} for persons, ${kg(tests.dead)} for other load of a capacity of ${kg(capacity)}`,
    },
    {
      says: 'the rule is for inboard boats below 20 ft, after 18 hours swamped; it was not written for a craft like this',
    },
    { says: 'a small-craft stability standard of 2022 leaves powered boards out altogether (ISO 12217-3)' },
    { says: 'ask the local authority which rules bind a home-built craft where you ride' },
  ]
  return {
    id: 'float.guidance',
    question: 'float',
    says: `Compare with 33 CFR 183.105: a swamped boat is tested with ${kg(tests.total)} of weights under water; this one, swamped, has ${reserve < 0 ? `${kg(-reserve)} too little lift for itself` : `${kg(reserve)} of lift to spare`}.`,
    value: reserve,
    unit: 'kg',
    standing: more ? 'good' : 'watch',
    because,
    sources: [
      '33 CFR 183.105',
      '33 CFR 183.33 and after, from memory',
      'ISO 12217-3:2022, public scope text',
    ],
  }
}

function asked(a: FloatAnswer): Finding[] {
  return a.flags.map((f, i) => ({
    id: `float.asked.${i}`,
    question: 'float' as const,
    says: f.text,
    standing: 'unknown' as const,
    because: [{ says: f.code, ...(f.path ? { link: f.path } : {}) }],
    sources: ['The craft file'],
  }))
}
