import {
  type KeyboardEvent,
  type PointerEvent,
  type Ref,
  useCallback,
  useImperativeHandle,
  useLayoutEffect,
  useRef,
  useState,
} from 'react'
import { inCm, inMetres } from '../../../../base/answers/amounts.ts'
import { printed, say } from '../../../../base/answers/sentence.ts'
import type { Envelope } from '../../../../trades/float/envelope.ts'
import type { LiveState } from '../../../../trades/float/live.ts'
import { deckFromAbove, roomFigure, roomLayout, roomPad } from '../../../../trades/float/roomFigure.ts'
import { SheetSvg } from '../../parts/SheetSvg.tsx'
import { useApp } from '../../state/hooks.ts'
import type { Side } from './useFloat.ts'

/** Where the rider stands, m forward of the transom and to port. */
export interface Place {
  x: number
  y: number
}

export interface DragProps {
  side: Side
  at: Place
  disabled: boolean
  onMove: (x: number, y: number) => void
  onNudge: (dx: number, dy: number, at: Place) => void
  onHold: (on: boolean) => void
  onEnd: (wait: number) => void
}

/** The rider's mark, moved past React. */
export interface MovedMark {
  at: (place: Place) => void
}

const step: Record<string, readonly [number, number]> = {
  ArrowRight: [1, 0],
  ArrowLeft: [-1, 0],
  ArrowUp: [0, 1],
  ArrowDown: [0, -1],
}

/** The deck from above with the rider's room; the rider's mark is dragged over it, or moved with the arrow keys. */
export function DeckPlan({
  side,
  at,
  disabled,
  onMove,
  onNudge,
  onHold,
  onEnd,
  room,
  before,
  state,
  mark,
}: DragProps & {
  room: Envelope | undefined
  before: Side | undefined
  state: LiveState | undefined
  mark: Ref<MovedMark>
}) {
  const { hull } = side.input
  const box = useRef<HTMLDivElement>(null)
  const spot = useRef<HTMLDivElement>(null)
  /** the sheet's box on the screen while it is dragged over: nothing around it moves then */
  const dragging = useRef<DOMRect>(undefined)
  const [wide, setWide] = useState(180)
  const draw = useCallback(
    (width: number) => {
      queueMicrotask(() => setWide(width))
      if (!room) return deckFromAbove(hull, width)
      const old = before?.state.report?.room
      return roomFigure(hull, room, undefined, width, old && { hull: before.input.hull, room: old })
    },
    [hull, room, before],
  )
  // where roomFigure puts a place, as parts of the sheet
  const { scale, height: tall, sx, sy } = roomLayout(hull, wide)
  const left = sx(at.x) / wide
  const top = 1 - sy(at.y) / tall
  const rectOf = () => box.current?.querySelector('svg')?.getBoundingClientRect()
  useImperativeHandle(mark, () => ({
    at: (place) => {
      const rect = dragging.current ?? rectOf()
      if (!rect || !spot.current) return
      const dx = (sx(place.x) - sx(at.x)) * (rect.width / wide)
      const dy = (sy(at.y) - sy(place.y)) * (rect.height / tall)
      spot.current.style.transform = `translate(${dx}px, ${dy}px)`
    },
  }))
  // rendered, it stands where it was moved to
  useLayoutEffect(() => {
    if (spot.current) spot.current.style.transform = ''
  })
  const go = (e: PointerEvent) => {
    const rect = dragging.current
    if (!rect) return
    const u = ((e.clientX - rect.left) / rect.width) * wide
    const v = (1 - (e.clientY - rect.top) / rect.height) * tall
    onMove((u - roomPad) / scale, (v - sy(0)) / scale)
  }
  const down = (e: PointerEvent<HTMLDivElement>) => {
    if (disabled) return
    e.currentTarget.setPointerCapture(e.pointerId)
    onHold(true)
    dragging.current = rectOf()
    go(e)
  }
  const up = () => {
    if (!dragging.current) return
    dragging.current = undefined
    onHold(false)
    onEnd(0)
  }
  const key = (e: KeyboardEvent) => {
    const by = step[e.key]
    if (!by || disabled || e.altKey || e.ctrlKey || e.metaKey) return
    e.preventDefault()
    const size = e.shiftKey ? 0.1 : 0.02
    onNudge(by[0] * size, by[1] * size, at)
    onEnd(700)
  }
  const cm = (v: number) => Math.round(100 * v)
  const units = useApp((s) => s.units)
  const aside =
    cm(at.y) === 0 ? 'in the middle' : say`${inCm(Math.abs(at.y))} to ${at.y > 0 ? 'port' : 'starboard'}`
  const words = printed(say`${inMetres(at.x)} forward of the transom, ${aside}; ${stateWords(state)}`, units)
  return (
    <figure className="figure deckplan">
      <div className="sheetbox" ref={box}>
        <SheetSvg draw={draw} />
        <div
          className="dragsurface"
          onPointerDown={down}
          onPointerMove={go}
          onPointerUp={up}
          onPointerCancel={up}
        >
          <div
            ref={spot}
            className="ridermark"
            role="slider"
            tabIndex={0}
            aria-label="Rider on the deck, moved with the arrow keys"
            aria-valuemin={0}
            aria-valuemax={cm(hull.length)}
            aria-valuenow={cm(at.x)}
            aria-valuetext={words}
            aria-disabled={disabled || undefined}
            style={{ left: `${100 * left}%`, top: `${100 * top}%` }}
            onKeyDown={key}
          />
        </div>
      </div>
      <figcaption>
        <span>
          Drag the mark, or step it with the arrow keys. Green: level within 10° and 6°, every opening dry
          {room ? '.' : '; being worked out…'}
        </span>
      </figcaption>
    </figure>
  )
}

function stateWords(s: LiveState | undefined): string {
  if (!s) return 'off the deck'
  if (!s.stays) return 'it does not stay there'
  const deg = (a: number) => `${Math.abs((a * 180) / Math.PI).toFixed(1)}°`
  return `${deg(s.attitude.trim)} bow ${s.attitude.trim > 0 ? 'up' : 'down'}, ${deg(s.attitude.heel)} to ${s.attitude.heel > 0 ? 'port' : 'starboard'}`
}
