/** A bay cut along a frame laid across it: the foot on it, and where the load goes. */
import { dimension } from '../../drawing/dimension.ts'
import { line, polygon, polyline, rectangle, text } from '../../drawing/marks.ts'
import { faint, ink, okabeIto } from '../../drawing/palette.ts'
import type { Mark, Sheet } from '../../drawing/sheet.ts'
import type { DeckBay } from './deckBay.ts'
import { type FrameAcross, stringerCount } from './deckFrames.ts'

/** The frame seen along its length, bay to scale, with a hard step in the middle and each stringer's part of it. */
export function frameFigure(bay: DeckBay, frame: FrameAcross, height: number, width = 180): Sheet {
  const s = bay.support
  const left = 20
  const scale = (width - 2 * left) / bay.width
  const right = width - left
  const tall = Math.max(5, height * scale)
  const hat = s.kind === 'stringers' ? Math.max(4, s.section.height * scale) : 0
  const low = 18
  const frameTop = low + tall
  const top = frameTop + hat
  const middle = width / 2
  const red = okabeIto.vermillion
  const marks: Mark[] = [
    rectangle(left, low, right - left, tall, { fill: faint, stroke: ink, width: 0.4 }, 'data'),
    text(left + 2, low + tall / 2 - 1, 'frame', { size: 2.6 }),
    rectangle(left, top, right - left, 0.8, { fill: ink }, 'data'),
    line(middle, top + 12, middle, top + 3, { stroke: red, width: 0.5 }, 'data'),
    polygon([middle - 1, top + 3.2, middle + 1, top + 3.2, middle, top + 1], { fill: red }, 'data'),
    text(middle + 2, top + 8, 'a foot', { size: 2.8 }),
    text(4, top + 20, `${bay.name}, cut along the frame`, { size: 3.4, bold: true }),
    ...dimension(left, low, right, low, -9, `${Math.round(1e3 * bay.width)} mm`),
  ]
  const share = (distance: number) => shareAt(frame, distance)
  const count = s.kind === 'stringers' ? stringerCount(bay.width, s.spacing) : 0
  for (let i = 0; i < count; i++) {
    const off = (i - (count - 1) / 2) * (s.kind === 'stringers' ? s.spacing : 0)
    const x = middle + off * scale
    marks.push(
      polyline(
        [x - 4, top, x - 2.6, top, x - 2, frameTop, x + 2, frameTop, x + 2.6, top, x + 4, top],
        { stroke: ink, width: 0.6 },
        'data',
      ),
      text(x, low - 4, `${Math.round(100 * share(off))} %`, { size: 2.8, anchor: 'middle', colour: red }),
    )
  }
  if (count === 0)
    for (const x of [left, right])
      marks.push(text(x, low - 4, '50 %', { size: 2.8, anchor: 'middle', colour: red }))
  return {
    width,
    height: top + 26,
    title: `${bay.name}: a frame across`,
    says:
      count > 0
        ? `A foot in the middle of the frame: of its load the stringers take ${Array.from({ length: count }, (_, i) => `${Math.round(100 * share((i - (count - 1) / 2) * (s.kind === 'stringers' ? s.spacing : 0)))} %`).join(', ')}.`
        : 'A foot in the middle of the frame: half of its load goes to each side.',
    marks,
  }
}

/** part of the load on a stringer off the middle by a distance (m): the endless beam's shape, e^−λx (cos λx + sin λx), not below nothing */
function shareAt(frame: FrameAcross, distance: number): number {
  const at = (((3 * Math.PI) / 4) * Math.abs(distance)) / frame.reach
  return Math.max(0, frame.share * Math.exp(-at) * (Math.cos(at) + Math.sin(at)))
}
