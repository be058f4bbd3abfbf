/** The craft file to what strength takes: deck bays, rivets, hot parts. SI. */
import type { Craft } from '../../craft/schema/craftSchema.ts'
import { assumedBayAir, type BayAir } from '../../hull/site/airOfBay.ts'
import { alloyOf } from './alloys.ts'
import { hatSection } from './beams.ts'
import type { DeckBay, DeckSupport } from './deckBay.ts'
import { type DoubtfulBay, doubtfulBay } from './deckDoubts.ts'
import { foamOf } from './foams.ts'
import type { HotPart } from './guards.ts'

export interface StrengthInputs {
  bays: DeckBay[]
  /** what is doubtful of each of them */
  doubtful: DoubtfulBay[]
  /** kg */
  rider: number
  riderHigh: number
  joined: 'welded' | 'riveted' | 'glued'
  rivet: { diameter: number; pitch: number }
  hot: HotPart[]
  /** the air of the engine bay, where hot parts and the foam beside them are */
  bayAir: BayAir
}

type CraftBay = Craft['deck']['bays'][number]

function supportOf(bay: CraftBay): DeckSupport {
  switch (bay.kind) {
    case 'alone':
      return { kind: 'alone' }
    case 'stringers':
      return {
        kind: 'stringers',
        spacing: bay.spacing.value,
        section: hatSection(
          bay.stringerHeight.value,
          Math.max(0.03, 6 * bay.stringerSheet.value),
          bay.stringerSheet.value,
        ),
      }
    case 'foam':
      return { kind: 'foam', foam: foamOf(bay.foam), depth: bay.depth.value }
    case 'sandwich':
      return { kind: 'sandwich', foam: foamOf(bay.foam), core: bay.core.value, inner: bay.lowerSkin.value }
  }
}

/** Everything the strength findings need; without the bay's air worked out, that of a usual bay. */
export function strengthFromCraft(craft: Craft, bayAir: BayAir = assumedBayAir(craft)): StrengthInputs {
  const { deck, rider, place } = craft
  const bayOf = (b: CraftBay): DeckBay => ({
    name: b.name,
    length: b.length.value,
    width: b.width.value,
    t: b.skin.value,
    alloy: alloyOf(deck.alloy),
    welded: deck.joined === 'welded',
    held: deck.joined === 'welded',
    support: supportOf(b),
  })
  return {
    bays: deck.bays.map(bayOf),
    doubtful: deck.bays.map((b) => doubtfulBay(b, rider.mass, bayOf)),
    rider: rider.mass.value,
    riderHigh: rider.mass.high,
    joined: deck.joined,
    rivet: { diameter: deck.rivetSize.value, pitch: deck.rivetPitch.value },
    bayAir,
    hot: craft.hotParts.map((h) => ({
      name: h.name,
      guard: h.guard,
      foam: foamOf(h.foam),
      low: h.temperature.low,
      high: h.temperature.high,
      bay: bayAir,
      spot: {
        radius: h.diameter.value / 2,
        distance: h.distance.value,
        pipe: h.temperature.value,
        air: bayAir.value,
        // dry, dulled steel or stainless
        emissivity: 0.7,
        film: 8,
        conductivity: h.foam.startsWith('XPS') ? 0.034 : 0.038,
        depth: h.foamDepth.value,
        cool: place.waterTemperature.value,
      },
    })),
  }
}
