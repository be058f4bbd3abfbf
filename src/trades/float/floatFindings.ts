/** What flotation has to say about a craft: draft, stability, openings, swamped, foam, guidance to compare with. */
import type { Finding, Standing } from '../../base/answers/finding.ts'
import type { Craft } from '../../craft/schema/craftSchema.ts'
import { oftenForgotten } from '../../hull/aboard/masses.ts'
import { riderCentre } from '../../hull/aboard/riderBody.ts'
import { type FloatAnswer, floatAnswer } from './floatAnswer.ts'
import { floatFromCraft } from './floatFromCraft.ts'
import { advice, cm, deg, kg, litres, naval, own } from './floatSay.ts'
import { aboardOf, type FloatInput } from './input.ts'
import { adviceHeight } from './openingHeights.ts'
import { riderRoom, roomGrid } from './room.ts'
import { slackFindings } from './slackFindings.ts'
import { foamFinding, guidanceFinding, leakFindings, swampedFinding } from './swampedFindings.ts'

/** Findings of the question "float", on the hull file the craft names and was given when it names one. */
export function floatFindings(craft: Craft): Finding[] {
  const known = kept.get(craft)
  if (known !== undefined) return known
  const made = findingsOrWhyNot(craft)
  kept.set(craft, made)
  return made
}

/** Measures that contradict each other make no hull: that is a finding, not a crash. */
function findingsOrWhyNot(craft: Craft): Finding[] {
  try {
    const { input, weightsAssumed } = floatFromCraft(craft)
    return floatFindingsOf(input, floatAnswer(input), weightsAssumed)
  } catch (error) {
    if (!(error instanceof RangeError)) throw error
    return [
      {
        id: 'float.unknown',
        question: 'float',
        says: `How it floats is not known: ${error.message}.`,
        standing: 'unknown',
        because: [{ says: error.message, link: 'hull' }],
        sources: ['The craft file'],
      },
    ]
  }
}

/** crafts never change once read, so their findings are made once */
const kept = new WeakMap<Craft, Finding[]>()

/** The same from an answer already at hand. */
export function floatFindingsOf(input: FloatInput, a: FloatAnswer, weightsAssumed = false): Finding[] {
  if (a.ridden.sinks) return [sinks(input, a), ...asked(a)]
  return [
    draft(input, a, weightsAssumed),
    stability(input, a),
    ...slackFindings(input, a),
    room(input),
    ...openings(a),
    swampedFinding(input, a),
    foamFinding(input, a),
    ...leakFindings(input, a),
    guidanceFinding(input, a),
    ...asked(a),
  ]
}

function sinks(input: FloatInput, a: FloatAnswer): Finding {
  const c = a.ridden
  const nobody = a.cases[0]!
  const heaviest = [...aboardOf(input)].sort((p, q) => q.mass - p.mass).slice(0, 3)
  return {
    id: 'float.sinks',
    question: 'float',
    says: `It sinks: ${kg(c.mass)} all told is ${kg(c.deficit)} more than the whole hull can displace.`,
    value: c.deficit,
    unit: 'kg',
    standing: 'stop',
    because: [
      {
        says: nobody.sinks
          ? `${kg(nobody.deficit)} too much even with nobody aboard`
          : `with nobody aboard it floats, ${kg(-nobody.deficit)} in hand`,
        link: 'rider.mass',
      },
      { says: `heaviest: ${heaviest.map((w) => `${w.name} ${kg(w.mass)}`).join(', ')}`, link: 'weights' },
      {
        says: `the hull, taken from ${input.hull.from}, encloses ${litres(input.hull.volume)}`,
        link: 'hull',
      },
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
      : `With its rider it lies ${trim}${heel}, ${cm(c.draftAft)} deep at the transom, with ${
          c.freeboard < 0
            ? `the lowest deck edge ${cm(-c.freeboard)} under water`
            : `${cm(c.freeboard)} from the water to the lowest deck edge`
        }.`,
    value: c.draftAft,
    low,
    high,
    unit: 'm',
    standing,
    because: [
      { says: `${kg(c.mass)} all told, centre ${cm(c.centre[0])} forward of the transom`, link: 'weights' },
      { says: `hull taken from ${input.hull.from}`, link: 'hull' },
      { says: alone(a.cases[0]!) },
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

/** How it lies with nobody aboard, in a few words. */
function alone(c: FloatAnswer['ridden']): string {
  if (c.over || Math.abs(c.attitude.trim) > Math.PI / 6)
    return `without the rider it finds no level rest: it ${c.attitude.trim < 0 ? 'stands on its nose' : 'stands on its tail'} or rolls over`
  return c.draftAft < 0
    ? `without the rider its transom hangs ${cm(-c.draftAft)} over the water`
    : `without the rider it lies ${cm(c.draftAft)} deep at the transom`
}

function stability(input: FloatInput, a: FloatAnswer): Finding {
  const { gmRigid, gmFeet } = a
  if (!Number.isFinite(gmFeet.value)) return noLevelRest(input)
  const stance = input.rider.stance
  const rigid = gmRigid.value
  // a weight held so high may tip even an upright craft over nose or tail: then there is no GM to tell
  const tips = !Number.isFinite(rigid)
  const standing: Standing =
    gmFeet.high < 0 ? 'stop' : gmFeet.low < 0 ? 'watch' : rigid > 0.05 ? 'good' : 'watch'
  const says =
    gmFeet.value < 0
      ? `It cannot be ridden ${stance} at rest: even with the weight at deck height it falls over.`
      : tips || rigid < 0
        ? `${capital(stance)}, you balance it like a bicycle: held stiff it ${tips ? 'finds no level rest' : `falls over (GM ${cm(rigid)})`}, with the weight on the deck it stands (GM ${cm(gmFeet.value)}).`
        : rigid < 0.05
          ? `${capital(stance)}, it barely stands by itself (GM ${cm(rigid)}); keep low and move slowly.`
          : `${capital(stance)}, it stands by itself (GM ${cm(rigid)} with a stiff rider).`
  const c = riderCentre(stance, input.rider.stature)
  return {
    id: 'float.stability',
    question: 'float',
    says,
    ...(tips ? {} : { value: rigid, low: gmRigid.low, high: gmRigid.high, unit: 'm' }),
    standing,
    because: [
      {
        says: 'GM, the metacentric height, is how far the common centre of gravity lies below the point it would have to reach for the craft to fall over',
      },
      { says: `rider’s weight ${cm(c.low)} to ${cm(c.high)} above the deck ${stance}`, link: 'rider.stance' },
      { says: `GM with the weight at deck height ${cm(gmFeet.low)} to ${cm(gmFeet.high)}` },
      ...['prone', 'kneeling', 'standing'].map((n) => {
        const gm = a.cases.find((x) => x.name === n)!.gmRigid
        return {
          says: Number.isFinite(gm)
            ? `${n}: GM ${cm(gm)} with a stiff rider`
            : `${n}: no level rest with a stiff rider`,
        }
      }),
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

/** With the heel held upright it still finds no rest: it stands on its nose or its tail. */
function noLevelRest(input: FloatInput): Finding {
  return {
    id: 'float.stability',
    question: 'float',
    says: `Loaded like this it finds no level rest with its rider ${input.rider.stance}: it would stand on its nose or its tail.`,
    standing: 'stop',
    because: [
      { says: `the file puts the rider at ${input.rider.x.toFixed(2)} m`, link: 'rider.position' },
      { says: 'weights far from the middle, or too heavy for the hull', link: 'weights' },
    ],
    sources: [own, naval],
  }
}

const capital = (s: string): string => s[0]!.toUpperCase() + s.slice(1)

/** How far the rider may move, from the same 5 cm map that the page draws: some 50 ms, beside the balance on the other core. */
function room(input: FloatInput): Finding {
  const e = riderRoom(input, roomGrid)
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
        : `At rest the rider may be from ${(along[0]! - roomGrid / 2).toFixed(2)} to ${(along.at(-1)! + roomGrid / 2).toFixed(2)} m forward of the transom, and ${wide > 0 ? 'up to' : 'less than'} ${cm(wide || roomGrid)} off the middle, before it heels 10°, trims 6° or dips an opening.`,
    value: e.share,
    unit: '1',
    standing: along.length === 0 || !inside || wide === 0 ? 'watch' : 'good',
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

function asked(a: FloatAnswer): Finding[] {
  return a.flags.map((f, i) => ({
    id: f.code === 'mesh not used' ? 'float.mesh' : `float.asked.${i}`,
    question: 'float' as const,
    says: f.text,
    standing: f.code === 'mesh not used' ? ('watch' as const) : ('unknown' as const),
    because: [{ says: f.code, ...(f.path ? { link: f.path } : {}) }],
    sources: ['The craft file'],
  }))
}
