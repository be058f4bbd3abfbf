import { type Ref, useId, useImperativeHandle, useLayoutEffect, useMemo, useRef } from 'react'
import type { Sheet } from '../../../drawing/sheet.ts'
import { fontStack } from '../../../drawing/svg.ts'
import { FigureCaption } from './FigureCaption.tsx'
import { type Painter, painterOf } from './paintSheet.ts'
import { useWidth } from './useWidth.ts'
import '../style/sheet.css'

/** Draws the next frame of a moving picture past React: lines at once, words when the page is rendered next. */
export interface Frames {
  next: (draw: (width: number) => Sheet) => void
}

interface Props {
  /** draws the sheet for the room there is, mm; drawn again when it is another function */
  draw: (width: number) => Sheet
  frames: Ref<Frames>
  caption?: string | undefined
  /** file name of the saved picture */
  name: string
}

/** A drawing that follows a hand at the pace of the screen; otherwise like any figure. */
export function LiveFigure({ draw, frames, caption, name }: Props) {
  const id = useId()
  const [box, width] = useWidth()
  const svg = useRef<SVGSVGElement>(null)
  const group = useRef<SVGGElement>(null)
  const painter = useRef<Painter>(undefined)
  const sheet = useMemo(() => (width > 20 ? draw(width) : undefined), [draw, width])
  useLayoutEffect(() => {
    if (!sheet || !svg.current || !group.current) return
    painter.current ??= painterOf(svg.current, group.current)
    painter.current(sheet, true)
  }, [sheet])
  useImperativeHandle(frames, () => ({ next: (by) => width > 20 && painter.current?.(by(width), false) }), [
    width,
  ])
  return (
    <figure className="figure">
      <div ref={box} className="sheet livesheet">
        <svg
          ref={svg}
          role="img"
          aria-labelledby={`${id}t`}
          aria-describedby={`${id}d`}
          fontFamily={fontStack}
        >
          <title id={`${id}t`}>{sheet?.title ?? name}</title>
          <desc id={`${id}d`}>{sheet?.says}</desc>
          <g ref={group} />
        </svg>
      </div>
      <FigureCaption caption={caption} name={name} sheet={() => sheet} />
    </figure>
  )
}
