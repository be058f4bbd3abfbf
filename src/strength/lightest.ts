/** The lightest deck that holds a rider: every build of a list tried, the table by mass. */
import type { Alloy } from './alloys.ts'
import { hatSection } from './beams.ts'
import { type DeckAnswer, type DeckBay, type DeckSupport, deckBay, deckMassPerArea } from './deck.ts'
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
  tried: number
}

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
            { kind: 'stringers', spacing, section: hatSection(height, 0.03, 1.5e-3) },
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

/** Tries the builds lightest first; `enough` of them that hold are fully kept. */
export function lightestDeck(input: LightestInput, cancelled?: () => boolean): LightestAnswer {
  const margin = input.margin ?? 1
  const most = (input.deflection ?? 1 / 50) * Math.min(input.length, input.width)
  const builds = deckBuilds(input).sort((a, b) => deckMassPerArea(a) - deckMassPerArea(b))
  const holding: DeckAnswer[] = []
  const best = new Map<DeckSupport['kind'], DeckAnswer>()
  let tried = 0
  for (const bay of builds) {
    if (cancelled?.()) break
    const known = best.get(bay.support.kind)
    // heavier than one of its kind that already holds: no use looking
    if (known !== undefined && known.margin >= margin && known.deflection <= most && holding.length >= 12)
      continue
    tried++
    const a = deckBay(bay, input.rider, input.temperature, 29)
    const holds = a.margin >= margin && a.deflection <= most
    if (holds) holding.push(a)
    const held = known !== undefined && known.margin >= margin && known.deflection <= most
    if (known === undefined || (!held && (holds || score(a, most) > score(known, most))))
      best.set(bay.support.kind, a)
  }
  return { holding, compared: [...best.values()], tried }
}

const score = (a: DeckAnswer, most: number): number => Math.min(a.margin, most / a.deflection)
