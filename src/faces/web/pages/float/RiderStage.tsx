import { type PointerEvent, useCallback, useEffect, useLayoutEffect, useMemo, useRef, useState } from 'react'
import { Button } from 'react-aria-components/Button'
import { weightSum } from '../../../../hull/aboard/masses.ts'
import { deckHeight } from '../../../../hull/lines/hullBody.ts'
import {
  endView,
  type Steady,
  sideView,
  type ViewInput,
  viewPad,
} from '../../../../trades/float/floatViews.ts'
import { aboardOf } from '../../../../trades/float/input.ts'
import type { LiveState } from '../../../../trades/float/live.ts'
import { type Frames, LiveFigure } from '../../parts/LiveFigure.tsx'
import { app } from '../../state/app.ts'
import { inputAt } from '../../state/craftFile.ts'
import { useApp } from '../../state/hooks.ts'
import { writtenNumber } from '../../state/shownValues.ts'
import { DeckPlan, type DragProps, type MovedMark, type Place } from './DeckPlan.tsx'
import { LiveNumbers } from './LiveNumbers.tsx'
import type { Side } from './useFloat.ts'

interface Props {
  /** the craft whose rider is dragged: with what is tried, when something is */
  side: Side
  now: Side
}

/** The craft from above, from the side and from astern; the rider is dragged and it answers at once. */
export function RiderStage({ side, now }: Props) {
  const readOnly = useApp((s) => s.role === 'follower')
  const [hand, setHand] = useState<{ of: string; place: Place }>()
  // a place held over another craft means nothing any more
  const held = hand?.of === side.key ? hand.place : undefined
  const setHeld = (place: Place | undefined) => setHand(place && { of: side.key, place })
  const { x, y } = held ?? { x: side.input.rider.x, y: side.input.rider.y }
  const at = useMemo(() => ({ x, y }), [x, y])
  const state = useMemo(() => side.live(at.x, at.y), [side, at])
  const present = useMemo(() => now.live(now.input.rider.x, now.input.rider.y), [now])
  // the same object for a whole drag, so that its outline is drawn once
  const before = useMemo(() => (present?.stays ? beforeOf(now, present) : undefined), [now, present])
  const moved = held !== undefined || side !== now
  const units = useApp((s) => s.units)
  const seenAt = useCallback(
    (place: Place, there: LiveState | undefined, dashed: boolean): ViewInput => ({
      ...viewOf(side, there, place),
      system: units,
      ...(dashed && before ? { before } : {}),
    }),
    [side, before, units],
  )
  const dragged = held !== undefined
  // while it is dragged the pictures keep their height, and their scale, so that only what moves is drawn anew
  const steady = useRef<Steady>(undefined)
  const seen = useMemo(() => {
    const plainly = seenAt(at, state, moved)
    return dragged && steady.current ? { ...plainly, steady: steady.current } : plainly
  }, [seenAt, at, state, moved, dragged])
  useLayoutEffect(() => {
    if (!dragged) steady.current = { rest: seen, frames: {} }
  }, [seen, dragged])
  const drawSide = useCallback((width: number) => sideView({ ...seen, width }), [seen])
  const drawEnd = useCallback((width: number) => endView({ ...seen, width: Math.min(width, 130) }), [seen])

  const fromSide = useRef<Frames>(null)
  const fromAstern = useRef<Frames>(null)
  const mark = useRef<MovedMark>(null)
  /** what follows the hand with every frame: views and mark; React follows ten times a second */
  const follow = (place: Place) => {
    const there = side.live(place.x, place.y)
    const next = { ...seenAt(place, there, true), ...(steady.current ? { steady: steady.current } : {}) }
    mark.current?.at(place)
    fromSide.current?.next((width) => sideView({ ...next, width }))
    fromAstern.current?.next((width) => endView({ ...next, width: Math.min(width, 130) }))
  }
  const { move, nudge, settle } = useRider(side, follow, setHeld)
  const lock = useRef<HTMLDivElement>(null)
  // views keep their height while the rider is dragged, so that nothing under the finger moves
  const hold = (on: boolean) => {
    const box = lock.current
    if (box) box.style.height = on ? `${box.offsetHeight}px` : ''
  }
  const drag = { side, at, disabled: readOnly, onMove: move, onNudge: nudge, onHold: hold, onEnd: settle }

  return (
    <>
      <div className="views" ref={lock}>
        <div className="sideview">
          <DragAlong {...drag}>
            <LiveFigure
              draw={drawSide}
              frames={fromSide}
              name="from the side"
              caption="Drag the rider along the deck."
            />
          </DragAlong>
        </div>
        <div className="endview">
          <LiveFigure draw={drawEnd} frames={fromAstern} name="from astern" />
        </div>
      </div>
      <DeckPlan
        {...drag}
        mark={mark}
        room={side.state.report?.room}
        before={side === now ? undefined : now}
        state={state}
      />
      <LiveNumbers side={side} state={state} present={present} moved={moved} />
      {held && (
        <p>
          <Button className="plain" onPress={() => setHeld(undefined)}>
            Put the rider back
          </Button>
        </p>
      )}
    </>
  )
}

let timed = 0

/** ms between two renderings of numbers and words while the rider is dragged */
const pace = 100

/** Follows at most once a frame, renders ten times a second, and tries the place once it has been left. */
function useRider(side: Side, follow: (place: Place) => void, setHeld: (place: Place | undefined) => void) {
  const units = useApp((s) => s.units)
  const frame = useRef(0)
  const next = useRef<Place>(undefined)
  const later = useRef<ReturnType<typeof setTimeout>>(undefined)
  const render = useRef<ReturnType<typeof setTimeout>>(undefined)
  useEffect(
    () => () => {
      cancelAnimationFrame(frame.current)
      clearTimeout(later.current)
      clearTimeout(render.current)
    },
    [],
  )
  const answer = () => {
    frame.current = 0
    const place = next.current
    if (!place) return
    const start = performance.now()
    follow(place)
    performance.measure('rider answered', { start, end: performance.now() })
    if (++timed % 500 === 0) performance.clearMeasures('rider answered')
    render.current ??= setTimeout(() => {
      render.current = undefined
      if (next.current) setHeld(next.current)
    }, pace)
  }
  const move = (x: number, y: number) => {
    const { hull } = side.input
    next.current = {
      x: Math.min(hull.length - 0.02, Math.max(0.02, x)),
      y: Math.min(hull.beam / 2, Math.max(-hull.beam / 2, y)),
    }
    frame.current ||= requestAnimationFrame(answer)
  }
  /** by so much from where the rider is, or will be once the next frame is drawn */
  const nudge = (dx: number, dy: number, at: Place) => {
    const from = next.current ?? at
    move(from.x + dx, from.y + dy)
  }
  const tryIt = () => {
    const place = next.current
    if (!place) return
    next.current = undefined
    const values = (['rider.position', 'rider.off centre'] as const).flatMap((path, i) => {
      const input = inputAt(side.craft, path, units)
      const value = Math.round((i === 0 ? place.x : place.y) * 100) / 100
      if (!input) return []
      return [[path, value, `${writtenNumber(value, input.kind, input.unit)} ${input.unit}`.trim()] as const]
    })
    app.tryAll(values, 'move the rider')
    setHeld(undefined)
  }
  /** waits a moment after keys, none after a drag */
  const settle = (wait: number) => {
    clearTimeout(later.current)
    if (wait === 0) requestAnimationFrame(tryIt)
    else later.current = setTimeout(tryIt, wait)
  }
  return { move, nudge, settle }
}

function viewOf(side: Side, state: LiveState | undefined, at: Place): ViewInput {
  const { input } = side
  const { hull, rider, openings } = input
  const craft = weightSum(aboardOf(input))
  const mass = craft.mass + rider.mass
  const point = state?.rider ?? [at.x, at.y, hull.depth]
  const centre = [0, 1, 2].map((k) => (craft.mass * craft.centre[k]! + rider.mass * point[k]!) / mass)
  return {
    hull,
    attitude: state?.attitude ?? { h: 0, trim: 0, heel: 0 },
    centre: centre as [number, number, number],
    openings,
    rider: {
      x: at.x,
      y: at.y,
      deck: deckHeight(hull.mesh, at.x, at.y) ?? hull.depth,
      stature: rider.stature,
      stance: rider.stance,
    },
  }
}

function beforeOf(now: Side, present: LiveState): NonNullable<ViewInput['before']> {
  const { x, y } = now.input.rider
  const { hull, centre } = viewOf(now, present, { x, y })
  return { hull, attitude: present.attitude, ...(centre ? { centre } : {}) }
}

/** Dragging over the side view moves the rider along: as far as the pointer, at the scale of the drawing. */
function DragAlong({
  side,
  at,
  disabled,
  onMove,
  onHold,
  onEnd,
  children,
}: DragProps & { children: React.ReactNode }) {
  const from = useRef<{ px: number; x: number; scale: number }>(undefined)
  const down = (e: PointerEvent<HTMLDivElement>) => {
    const svg = e.currentTarget.querySelector('svg')
    if (disabled || !svg || !svg.contains(e.target as Node)) return
    const box = svg.getBoundingClientRect()
    const mm = svg.viewBox.baseVal.width
    // the hull's length stands between the margins
    const scale = (side.input.hull.length / (mm - 2 * viewPad)) * (mm / box.width)
    from.current = { px: e.clientX, x: at.x, scale }
    e.currentTarget.setPointerCapture(e.pointerId)
    onHold(true)
  }
  const go = (e: PointerEvent) => {
    const f = from.current
    if (f) onMove(f.x + (e.clientX - f.px) * f.scale, at.y)
  }
  const up = () => {
    if (!from.current) return
    from.current = undefined
    onHold(false)
    onEnd(0)
  }
  return (
    <div className="dragalong" onPointerDown={down} onPointerMove={go} onPointerUp={up} onPointerCancel={up}>
      {children}
    </div>
  )
}
