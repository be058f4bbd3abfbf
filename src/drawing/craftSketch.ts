/** A craft to scale, as on a shop sketch: from the side, from above and from astern, with its main dimensions. */
import { moved } from './compose.ts'
import {
  jetFromSide,
  jetLine,
  openingSign,
  partFromSide,
  type SketchJet,
  type SketchOpening,
  type SketchPart,
  type SketchTank,
  tankFromAbove,
  tankFromAstern,
  tankFromSide,
  thin,
  weightSign,
} from './craftParts.ts'
import { centreLine, dimension } from './dimension.ts'
import { choosePlace, Occupied } from './labels.ts'
import { circle, line, polygon, polyline, rectangle, text } from './marks.ts'
import { movedSpots, numberMarks, placeNumbers } from './numberSigns.ts'
import { ink, okabeIto, quiet } from './palette.ts'
import { type Posture, riderFigure } from './riderFigure.ts'
import type { Mark, Sheet, Spot, Style } from './sheet.ts'
import { textWidth } from './textWidth.ts'

/** A number and the place on board that it is about. */
export interface SketchNumber {
  n: number
  at: readonly [number, number, number]
  /** the view that shows its place best */
  from: 'side' | 'above'
}

/** Everything in metres; lines are x0, v0, x1, v1 … from the transom forward. */
export interface CraftShape {
  title: string
  says: string
  length: number
  beam: number
  depth: number
  /** lowest and highest of each section; the chine and its breadth are empty where there is none */
  keel: readonly number[]
  chine: readonly number[]
  deck: readonly number[]
  chineHalf: readonly number[]
  deckHalf: readonly number[]
  /** rings of the section at the widest place and at the transom: to port, up */
  widest: readonly (readonly number[])[]
  transom: readonly (readonly number[])[]
  parts: readonly SketchPart[]
  tanks?: readonly SketchTank[]
  openings?: readonly SketchOpening[]
  rider?: { at: number; off: number; stature: number; posture: Posture }
  jet?: SketchJet
  /** still water above the transom's foot, at the transom and at the nose */
  water?: { aft: number; forward: number }
  /** what is told beside the drawing, by its number, m */
  numbers?: readonly SketchNumber[]
  /** a length in words, in the reader's units */
  words: (metres: number) => string
}

const outline: Style = { stroke: ink, width: 0.5, fill: '#faf8f2' }
const hidden: Style = { stroke: quiet, width: 0.22, dash: [1.6, 0.8] }
const waterLine: Style = { stroke: okabeIto.skyBlue, width: 0.4 }

/** The drawing for a sheet of the given width, mm; the three views share one scale. */
export function craftSketch(shape: CraftShape, width = 180): Sheet {
  const left = 13
  const wide = width >= 150
  // a wide sheet has the view from astern beside the side view, a narrow one under it
  const across = wide ? shape.length + shape.beam * 1.15 : shape.length
  const scale = (width - left - (wide ? 22 : 8)) / across
  const side = sideView(shape, scale)
  const plan = planView(shape, scale)
  const end = endView(shape, scale)
  const tall = (v: View) => v.above + v.below
  const rows = wide
    ? [Math.max(side.above, end.above) + Math.max(side.below, end.below), tall(plan)]
    : [tall(side), tall(plan), tall(end)]
  const height = rows.reduce((a, b) => a + b, 0) + 4
  const marks: Mark[] = []
  const spots: Spot[] = []
  const put = (view: View, x: number, y: number) => {
    marks.push(...moved(view.marks, x, y))
    spots.push(...movedSpots(view.spots, x, y))
  }
  if (wide) {
    const base = height - Math.max(side.above, end.above)
    put(side, left, base)
    put(end, left + shape.length * scale + 14 + (shape.beam * scale) / 2, base)
    put(plan, left, plan.below)
  } else {
    put(side, left, height - side.above)
    put(plan, left, height - rows[0]! - plan.above)
    put(end, left + (shape.length * scale) / 2, end.below)
  }
  marks.push(...numberMarks(spots))
  const sheet: Sheet = { width, height, title: shape.title, says: shape.says, marks }
  return spots.length > 0 ? { ...sheet, spots } : sheet
}

interface View {
  marks: Mark[]
  /** numbers on it; drawn last, over everything */
  spots: Spot[]
  /** paper needed above and below the view's own zero line, mm */
  above: number
  below: number
}

const scaled = (points: readonly number[], k: number) => points.map((v) => v * k)
function backwards(points: readonly number[]): number[] {
  const out: number[] = []
  for (let i = points.length - 2; i >= 0; i -= 2) out.push(points[i]!, points[i + 1]!)
  return out
}

function sideView(s: CraftShape, k: number): View {
  const marks: Mark[] = [
    polygon(scaled([...s.keel, ...backwards(s.deck)], k), outline, 'mark', 'hull'),
    ...(s.chine.length > 2 ? [polyline(scaled(s.chine, k), thin, 'mark', 'chine')] : []),
    ...s.parts.flatMap((p) => partFromSide(p, k)),
    ...(s.tanks ?? []).flatMap((t) => tankFromSide(t, k)),
    ...(s.jet ? jetFromSide(s.jet, k) : []),
  ]
  const deckAt = (x: number) => heightAt(s.deck, x)
  let above = Math.max(
    ...s.parts.map((p) => (p.at[2] + p.size[2] / 2) * k),
    ...(s.tanks ?? []).map((t) => (t.at[2] + t.size[2] / 2) * k),
    ...(s.openings ?? []).map((o) => o.at[2] * k + 2),
    s.depth * k,
  )
  if (s.rider) {
    const { at, stature, posture } = s.rider
    marks.push(...riderFigure(posture, at * k, deckAt(at) * k, stature * k, { stroke: quiet, width: 0.5 }))
    const tall = { standing: 1.02, crouching: 0.78, kneeling: 0.75, sitting: 0.62, prone: 0.25 }[posture]
    above = Math.max(above, (deckAt(at) + stature * tall) * k)
  }
  if (s.water) marks.push(...waterFromSide(s.water, s.length, k))
  for (const o of s.openings ?? []) marks.push(openingSign(o.at[0] * k, o.at[2] * k))
  const spots = placeNumbers(
    (s.numbers ?? []).flatMap(({ n, at, from }) =>
      from === 'side' ? [{ n, x: at[0] * k, y: at[2] * k }] : [],
    ),
  )
  const discs = spots.map((p) => rectangle(p.x - p.r, p.y - p.r, 2 * p.r, 2 * p.r, thin, 'dimension'))
  const named = nameParts(s, k, [...marks, ...discs])
  marks.push(...named.marks)
  const below = dimensionsBelow(s, k, marks)
  const highest = Math.max(...spots.map((p) => p.y + p.r), 0)
  return { marks, spots, above: Math.max(above + 3, named.above, highest + 1), below }
}

/** Height of a line (x0, v0, x1, v1 …) at `x`; its last beyond its end, nought where it is empty. */
export function heightAt(points: readonly number[], x: number): number {
  for (let i = 0; i + 3 < points.length; i += 2)
    if (x <= points[i + 2]!) {
      const t = (x - points[i]!) / (points[i + 2]! - points[i]! || 1)
      return points[i + 1]! + Math.max(0, t) * (points[i + 3]! - points[i + 1]!)
    }
  return points.at(-1) ?? 0
}

/** Length, rider's place, depth, draft and nozzle height; answers the paper they take below the keel line. */
function dimensionsBelow(s: CraftShape, k: number, marks: Mark[]): number {
  let row = -7
  if (s.rider) {
    marks.push(...dimension(0, 0, s.rider.at * k, 0, row, `rider ${s.words(s.rider.at)}`))
    marks.push(
      line(
        s.rider.at * k,
        row,
        s.rider.at * k,
        heightAt(s.deck, s.rider.at) * k,
        { ...hidden, width: 0.15 },
        'dimension',
      ),
    )
    row -= 6
  }
  marks.push(...dimension(0, 0, s.length * k, 0, row, s.words(s.length)))
  marks.push(...dimension(0, 0, 0, s.depth * k, 7, s.words(s.depth)))
  return -row + 3
}

function waterFromSide(w: NonNullable<CraftShape['water']>, length: number, k: number): Mark[] {
  const at = (x: number) => (w.aft + ((w.forward - w.aft) * x) / length) * k
  const [a, b] = [-11 / k, length + 6 / k]
  const sign = b * k - 3
  const level = at(b)
  return [
    line(a * k, at(a), b * k, at(b), waterLine, 'water'),
    polygon(
      [sign - 1.3, level + 2.3, sign + 1.3, level + 2.3, sign, level + 0.2],
      { stroke: okabeIto.blue, width: 0.2 },
      'water',
    ),
  ]
}

/** Names over the side view, each with a line down to its part, clear of the rider and of each other. */
function nameParts(s: CraftShape, k: number, drawn: readonly Mark[]): { marks: Mark[]; above: number } {
  const size = 2.7
  const [ox, oy] = [20, 40]
  const taken = new Occupied(s.length * k + 2 * ox, 2 * oy + (s.depth + 2.2) * k)
  const shifted = moved(drawn, ox, oy)
  for (const m of shifted) {
    if (m.kind === 'polyline' || m.kind === 'polygon') taken.line(m.points)
    // names keep clear of the small signs of openings too
    else if (m.kind === 'arc' && m.r < 2)
      taken.line([
        m.cx - m.r,
        m.cy - m.r,
        m.cx + m.r,
        m.cy + m.r,
        m.cx - m.r,
        m.cy + m.r,
        m.cx + m.r,
        m.cy - m.r,
      ])
  }
  const frame = { left: ox - 12, right: ox + s.length * k + 12, bottom: 0, top: 1e4 }
  const marks: Mark[] = []
  let above = 0
  const tops = [
    ...s.parts
      .filter((p) => p.look !== 'weight')
      .map((p) => ({
        name: p.name,
        x: p.at[0],
        top: p.at[2] + p.size[2] * (p.look === 'tank' ? 0.62 : 0.5),
      })),
    ...(s.tanks ?? []).map((t) => ({ name: t.name, x: t.at[0], top: t.at[2] + t.size[2] * 0.62 })),
    ...(s.openings ?? []).map((o) => ({ name: o.name, x: o.at[0], top: o.at[2] })),
  ]
  for (const p of tops) {
    const [x, top] = [p.x * k, p.top * k]
    const places = [5, 9.4, 13.8, 18.2, 22.6, 27, 35, 44].flatMap((up) =>
      [0, -8, 8, -16, 16].map((aside) => ({
        x: ox + x + aside,
        y: oy + Math.max(top, s.depth * k) + up,
        anchor: 'middle' as const,
        cost: up * 0.4 + Math.abs(aside) * 0.5,
      })),
    )
    const place = choosePlace(p.name, size, places, frame, taken)
    if (!place) continue
    const [px, py] = [place.x - ox, place.y - oy]
    marks.push(line(x, top, px, py - 0.8, { stroke: quiet, width: 0.15 }, 'dimension'))
    marks.push(text(px, py, p.name, { size, anchor: 'middle', halo: true, layer: 'dimension' }))
    above = Math.max(above, py + 4)
  }
  return { marks, above }
}

function planView(s: CraftShape, k: number): View {
  const mirror = (points: readonly number[]) => points.map((v, i) => (i % 2 === 0 ? v : -v))
  const loop = (points: readonly number[]) => scaled([...points, ...backwards(mirror(points))], k)
  const half =
    Math.max(...s.deckHalf.filter((_, i) => i % 2 === 1), ...s.chineHalf.filter((_, i) => i % 2 === 1)) * k
  const marks: Mark[] = [
    polygon(loop(s.deckHalf), outline, 'mark', 'deck'),
    ...(s.chineHalf.length > 2
      ? [polygon(loop(s.chineHalf), { ...hidden }, 'mark', 'chines, from above')]
      : []),
    ...s.parts
      .filter((p) => p.look !== 'weight')
      .map((p) => {
        const style: Style = { ...(p.sizeGuessed ? { ...thin, dash: [1.4, 0.7] } : thin), fill: '#ffffff' }
        return rectangle(
          (p.at[0] - p.size[0] / 2) * k,
          (p.at[1] - p.size[1] / 2) * k,
          p.size[0] * k,
          p.size[1] * k,
          style,
          'mark',
        )
      }),
    ...(s.tanks ?? []).map((t) => tankFromAbove(t, k)),
    ...s.parts.flatMap((p) => weightSign(p.at[0] * k, p.at[1] * k)),
    ...(s.openings ?? []).map((o) => openingSign(o.at[0] * k, o.at[1] * k)),
  ]
  if (s.jet) {
    const { intakeFront, intakeLength, intakeWidth, rotorAt, bore } = s.jet
    marks.push(
      rectangle(
        (intakeFront - intakeLength) * k,
        (-intakeWidth / 2) * k,
        intakeLength * k,
        intakeWidth * k,
        { ...hidden, stroke: okabeIto.blue },
        'mark',
      ),
    )
    marks.push(
      rectangle(0, (-bore / 2) * k, rotorAt * k, bore * k, { ...hidden, stroke: okabeIto.blue }, 'mark'),
    )
  }
  if (s.rider)
    marks.push(circle(s.rider.at * k, s.rider.off * k, 0.11 * k, { stroke: quiet, width: 0.5 }, 'mark'))
  marks.push(centreLine(0, 0, s.length * k, 0))
  marks.push(...dimension(0, -half, 0, half, 7, s.words(s.beam)))
  marks.push(text(s.length * k, -half - 1, 'from above', { size: 2.6, anchor: 'end', colour: quiet }))
  const spots = placeNumbers(
    (s.numbers ?? []).flatMap(({ n, at, from }) =>
      from === 'above' ? [{ n, x: at[0] * k, y: at[1] * k }] : [],
    ),
  )
  return { marks, spots, above: half + 3, below: half + 5 }
}

function endView(s: CraftShape, k: number): View {
  // looking forward: port is to the left
  const ring = (r: readonly number[]) => r.map((v, i) => (i % 2 === 0 ? -v * k : v * k))
  const half = Math.max(...s.widest.flatMap((r) => r.filter((_, i) => i % 2 === 0).map(Math.abs))) * k
  const marks: Mark[] = [
    ...s.widest.map((r) => polygon(ring(r), outline, 'mark', 'widest section')),
    ...s.transom.map((r) => polygon(ring(r), { ...thin, fill: '#ffffff' }, 'mark', 'transom')),
    ...(s.tanks ?? []).flatMap((t) => tankFromAstern(t, k)),
  ]
  if (s.jet) {
    marks.push(
      circle(0, s.jet.height * k, (s.jet.bore / 2) * k, { ...hidden, stroke: okabeIto.blue }, 'mark'),
    )
    marks.push(circle(0, s.jet.height * k, (s.jet.nozzle / 2) * k, { ...jetLine, fill: '#d5e8f5' }, 'mark'))
  }
  if (s.water) marks.push(line(-half - 4, s.water.aft * k, half + 4, s.water.aft * k, waterLine, 'water'))
  for (const o of s.openings ?? []) marks.push(openingSign(-o.at[1] * k, o.at[2] * k))
  marks.push(...dimension(-half, 0, half, 0, -7, s.words((2 * half) / k)))
  let draftEnds = 0
  if (s.water && s.water.aft * k > 2) {
    const words = `draft ${s.words(s.water.aft)}`
    marks.push(...dimension(half, 0, half, s.water.aft * k, -5, words))
    // the words stand upright over the arrows where these are short
    draftEnds = s.water.aft * k + 8 + textWidth(words, 2.7)
  }
  const top = Math.max(s.depth, ...(s.openings ?? []).map((o) => o.at[2])) * k
  marks.push(text(0, top + 4, 'from astern', { size: 2.6, anchor: 'middle', colour: quiet }))
  return { marks, spots: [], above: Math.max(top + 9, draftEnds), below: 11 }
}
