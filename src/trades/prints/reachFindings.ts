/** Whether a hand or an arm passes the hatches and comes to what has to be looked at, and what is shut up for good. */
import { inMetres, inMm } from '../../base/answers/amounts.ts'
import type { Because, Finding } from '../../base/answers/finding.ts'
import { joined, type Sentence, say } from '../../base/answers/sentence.ts'
import { type Hatch, type LookedAt, type ReachPlaces, wayTo } from './reachPlaces.ts'
import type { PrintsLimits } from './threadLimits.ts'

const sources = [
  'MIL-STD-1472: openings for hands and arms, from memory',
  'S. Pheasant, Bodyspace: reach of British adults, from memory',
]

/** How far a hand comes past the rim of a hole, m; 0 where not even the hand passes. */
export function reachThrough(clear: number, stature: number, limits: PrintsLimits): number {
  if (clear >= limits.shoulder.value) return limits.shoulderReach.value * stature
  if (clear >= limits.elbow.value) return limits.elbowReach.value * stature
  if (clear >= limits.hand.value) return limits.handReach.value * stature
  return 0
}

interface Nearest {
  spot: LookedAt
  hatch?: Hatch
  way: number
  reach: number
}

/** For each spot the hatch through which most is left over, or the nearest one. */
function nearestOf({ spots, hatches, stature }: ReachPlaces, limits: PrintsLimits): Nearest[] {
  return spots.map((spot) => {
    const tried = hatches.flatMap((hatch): Nearest[] =>
      hatch.clear !== undefined && hatch.shut !== 'rivets and sealant'
        ? [{ spot, hatch, way: wayTo(hatch, spot.at), reach: reachThrough(hatch.clear, stature, limits) }]
        : [],
    )
    return tried.reduce<Nearest>((a, b) => (b.reach - b.way > a.reach - a.way ? b : a), {
      spot,
      way: Number.POSITIVE_INFINITY,
      reach: 0,
    })
  })
}

const finding = (id: string, f: Omit<Finding, 'id' | 'question' | 'sources'>): Finding => ({
  id: `prints.reach.${id}`,
  question: 'make',
  ...f,
  sources,
})

const because = ({ spot, hatch, way, reach }: Nearest): Because => ({
  says: hatch
    ? reach > 0
      ? say`${inMm(way)} from the rim of ${hatch.name} to ${spot.name}, and a hand comes ${inMm(reach)} far through it`
      : say`${hatch.name} is too narrow for a hand to come to ${spot.name}`
    : say`no hatch that opens leads to ${spot.name}, ${inMetres(spot.at[0])} forward of the transom`,
  link: spot.path,
})

const named = (list: readonly Nearest[]): Sentence => joined(list.map((n) => n.spot.name))

/** Findings of reach: what nobody comes to, what is shut for good, what is not known. */
export function reachFindings(places: ReachPlaces, limits: PrintsLimits): Finding[] {
  const { spots, hatches } = places
  if (spots.length === 0) return []
  const open = hatches.filter((h) => h.shut !== 'rivets and sealant')
  const unsized = open.find((h) => h.clear === undefined)
  const all = nearestOf(places, limits)
  const away = all.filter((n) => n.way > n.reach)
  if (away.length === 0)
    return [
      finding('all', {
        says: say`A hand reaches all that wants looking at: ${named(all)}.`,
        standing: 'good',
        because: all.map(because),
      }),
    ]
  // a hatch of unknown size may lead there: measure first
  if (unsized)
    return [
      finding('unknown', {
        says: say`Whether a hand reaches ${named(away)} is not known: the file does not say how wide ${unsized.name} opens.`,
        standing: 'unknown',
        because: [
          {
            says: say`an arm wants ${inMm(limits.shoulder.value)} to pass to the shoulder`,
            link: unsized.path,
          },
        ],
        measureNext: {
          what: `measure across the open hole of ${unsized.name} where it is narrowest`,
          with: 'tape',
          minutes: 1,
          path: `${unsized.path}.clear`,
        },
      }),
    ]
  return [missed(places, away, limits)]
}

function missed(
  { hatches, joined: by, stature }: ReachPlaces,
  away: readonly Nearest[],
  limits: PrintsLimits,
): Finding {
  const worst = away.reduce((a, b) => (b.way - b.reach > a.way - a.reach ? b : a))
  const far = limits.shoulderReach.value * stature
  const shut = hatches.find((h) => h.shut === 'rivets and sealant')
  const narrow = worst.hatch !== undefined && worst.way <= far
  const act = narrow
    ? say`open ${worst.hatch!.name} to ${inMm(limits.shoulder.value)} clear, so that an arm passes to the shoulder`
    : say`cut a hatch of ${inMm(limits.shoulder.value)} clear within ${inMm(far, 10)} of ${worst.spot.name}, ${inMetres(worst.spot.at[0])} forward of the transom, before the deck is ${by}`
  return finding('closed', {
    says: say`No hand reaches ${named(away)} once the deck is ${by}, and ${away.length > 1 ? 'each wants' : 'it wants'} looking at, ${worst.spot.for} not least.`,
    standing: 'watch',
    because: [
      ...away.map(because),
      ...(shut
        ? [{ says: say`${shut.name} is shut by rivets and sealant: it counts as deck`, link: shut.path }]
        : []),
    ],
    act,
    harm: 'will stop the run',
  })
}
