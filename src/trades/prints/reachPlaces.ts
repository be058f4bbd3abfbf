/** What has to be looked at again and again, where it lies, and the hatches it could be reached through: from the craft file. Lengths m. */
import type { Craft } from '../../craft/schema/craftSchema.ts'

export type Spot = readonly [forward: number, port: number, up: number]

export interface LookedAt {
  /** "the coupling" */
  name: string
  path: string
  at: Spot
  /** what is done there */
  for: string
}

export interface Hatch {
  name: string
  path: string
  at: Spot
  /** least width of the open hole; absent where the file does not say */
  clear?: number
  shut?: string
}

export interface ReachPlaces {
  spots: readonly LookedAt[]
  hatches: readonly Hatch[]
  /** of whoever works on it, m */
  stature: number
  /** riveted, welded or glued */
  joined: string
}

const spotOf = (p: Craft['openings'][number]['at']): Spot => [p[0].value, p[1].value, p[2].value]

/** a word with its number where there are several */
const numbered = (word: string, i: number, all: number) => (all > 1 ? `${word} ${i + 1}` : `the ${word}`)

/** Height of the shaft's line: the seal's where the file has one, else a third of the hull's depth. */
function shaftHeight(craft: Pick<Craft, 'openings' | 'hull'>): number {
  const seal = craft.openings.find((o) => o.kind === 'shaft seal')
  return seal ? seal.at[2].value : craft.hull.depth.value / 3
}

type ReadHere = Pick<Craft, 'openings' | 'hull' | 'shaft' | 'tanks' | 'rider' | 'deck'>

/** Couplings, engines and belts of the shaft that have a place, the shaft seal, and the top of each tank. */
export function reachPlaces(craft: ReadHere): ReachPlaces {
  const up = shaftHeight(craft)
  const links = craft.shaft.map((link, i) => ({ link, path: `shaft.${i}.at` }))
  const of = (
    kind: 'coupling' | 'engine' | 'belt' | 'shaft',
    word: string,
    does: string,
    higher: number,
  ): LookedAt[] => {
    const same = links.filter(({ link }) => link.kind === kind)
    return same.flatMap(({ link, path }, i) =>
      link.at
        ? [
            {
              name: numbered(word, i, same.length),
              path,
              at: [link.at.value, 0, up + higher] as const,
              for: does,
            },
          ]
        : [],
    )
  }
  const seals = craft.openings.flatMap((o, i): LookedAt[] =>
    o.kind === 'shaft seal'
      ? [
          {
            name: 'the shaft seal',
            path: `openings.${i}.at`,
            at: spotOf(o.at),
            for: 'to grease or tighten it',
          },
        ]
      : [],
  )
  const tanks = craft.tanks.map((t, i): LookedAt => {
    const tall = t.kind === 'lying cylinder' ? t.diameter.value : t.height.value
    const [x, y, z] = spotOf(t.foot)
    return {
      name: `the fittings of ${t.name}`,
      path: `tanks.${i}.foot`,
      at: [x, y, z + tall],
      for: 'to look for weeping hoses',
    }
  })
  return {
    spots: [
      ...of('coupling', 'coupling', 'to look at witness marks and bolts', 0),
      ...of('engine', 'engine', 'to change plug and look at the carburettor', 0.12),
      ...of('belt', 'belt', 'to look at its teeth and pull', 0),
      ...of('shaft', 'shaft', 'to feel its bearings for play and warmth', 0),
      ...seals,
      ...tanks,
    ],
    hatches: craft.openings.flatMap((o, i): Hatch[] =>
      o.kind === 'hatch'
        ? [
            {
              name: o.name,
              path: `openings.${i}`,
              at: spotOf(o.at),
              ...(o.clear ? { clear: o.clear.value } : {}),
              ...(o.shut ? { shut: o.shut } : {}),
            },
          ]
        : [],
    ),
    stature: craft.rider.height.value,
    joined: craft.deck.joined,
  }
}

/** Straight way from the rim of a hatch's hole to a spot, m. */
export function wayTo(hatch: Pick<Hatch, 'at' | 'clear'>, spot: Spot): number {
  const flat = Math.hypot(spot[0] - hatch.at[0], spot[1] - hatch.at[1])
  return Math.hypot(Math.max(0, flat - (hatch.clear ?? 0) / 2), spot[2] - hatch.at[2])
}
