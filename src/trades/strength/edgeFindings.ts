/** How the sheet is held at its edges: rivets and sealant, welds that soften it, and flat sheet that pops in the sun. */
import {
  inCount,
  inKelvinStep,
  inMetres,
  inMm,
  inMpa,
  inNewtonsPerMm,
  inTimes,
} from '../../base/answers/amounts.ts'
import type { Finding } from '../../base/answers/finding.ts'
import { type Sentence, say } from '../../base/answers/sentence.ts'
import { camberFor, flatWelding, oilCanStepRectangle, weldShrinkage } from './buckling.ts'
import { type DeckAnswer, type DeckBay, deckBay } from './deckBay.ts'
import { rivetAllowable, rivetOf } from './rivets.ts'
import type { StrengthInputs } from './strengthFromCraft.ts'
import { type StrengthLimits, strengthLimits } from './strengthLimits.ts'
import { berger } from './strengthSay.ts'

/** Pull of the hanging sheet against its rivets. */
export function edges(
  answers: readonly DeckAnswer[],
  inputs: StrengthInputs,
  limits: StrengthLimits,
): Finding[] {
  if (inputs.joined !== 'riveted' || answers.length === 0) return []
  const worst = answers
    .map((a) => ({ a, pull: Math.max(...a.loads.filter((l) => l.load !== 'jump').map((l) => l.edgePull)) }))
    .reduce((x, y) => (y.pull > x.pull ? y : x))
  if (!(worst.pull > 0)) return []
  const rivet = rivetNear(inputs.rivet.diameter)
  const carries = rivetAllowable(rivet, worst.a.bay.alloy.ultimate, worst.a.bay.t) / inputs.rivet.pitch
  const widest = limits.sealPitch.value * rivet.diameter
  const seam = 2 * (worst.a.bay.length + worst.a.bay.width)
  const tight = inputs.rivet.pitch <= widest
  const margin = carries / worst.pull
  const slips = margin < limits.rivets.value
  return [
    {
      id: 'deck.rivets',
      question: 'strength',
      says: say`The sheet of ${worst.a.bay.name} pulls ${inNewtonsPerMm(worst.pull)} on its edge under a step; rivets every ${inMm(inputs.rivet.pitch)} carry ${inNewtonsPerMm(carries)}${slips ? ', so they slip and the edge works loose in time' : ''}${tight ? '' : say`, and seal poorly beyond ${inMm(widest, 0.1)}`}.`,
      ...(slips || !tight
        ? { act: say`rivets every ${inMm(Math.min(widest, inputs.rivet.pitch * Math.min(1, margin)))}` }
        : {}),
      harm: 'will stop the run',
      value: margin,
      unit: '1',
      standing: slips || !tight ? 'watch' : 'good',
      because: [
        {
          says: say`rivets of ${inMm(rivet.diameter, 0.1)}: half their breaking shear, or the sheet’s bearing, whichever is less`,
          link: 'deck.rivet size',
        },
        {
          says: say`sealed seams want at most ${inTimes(limits.sealPitch.value, 1)} diameters, ${inMm(widest, 0.1)}; two diameters from an edge`,
          link: 'deck.rivet pitch',
        },
        {
          says: say`the edge of the bay, ${inMetres(seam)}, takes ${inCount(Math.ceil(seam / inputs.rivet.pitch))} rivets and as long a bead of sealant laid before they are pulled; below water closed-end rivets, as open ones leak through their middle (common practice, no source)`,
        },
        { says: 'foam or stringers under the feet take this pull away' },
      ],
      sources: ['IFI-114 grade 10 blind rivets, from memory, ±15 %', 'FAA AC 43.13-1B, from memory', berger],
    },
  ]
}

function rivetNear(diameter: number) {
  const sizes = [3.2e-3, 4e-3, 4.8e-3]
  return rivetOf(sizes.reduce((a, b) => (Math.abs(b - diameter) < Math.abs(a - diameter) ? b : a)))
}

/** Flat sheet that pops in the sun. */
export function pops(bays: readonly DeckBay[], limits: StrengthLimits): Finding[] {
  const flat = bays.filter((b) => b.support.kind === 'alone' || b.support.kind === 'stringers')
  if (flat.length === 0) return []
  const step = (b: DeckBay) =>
    oilCanStepRectangle(
      b.t,
      b.length,
      b.support.kind === 'stringers' ? Math.min(b.support.spacing, b.width) : b.width,
    )
  const worst = flat.reduce((a, b) => (step(b) < step(a) ? b : a))
  const rise = step(worst)
  return [
    {
      id: 'deck.pops',
      question: 'strength',
      says: say`Held flat, the sheet of ${worst.name} pops once it is ${inKelvinStep(rise)} warmer than its frame.`,
      ...(rise < limits.popRise.value
        ? { act: say`a camber of ${inMm(camberFor(worst.width), 0.1)}, or foam glued under it` }
        : {}),
      harm: 'comfort',
      value: rise,
      unit: 'K',
      standing: rise < limits.popRise.value ? 'watch' : 'good',
      because: [
        {
          says: say`aluminium in the sun runs ${inKelvinStep(20, 1)} to ${inKelvinStep(30, 1)} above the air (common practice, no source)`,
        },
        { says: 'rivets that slip let it breathe and put this off' },
      ],
      sources: ['S. Timoshenko and J. Gere, Theory of Elastic Stability (1961), § 9.2'],
    },
  ]
}

export interface JoinedWay {
  welded: boolean
  /** least margin of all bays joined so, and its bay */
  margin: number
  bay: string
}

/** The weakest bay when all bays are welded round, and when none is: welds hold the edges and soften the sheet beside them. */
export function joinedWays(inputs: StrengthInputs, limits: StrengthLimits = strengthLimits): JoinedWay[] {
  return [true, false].map((welded) => {
    const worst = inputs.bays
      .map((b) => deckBay({ ...b, welded, held: welded }, inputs.rider, undefined, undefined, limits))
      .reduce((a, b) => (b.margin < a.margin ? b : a))
    return { welded, margin: worst.margin, bay: worst.bay.name }
  })
}

const bears = (w: JoinedWay): Sentence => say`${inTimes(w.margin)} times what is asked, in ${w.bay}`

/** Welded strength against riveted or glued. */
export function joined(
  answers: readonly DeckAnswer[],
  inputs: StrengthInputs,
  limits: StrengthLimits,
): Finding[] {
  const first = answers[0]?.bay
  if (!first) return []
  const [welded, loose] = joinedWays(inputs, limits) as [JoinedWay, JoinedWay]
  const isWelded = inputs.joined === 'welded'
  const [own, other] = isWelded ? [welded, loose] : [loose, welded]
  // a weak bay is judged as a bay; here only whether the joining is what makes it weak
  const costs = own.margin < limits.joined.value && other.margin > own.margin
  const { alloy } = first
  const t = Math.min(...inputs.bays.map((b) => b.t))
  // a fillet about as wide as the sheet is thick, twice
  const shrinks = weldShrinkage(3 * t * t, t)
  const word = isWelded ? 'Welded all round' : inputs.joined === 'glued' ? 'Glued' : 'Riveted'
  return [
    {
      id: 'deck.joined',
      question: 'strength',
      says: say`${word}, the deck bears ${bears(own)}; ${isWelded ? 'riveted or glued' : 'welded all round'} it would bear ${bears(other)}. Beside a weld ${alloy.id} keeps ${inMpa(Math.min(alloy.yield, alloy.weldedYield))} of its ${inMpa(alloy.yield)}.`,
      ...(costs ? { act: `join it the other way: ${isWelded ? 'rivets or glue' : 'welds'}` } : {}),
      harm: 'comfort',
      value: own.margin,
      unit: '1',
      standing: costs ? 'watch' : 'good',
      because: [
        { says: `joined ${inputs.joined}`, link: 'deck.joined' },
        { says: `${alloy.id}: ${alloy.note}`, link: 'deck.alloy' },
        {
          says: say`each weld across a seam draws ${inMm(shrinks.low, 0.1)} to ${inMm(shrinks.high, 0.1)} and leaves thin sheet wavy (shop practice, no source)`,
        },
        ...(isWelded ? flatWelding.slice(0, 3).map((says) => ({ says })) : []),
      ],
      sources: [
        'As-welded strengths: American Bureau of Shipping, Guide for High Speed Craft, 2-5-A1 table 2; 5052 at its annealed temper, Aluminum Design Manual, from memory',
        berger,
      ],
    },
  ]
}
