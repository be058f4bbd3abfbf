/** The lightest deck that holds a rider: every build of a list tried, the table by mass. */
import { inMm } from '../../base/answers/amounts.ts'
import { type Sentence, say } from '../../base/answers/sentence.ts'
import type { Alloy } from './alloys.ts'
import { hatSection } from './beams.ts'
import { type DeckAnswer, type DeckBay, type DeckSupport, deckBay, deckMassPerArea } from './deckBay.ts'
import type { Foam } from './foams.ts'

export interface LightestInput {
  /** m, between frames */
  length: number
  width: number
  /** kg */
  rider: number
  alloy: Alloy
  welded: boolean
  held: boolean
  /** m; the usual sheets when left out */
  sheets?: readonly number[]
  foams: readonly Foam[]
  /** m of foam under the deck that there is room for */
  foamDepth: number
  /** K */
  temperature?: number
  /** least margin, and greatest standing deflection over the short side; 1 and 1/50 when left out */
  margin?: number
  deflection?: number
}

export interface LightestAnswer {
  /** lightest first: those that hold */
  holding: DeckAnswer[]
  /** the best of each kind that holds, or the nearest when none does */
  compared: DeckAnswer[]
  /** builds worked out, and all builds looked over: worked out, or passed over because a lighter one of their kind holds */
  tried: number
  builds: number
}

/** What a search tells while it runs, and how it is called off. */
export interface LightestWatch {
  cancelled?: () => boolean
  /** builds looked over of all there are, and how many hold so far */
  progress?: (seen: number, of: number, holding: number) => void
  /** called once a kind of build first holds: the first build ever to hold is the lightest of all, as they are looked at by mass */
  early?: (answer: LightestAnswer) => void
}

/** Sheet that hats are folded from in the search, m. */
export const hatSheet = 1.5e-3

/** Sheets a builder can buy, m. */
const usualSheets: readonly number[] = [0.8e-3, 1e-3, 1.2e-3, 1.5e-3, 2e-3, 2.5e-3, 3e-3, 4e-3]

/** All builds of the usual sheets, stringer spacings, foams and cores. */
function deckBuilds(input: LightestInput): DeckBay[] {
  const sheets = input.sheets ?? usualSheets
  const base = {
    length: input.length,
    width: input.width,
    alloy: input.alloy,
    welded: input.welded,
    held: input.held,
  }
  const out: DeckBay[] = []
  const add = (t: number, support: DeckSupport, name: string) => out.push({ ...base, t, support, name })
  const mm = (v: number) => `${+(v * 1e3).toFixed(1)} mm`
  for (const t of sheets) {
    add(t, { kind: 'alone' }, `${mm(t)} sheet alone`)
    for (const spacing of [0.08, 0.1, 0.15, 0.2])
      if (spacing < input.width)
        for (const height of [0.02, 0.03, 0.04])
          add(
            t,
            { kind: 'stringers', spacing, section: hatSection(height, 0.03, hatSheet) },
            `${mm(t)} sheet on ${mm(height)} hats every ${mm(spacing)}`,
          )
    for (const foam of input.foams) {
      add(t, { kind: 'foam', foam, depth: input.foamDepth }, `${mm(t)} sheet on ${foam.id} foam`)
      if (t <= 2e-3)
        for (const core of [0.02, 0.03, 0.04, 0.05])
          add(
            t,
            { kind: 'sandwich', foam, core, inner: Math.max(0.8e-3, t) },
            `${mm(t)} faces on ${mm(core)} ${foam.id}`,
          )
    }
  }
  return out
}

/** A build in words: "2 mm sheet on 30 mm hats every 100 mm". */
export function buildSays(bay: DeckBay): Sentence {
  const sheet = inMm(bay.t, 0.1)
  const s = bay.support
  switch (s.kind) {
    case 'alone':
      return say`${sheet} sheet alone`
    case 'stringers':
      return say`${sheet} sheet on ${inMm(s.section.height)} hats every ${inMm(s.spacing)}`
    case 'foam':
      return say`${sheet} sheet on ${s.foam.id} foam`
    case 'sandwich':
      return say`${sheet} faces on ${inMm(s.core)} of ${s.foam.id}`
  }
}

/** Tries the builds lightest first; once a dozen hold, heavier ones of a kind that holds are passed over. */
export function lightestDeck(input: LightestInput, watch: LightestWatch = {}): LightestAnswer {
  const margin = input.margin ?? 1
  const most = mostDeflection(input)
  const holds = (a: DeckAnswer | undefined) => a !== undefined && a.margin >= margin && a.deflection <= most
  const builds = deckBuilds(input).sort((a, b) => deckMassPerArea(a) - deckMassPerArea(b))
  const holding: DeckAnswer[] = []
  const best = new Map<DeckSupport['kind'], DeckAnswer>()
  let tried = 0
  const answer = (): LightestAnswer => ({
    holding: [...holding],
    compared: [...best.values()],
    tried,
    builds: builds.length,
  })
  for (const [i, bay] of builds.entries()) {
    if (watch.cancelled?.()) break
    watch.progress?.(i, builds.length, holding.length)
    const known = best.get(bay.support.kind)
    // heavier than one of its kind that already holds: no use looking
    if (holds(known) && holding.length >= 12) continue
    tried++
    const a = deckBay(bay, input.rider, input.temperature, searchTerms)
    if (holds(a)) holding.push(a)
    if (known === undefined || (!holds(known) && (holds(a) || score(a, most) > score(known, most)))) {
      best.set(bay.support.kind, a)
      if (holds(a)) watch.early?.(answer())
    }
  }
  return answer()
}

/** Greatest deflection under a standing rider that a search lets pass, m. */
export const mostDeflection = (input: Pick<LightestInput, 'deflection' | 'length' | 'width'>): number =>
  (input.deflection ?? 1 / 50) * Math.min(input.length, input.width)

/** terms of the plate's series in a search: within half a per cent of the full count */
export const searchTerms = 29

const score = (a: DeckAnswer, most: number): number => Math.min(a.margin, most / a.deflection)
