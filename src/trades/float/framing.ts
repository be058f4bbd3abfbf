/** What of the world a true view shows, and how a drag keeps it. */
import { makeFrame } from '../../physics/solid/waterFrame.ts'
import type { ViewInput } from './floatViews.ts'
import { project, type View } from './outline.ts'

/** What of the world a view shows, m on its own plane. */
export interface Framing {
  x0: number
  x1: number
  bottom: number
  top: number
}

export type Frames = { [view in View]?: Framing }

/** What of the world a view needs: the craft, the rider on it, some water below. */
export function framing(
  { rider, attitude }: Pick<ViewInput, 'rider' | 'attitude'>,
  view: View,
  pieces: Float64Array,
  before: Float64Array | undefined,
): Framing {
  const box = boundsOf(pieces)
  if (before) widen(box, boundsOf(before))
  const tall = !rider || rider.stance === 'prone' ? 0 : rider.stance === 'standing' ? 0.95 : 0.95 * 0.72
  const head = rider
    ? project(
        view,
        makeFrame(attitude.trim, attitude.heel),
        attitude.h,
        ...([rider.x, rider.y, rider.deck] as const),
      )[1] + (tall > 0 ? tall * rider.stature : 0.15)
    : box.y1
  return {
    x0: box.x0,
    x1: box.x1,
    top: Math.max(box.y1, head) + 0.06,
    bottom: Math.min(box.y0, 0) - 0.1,
  }
}

/** m the craft may outgrow a frame before another is made: the free edge of the picture takes it */
const outgrown = 0.06

/** The frame of before as long as the craft lies within it, else one of the same shape with room on all sides: the picture keeps its height. */
export function keptFrame(was: Framing, needed: Framing): Framing {
  const holds =
    needed.x0 > was.x0 - outgrown &&
    needed.x1 < was.x1 + outgrown &&
    needed.top < was.top + outgrown &&
    needed.bottom > was.bottom - outgrown / 2
  if (holds) return was
  const shape = (was.top - was.bottom) / (was.x1 - was.x0)
  const [wide, tall] = [needed.x1 - needed.x0, needed.top - needed.bottom]
  const aside = Math.max(0, tall / shape - wide) / 2
  const above = Math.max(0, wide * shape - tall)
  return {
    x0: needed.x0 - aside,
    x1: needed.x1 + aside,
    bottom: needed.bottom,
    top: needed.top + above,
  }
}

type Box = ReturnType<typeof boundsOf>

function widen(box: Box, by: Box): void {
  box.x0 = Math.min(box.x0, by.x0)
  box.x1 = Math.max(box.x1, by.x1)
  box.y0 = Math.min(box.y0, by.y0)
  box.y1 = Math.max(box.y1, by.y1)
}

function boundsOf(p: Float64Array): { x0: number; x1: number; y0: number; y1: number } {
  const b = { x0: Infinity, x1: -Infinity, y0: Infinity, y1: -Infinity }
  for (let i = 0; i < p.length; i += 2) {
    b.x0 = Math.min(b.x0, p[i]!)
    b.x1 = Math.max(b.x1, p[i]!)
    b.y0 = Math.min(b.y0, p[i + 1]!)
    b.y1 = Math.max(b.y1, p[i + 1]!)
  }
  return b
}
