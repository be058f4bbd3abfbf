/**
 * A panel of a deck: its outline, rivets round its edge, lines to roll along, hatch openings with round corners, and the doublers that go round
 * them. Pitch, edge distance, corner radius and doubler width are the deck's own findings and are handed in.
 */
import { inCount, inMm } from '../base/answers/amounts.ts'
import type { FlatLine, FlatPiece, FlatPoint } from '../base/answers/madePart.ts'
import { say } from '../base/answers/sentence.ts'
import { areaOf, circle, distanceTo, evenlyAlong, inset, isInside, roundedRectangle } from './outlines.ts'
import { line } from './patternMarks.ts'
import { plate } from './plate.ts'
import { extremes, mustLie, ShapeFault } from './shapeFault.ts'

export interface HatchOpening {
  /** its middle and size, m */
  x: number
  y: number
  length: number
  width: number
  corner: number
}

/** Rivets, m: of a diameter, at most a pitch apart, their middles so far from the edge. */
export interface Riveting {
  diameter: number
  pitch: number
  edge: number
}

export interface PanelShape {
  id: string
  title: string
  thickness: number
  count?: number
  /** m, either way round */
  outline: readonly FlatPoint[]
  rivets?: Riveting
  /** lines to roll along */
  rolls?: readonly (readonly [FlatPoint, FlatPoint])[]
  hatches?: readonly HatchOpening[]
}

const opening = (h: HatchOpening, wider = 0) =>
  roundedRectangle(h.x, h.y, h.length + 2 * wider, h.width + 2 * wider, h.corner + wider)

/** Rivet middles along the inside of an outline, m. ShapeFault naming rivets.* */
export function rivetsAlong(outline: readonly FlatPoint[], r: Riveting): FlatPoint[] {
  mustLie('rivets.diameter', r.diameter, 1e-3, 0.02)
  mustLie('rivets.pitch', r.pitch, 2 * r.diameter, 1)
  mustLie('rivets.edge', r.edge, r.diameter, 0.2)
  const inner = inset(outline, r.edge)
  return evenlyAlong(inner, r.pitch).filter(
    (p) => isInside(p, outline) && distanceTo(p, outline) > 0.5 * r.edge,
  )
}

/** Pattern of a panel. ShapeFault naming outline, rivets.* or hatches.k. */
export function deckPanel(p: PanelShape): FlatPiece {
  const area = areaOf(p.outline)
  if (p.outline.length < 3 || !(Math.abs(area) > 1e-6))
    throw new ShapeFault(
      'outline',
      Math.abs(area),
      1e-6,
      'The panel’s outline encloses nothing.',
      'Give it three corners or more, in order round its edge.',
    )
  const outline = area > 0 ? p.outline : [...p.outline].reverse()
  const hatches = p.hatches ?? []
  const holes = hatches.map((h, k) => {
    mustLie(`hatches.${k}.length`, h.length, extremes.least, extremes.most)
    mustLie(`hatches.${k}.width`, h.width, extremes.least, extremes.most)
    mustLie(`hatches.${k}.corner`, h.corner, 0, Math.min(h.length, h.width) / 2)
    const hole = opening(h)
    const room = Math.min(...hole.map((q) => (isInside(q, outline) ? distanceTo(q, outline) : 0)))
    if (!(room > 0))
      throw new ShapeFault(
        `hatches.${k}.length`,
        h.length,
        0,
        say`Opening ${inCount(k + 1)} of ${inMm(h.length)} by ${inMm(h.width)} reaches beyond the panel.`,
        'Move it inward or make it smaller.',
      )
    return hole
  })
  const rivets = p.rivets ? rivetsAlong(outline, p.rivets) : []
  const kept = rivets.filter((q) => !holes.some((h) => isInside(q, h) || distanceTo(q, h) < p.rivets!.edge))
  const lines: FlatLine[] = [
    ...kept.flatMap(([x, y]) => rivetMark(x, y, p.rivets!.diameter / 2)),
    ...(p.rolls ?? []).map((points) => line('roll', points)),
  ]
  return plate({
    id: p.id,
    title: p.title,
    thickness: p.thickness,
    count: p.count ?? 1,
    outline,
    holes,
    lines,
    said: p.rivets
      ? [
          say`${inCount(kept.length)} rivets of ${inMm(p.rivets.diameter, 0.1)}, at most ${inMm(p.rivets.pitch, 0.1)} apart`,
        ]
      : [],
  })
}

/** A rivet to drill: a hole, and a cross to set the centre punch on. */
function rivetMark(x: number, y: number, radius: number): FlatLine[] {
  const arm = 1.6 * radius
  const cross: [FlatPoint, FlatPoint][] = [
    [
      [x - arm, y],
      [x + arm, y],
    ],
    [
      [x, y - arm],
      [x, y + arm],
    ],
  ]
  return [line('hole', circle(x, y, radius), true), ...cross.map((points) => line('centre', points))]
}

/** The ring that puts back what an opening takes: `width` m of metal all round, riveted in its middle. */
export function doublerOf(
  hatch: HatchOpening,
  width: number,
  rivets: Riveting,
  of: { id: string; title: string; thickness: number },
): FlatPiece {
  mustLie('width', width, 2 * rivets.edge, 0.5)
  mustLie('length', Math.min(hatch.length, hatch.width), extremes.least, extremes.most)
  mustLie('corner', hatch.corner, 0, Math.min(hatch.length, hatch.width) / 2)
  const h = { ...hatch, x: 0, y: 0 }
  const holes = evenlyAlong(opening(h, width / 2), rivets.pitch)
  return plate({
    ...of,
    outline: opening(h, width),
    holes: [opening(h)],
    lines: holes.flatMap(([x, y]) => rivetMark(x, y, rivets.diameter / 2)),
    said: [say`${inCount(holes.length)} rivets`],
  })
}
