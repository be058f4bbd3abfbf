/**
 * Where foam cannot go: a frame laid across a bay. Across stringers it shares a foot among them (Hetényi 1946, see spread.ts); under a
 * sheet that spans alone it halves the field and carries the foot to the sides as a beam.
 */
import { aluminium } from './alloys.ts'
import { type BeamSection, beamMiddleLoad, hatSection, withSkin } from './beams.ts'
import { type DeckAnswer, type DeckBay, deckBay } from './deckBay.ts'
import { hatSheet } from './lightest.ts'
import { sharedByFrame } from './sheetSpread.ts'

/** A hat of the search's sheet, 30 mm wide, of a height (m). */
export const frameOf = (height: number): BeamSection => hatSection(height, 0.03, hatSheet)

export interface FrameAcross {
  /** kg the frame weighs */
  mass: number
  /** part of a foot's load on the most loaded stringer; NaN without stringers */
  share: number
  /** stringers it crosses */
  count: number
  /** m to which its help reaches on each side; NaN without stringers */
  reach: number
  /** margins with it, over all loads: sheet, stringers (NaN without) and the frame itself */
  sheet: number
  stringers: number
  frame: number
  /** least of them */
  margin: number
  /** m, standing: on the frame across stringers, in the softer half of a field that it halves */
  deflection: number
}

/** How many stringers stand in a bay. */
export const stringerCount = (width: number, spacing: number): number =>
  Math.max(1, Math.round(width / spacing) - 1)

/** A frame across the middle of a bay for a rider (kg); undefined for bays on foam or a core, which need none. */
export function frameAcross(
  answer: DeckAnswer,
  rider: number,
  section: BeamSection,
): FrameAcross | undefined {
  const { kind } = answer.bay.support
  if (kind !== 'stringers' && kind !== 'alone') return undefined
  const parts = kind === 'stringers' ? acrossStringers(answer, section) : underSheet(answer, rider, section)
  const { bay } = answer
  return {
    ...parts,
    mass: bay.alloy.density * section.area * bay.width,
    margin: Math.min(parts.sheet, parts.frame, Number.isNaN(parts.stringers) ? Infinity : parts.stringers),
  }
}

type Parts = Omit<FrameAcross, 'mass' | 'margin'>

/** under the stringers: the sheet between them is as before */
function acrossStringers(answer: DeckAnswer, section: BeamSection): Parts {
  const { bay } = answer
  const s = bay.support as Extract<DeckBay['support'], { kind: 'stringers' }>
  const E = aluminium.modulus
  const stringer = E * withSkin(s.section, bay.t, Math.min(30 * bay.t, s.spacing)).inertia
  const count = stringerCount(bay.width, s.spacing)
  const shared = answer.loads.map((l) =>
    sharedByFrame({
      load: l.force,
      frame: E * section.inertia,
      stringer,
      span: bay.length,
      spacing: s.spacing,
      count,
    }),
  )
  const least = (margin: (i: number) => number) => Math.min(...answer.loads.map((_, i) => margin(i)))
  const modulus = section.inertia / Math.max(section.middle, section.height - section.middle)
  return {
    share: shared[0]!.share,
    count,
    reach: shared[0]!.reach,
    sheet: least((i) => answer.loads[i]!.skin),
    stringers: least(
      (i) => answer.loads[i]!.stringer!.allowed / (answer.loads[i]!.stringer!.stress * shared[i]!.share),
    ),
    frame: least((i) => (answer.loads[i]!.allowed * modulus) / shared[i]!.moment),
    // the sheet between the stringers gives as before
    deflection: answer.deflection - answer.loads[0]!.stringer!.ofSpan * bay.length + shared[0]!.deflection,
  }
}

/** touching the sheet: two fields of half the length, and a beam to the sides */
function underSheet(answer: DeckAnswer, rider: number, section: BeamSection): Parts {
  const { bay } = answer
  const half = deckBay({ ...bay, length: bay.length / 2 }, rider)
  const joint = withSkin(section, bay.t, Math.min(30 * bay.t, bay.length / 2))
  const beams = answer.loads.map((l) => beamMiddleLoad(joint, bay.width, l.force, aluminium.modulus, 0.3))
  return {
    share: Number.NaN,
    count: 0,
    reach: Number.NaN,
    sheet: half.margin,
    stringers: Number.NaN,
    frame: Math.min(...beams.map((b, i) => answer.loads[i]!.allowed / b.stress)),
    // the sheet's edge at the frame goes down by half of what the frame does when the foot stands between
    deflection: Math.max(beams[0]!.deflection, half.deflection + beams[0]!.deflection / 2),
  }
}
