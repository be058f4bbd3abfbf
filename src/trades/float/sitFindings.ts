/** How the craft sits with its rider: draft and deck edge, whether it stands, how far the rider may move, or that it sinks. */
import { inDegrees, inMetres } from '../../base/answers/amounts.ts'
import type { Finding, Standing } from '../../base/answers/finding.ts'
import { joined, type Sentence, say } from '../../base/answers/sentence.ts'
import { oftenForgotten } from '../../hull/aboard/masses.ts'
import { riderCentre } from '../../hull/aboard/riderBody.ts'
import type { FloatAnswer } from './floatAnswer.ts'
import type { FloatLimits } from './floatLimits.ts'
import { capital, cm, heelSays, kg, litres, naval, overWater, own, trimSays } from './floatSay.ts'
import { aboardOf, type FloatInput } from './input.ts'
import { roomGrid, roomWithin } from './room.ts'

export function sinksFinding(input: FloatInput, a: FloatAnswer): Finding {
  const c = a.ridden
  const nobody = a.cases[0]!
  const heaviest = [...aboardOf(input)].sort((p, q) => q.mass - p.mass).slice(0, 3)
  return {
    id: 'float.sinks',
    question: 'float',
    says: say`It sinks: ${kg(c.mass)} all told is ${kg(c.deficit)} more than the whole hull can displace.`,
    value: c.deficit,
    unit: 'kg',
    standing: 'stop',
    because: [
      {
        says: nobody.sinks
          ? say`${kg(nobody.deficit)} too much even with nobody aboard`
          : say`with nobody aboard it floats, ${kg(-nobody.deficit)} in hand`,
        link: 'rider.mass',
      },
      {
        says: say`heaviest: ${joined(heaviest.map((w) => say`${w.name} ${kg(w.mass)}`))}`,
        link: 'weights',
      },
      {
        says: say`the hull, taken from ${input.hull.from}, encloses ${litres(input.hull.volume)}`,
        link: 'hull',
      },
    ],
    act: say`take off at least ${kg(c.deficit)}, or give the hull more volume`,
    sources: [own],
  }
}

/** How the deck edge stands, whatever else is known. */
export function edgeStanding(freeboard: number, limits: FloatLimits): Standing {
  if (freeboard < limits.awash.value) return 'stop'
  return freeboard < limits.freeboard.value ? 'watch' : 'good'
}

export function draftFinding(
  input: FloatInput,
  a: FloatAnswer,
  weightsAssumed: boolean,
  limits: FloatLimits,
): Finding {
  const c = a.ridden
  const sure = a.rest
    ? { low: Math.min(c.draftAft, a.rest.draft.low), high: Math.max(c.draftAft, a.rest.draft.high) }
    : {}
  const edge = edgeStanding(c.freeboard, limits)
  const standing = c.over ? 'stop' : edge === 'good' && weightsAssumed ? 'unknown' : edge
  const heel = heelSays(c.attitude.heel)
  const lies = heel === undefined ? trimSays(c.attitude.trim) : say`${trimSays(c.attitude.trim)}, ${heel}`
  const says: Sentence = c.over
    ? 'With the rider where the file puts him it does not stay upright.'
    : say`With its rider it lies ${lies}, ${cm(c.draftAft)} deep at the transom, with ${
        c.freeboard < 0
          ? say`the lowest deck edge ${overWater(c.freeboard)}`
          : say`${cm(c.freeboard)} from the water to the lowest deck edge`
      }.`
  return {
    id: 'float.draft',
    question: 'float',
    says,
    value: c.draftAft,
    ...sure,
    unit: 'm',
    standing,
    because: [
      {
        says: say`${kg(c.mass)} all told, centre ${cm(c.centre[0])} forward of the transom`,
        link: 'weights',
      },
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
function alone(c: FloatAnswer['ridden']): Sentence {
  if (c.over || Math.abs(c.attitude.trim) > Math.PI / 6)
    return `without the rider it finds no level rest: it ${c.attitude.trim < 0 ? 'stands on its nose' : 'stands on its tail'} or rolls over`
  return c.draftAft < 0
    ? say`without the rider its transom hangs ${cm(-c.draftAft)} over the water`
    : say`without the rider it lies ${cm(c.draftAft)} deep at the transom`
}

/** How the two stabilities stand: the rider held stiff, and balancing. */
export function gmStanding(a: Pick<FloatAnswer, 'gmRigid' | 'gmFeet'>, limits: FloatLimits): Standing {
  const { gmRigid, gmFeet } = a
  if (!Number.isFinite(gmFeet.value)) return 'stop'
  const falls = limits.feetGm.value
  if (gmFeet.high < falls) return 'stop'
  if (gmFeet.low < falls) return 'watch'
  return gmRigid.value > limits.stiffGm.value ? 'good' : 'watch'
}

export function stabilityFinding(input: FloatInput, a: FloatAnswer, limits: FloatLimits): Finding {
  const { gmRigid, gmFeet } = a
  if (!Number.isFinite(gmFeet.value)) return noLevelRest(input)
  const stance = input.rider.stance
  const rigid = gmRigid.value
  // a weight held so high may tip even an upright craft over nose or tail: then there is no GM to tell
  const tips = !Number.isFinite(rigid)
  const says: Sentence =
    gmFeet.value < 0
      ? `It cannot be ridden ${stance} at rest: even with the weight at deck height it falls over.`
      : tips || rigid < 0
        ? say`${capital(stance)}, you balance it like a bicycle: held stiff it ${tips ? 'finds no level rest' : say`falls over (GM ${cm(rigid)})`}, with the weight on the deck it stands (GM ${cm(gmFeet.value)}).`
        : rigid < limits.stiffGm.value
          ? say`${capital(stance)}, it barely stands by itself (GM ${cm(rigid)}); keep low and move slowly.`
          : say`${capital(stance)}, it stands by itself (GM ${cm(rigid)} with a stiff rider).`
  const c = riderCentre(stance, input.rider.stature)
  return {
    id: 'float.stability',
    question: 'float',
    says,
    ...(tips ? {} : { value: rigid, low: gmRigid.low, high: gmRigid.high, unit: 'm' }),
    standing: gmStanding(a, limits),
    because: [
      {
        says: 'GM, the metacentric height, is how far the common centre of gravity lies below the point it would have to reach for the craft to fall over',
      },
      {
        says: say`rider’s weight ${cm(c.low)} to ${cm(c.high)} above the deck ${stance}`,
        link: 'rider.stance',
      },
      { says: say`GM with the weight at deck height ${cm(gmFeet.low)} to ${cm(gmFeet.high)}` },
      ...(['prone', 'kneeling', 'standing'] as const).map((n) => {
        const gm = a.cases.find((x) => x.name === n)!.gmRigid
        return {
          says: Number.isFinite(gm)
            ? say`${n}: GM ${cm(gm)} with a stiff rider`
            : `${n}: no level rest with a stiff rider`,
        }
      }),
      {
        says: 'Caution: wear a buoyancy aid and the kill cord; try it first in shallow, warm water with a second person',
      },
    ],
    measureNext: {
      what: 'with nobody aboard, move a weight you know from the middle to the deck edge and read the heel on a phone',
      with: 'phone and a known weight',
      minutes: 10,
    },
    sources: [own, naval],
  }
}

const standsAt = (input: FloatInput) => ({
  says: say`the file puts the rider at ${inMetres(input.rider.x)}`,
  link: 'rider.position',
})

/** With the heel held upright it still finds no rest: it stands on its nose or its tail. */
function noLevelRest(input: FloatInput): Finding {
  return {
    id: 'float.stability',
    question: 'float',
    says: `Loaded like this it finds no level rest with its rider ${input.rider.stance}: it would stand on its nose or its tail.`,
    standing: 'stop',
    because: [
      standsAt(input),
      { says: 'weights far from the middle, or too heavy for the hull', link: 'weights' },
    ],
    sources: [own, naval],
  }
}

/** How far the rider may move, by the places of the map that the page draws. */
export function roomFinding(input: FloatInput, limits: FloatLimits): Finding {
  const room = roomWithin(input, {
    heelLimit: limits.roomHeel.value,
    trimLimit: limits.roomTrim.value,
    reserve: limits.roomOpening.value,
  })
  const heels = inDegrees(limits.roomHeel.value, 1)
  const trims = inDegrees(limits.roomTrim.value, 1)
  const narrow = room.wide < limits.roomOut.value - 1e-9
  const says: Sentence =
    room.along === undefined
      ? say`At rest there is no place on deck where the rider keeps heel below ${heels} and trim below ${trims} with every opening dry.`
      : say`At rest the rider may be from ${inMetres(room.along.aft)} to ${inMetres(room.along.fore)} forward of the transom, and ${room.wide > 0 ? 'up to' : 'less than'} ${cm(room.wide || roomGrid)} off the middle, before it heels ${heels}, trims ${trims} or dips an opening.`
  return {
    id: 'float.room',
    question: 'float',
    says,
    value: room.along === undefined ? 0 : room.along.fore - room.along.aft,
    unit: 'm',
    standing: room.along === undefined || !room.inside || narrow ? 'watch' : 'good',
    because: [standsAt(input)],
    sources: [own, '10° is also the heel that 33 CFR 183.235 allows a swamped boat'],
  }
}
