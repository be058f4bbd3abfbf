/** How the sheet is held at its edges: rivets and sealant, welds that soften it, and flat sheet that pops in the sun. */
import type { Finding } from '../../base/answers/finding.ts'
import { camberFor, flatWelding, oilCanStepRectangle, weldShrinkage } from './buckling.ts'
import { type DeckAnswer, type DeckBay, deckBay } from './deckBay.ts'
import { pitchLimits, rivetAllowable, rivetOf } from './rivets.ts'
import type { StrengthInputs } from './strengthFromCraft.ts'
import { berger, MPa, mm } from './strengthSay.ts'

/** Pull of the hanging sheet against its rivets. */
export function edges(answers: readonly DeckAnswer[], inputs: StrengthInputs): Finding[] {
  if (inputs.joined !== 'riveted' || answers.length === 0) return []
  const worst = answers
    .map((a) => ({ a, pull: Math.max(...a.loads.filter((l) => l.load !== 'jump').map((l) => l.edgePull)) }))
    .reduce((x, y) => (y.pull > x.pull ? y : x))
  if (!(worst.pull > 0)) return []
  const rivet = rivetNear(inputs.rivet.diameter)
  const carries = rivetAllowable(rivet, worst.a.bay.alloy.ultimate, worst.a.bay.t) / inputs.rivet.pitch
  const limits = pitchLimits(rivet.diameter)
  const seam = 2 * (worst.a.bay.length + worst.a.bay.width)
  const tight = inputs.rivet.pitch <= limits.widest
  const margin = carries / worst.pull
  return [
    {
      id: 'deck.rivets',
      question: 'strength',
      says: `The sheet of ${worst.a.bay.name} pulls ${(worst.pull / 1e3).toFixed(0)} N/mm on its edge under a step; rivets every ${mm(inputs.rivet.pitch)} carry ${(carries / 1e3).toFixed(0)}${margin < 1 ? ', so they slip and the edge works loose in time' : ''}${tight ? '' : `, and seal poorly beyond ${mm(limits.widest)}`}.`,
      value: margin,
      unit: '1',
      standing: margin >= 1 && tight ? 'good' : 'watch',
      because: [
        {
          says: `rivets of ${mm(rivet.diameter)}: half their breaking shear, or the sheet’s bearing, whichever is less`,
          link: 'deck.rivet size',
        },
        {
          says: `sealed seams want at most six diameters, ${mm(limits.widest)}; two diameters from an edge`,
          link: 'deck.rivet pitch',
        },
        {
          says: `the edge of the bay, ${seam.toFixed(2)} m, takes ${Math.ceil(seam / inputs.rivet.pitch)} rivets and as long a bead of sealant laid before they are pulled; below water closed-end rivets, as open ones leak through their middle (common practice, no source)`,
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
export function pops(bays: readonly DeckBay[]): Finding[] {
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
      says: `Held flat, the sheet of ${worst.name} pops once it is ${rise.toFixed(rise < 10 ? 1 : 0)} K warmer than its frame; a camber of ${mm(camberFor(worst.width))} or foam glued under it stops that.`,
      value: rise,
      unit: 'K',
      standing: rise < 25 ? 'watch' : 'good',
      because: [
        { says: 'aluminium in the sun runs 20 to 30 K above the air (common practice, no source)' },
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
export function joinedWays(inputs: StrengthInputs): JoinedWay[] {
  return [true, false].map((welded) => {
    const worst = inputs.bays
      .map((b) => deckBay({ ...b, welded, held: welded }, inputs.rider))
      .reduce((a, b) => (b.margin < a.margin ? b : a))
    return { welded, margin: worst.margin, bay: worst.bay.name }
  })
}

const bears = (w: JoinedWay): string => `${w.margin.toFixed(2)} times what is asked, in ${w.bay}`

/** Welded strength against riveted or glued. */
export function joined(answers: readonly DeckAnswer[], inputs: StrengthInputs): Finding[] {
  const first = answers[0]?.bay
  if (!first) return []
  const [welded, loose] = joinedWays(inputs) as [JoinedWay, JoinedWay]
  const isWelded = inputs.joined === 'welded'
  const [own, other] = isWelded ? [welded, loose] : [loose, welded]
  const { alloy } = first
  const t = Math.min(...inputs.bays.map((b) => b.t))
  // a fillet about as wide as the sheet is thick, twice
  const shrinks = weldShrinkage(3 * t * t, t)
  const word = isWelded ? 'Welded all round' : inputs.joined === 'glued' ? 'Glued' : 'Riveted'
  return [
    {
      id: 'deck.joined',
      question: 'strength',
      says: `${word}, the deck bears ${bears(own)}; ${isWelded ? 'riveted or glued' : 'welded all round'} it would bear ${bears(other)}. Beside a weld ${alloy.id} keeps ${MPa(Math.min(alloy.yield, alloy.weldedYield))} of its ${MPa(alloy.yield)}.`,
      value: own.margin,
      unit: '1',
      standing: own.margin < 1 ? 'watch' : 'good',
      because: [
        { says: `joined ${inputs.joined}`, link: 'deck.joined' },
        { says: `${alloy.id}: ${alloy.note}`, link: 'deck.alloy' },
        {
          says: `each weld across a seam draws ${mm(shrinks.low)} to ${mm(shrinks.high)} and leaves thin sheet wavy (shop practice, no source)`,
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
