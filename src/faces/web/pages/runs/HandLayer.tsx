import { useEffect, useRef, useState } from 'react'
import { inRpm } from '../../../../base/answers/amounts.ts'
import { clockText } from '../../../../base/answers/clockText.ts'
import { printed, say } from '../../../../base/answers/sentence.ts'
import { alongAxis, partAlong, valueAlong } from '../../../../drawing/axes.ts'
import type { Plot, Sheet } from '../../../../drawing/sheet.ts'
import { dragMeans, type HandMark } from '../../../../trades/sound/byHand.ts'
import type { Hearing, Track } from '../../../../trades/sound/hearingTypes.ts'
import type { LockedPoint } from '../../../../trades/sound/listener.ts'
import { engineColour } from '../../../../trades/sound/soundFigures.ts'
import { player } from './player.ts'

interface Props {
  sheet: Sheet
  hearing: Hearing | undefined
  locks: readonly LockedPoint[]
  marks: readonly HandMark[]
  onLocks: (locks: readonly LockedPoint[]) => void
  /** the stretch around a moment is to be moved an octave */
  onOctave: (kind: 'twice' | 'half', label: 'A' | 'B', time: number) => void
  onSeek: (time: number) => void
}

/** mm on the sheet within which a line is taken hold of */
const REACH = 4
/** px a pointer moves before it drags */
const TAP = 4

/** Over the picture: the cursor, and the points of the tracks laid by hand. */
export function HandLayer({ sheet, hearing, locks, marks, onLocks, onOctave, onSeek }: Props) {
  const plot = sheet.plots![0]!
  const svg = useRef<SVGSVGElement>(null)
  const [held, setHeld] = useState<number>()
  /** speed of the line where a new point was taken off it, rev/min; 0 for a point that was there before */
  const [was, setWas] = useState(0)
  /** where the pointer went down, px, until it moves: a tap jumps there and lays no point */
  const tap = useRef<{ x: number; y: number; time: number; label: 'A' | 'B' | undefined }>(undefined)
  const x = alongAxis(plot.x, plot.left, plot.right)
  const y = (rpm: number) => sheet.height - alongAxis(plot.y, plot.bottom, plot.top)(rpm)
  const place = (at: OnScreen) => placeOf(at, svg.current!, sheet, plot)
  const pointAt = (p: Place) => locks.findIndex((l) => Math.hypot(x(l.time) - p.x, y(l.rpm) - p.y) < REACH)
  const lineAt = (p: Place) => hearing && nearest(hearing, p.time, p.y, y)
  const canHold = useRef<(at: OnScreen) => boolean>(() => false)
  canHold.current = (at) => {
    const p = place(at)
    return !p.outside && (pointAt(p) >= 0 || lineAt(p) !== undefined)
  }
  // a finger that takes hold of a line must not scroll the page instead; beside the lines it scrolls
  useEffect(() => {
    const layer = svg.current!
    const start = (e: TouchEvent) => {
      if (e.cancelable && e.touches.length === 1 && canHold.current(e.touches[0]!)) e.preventDefault()
    }
    layer.addEventListener('touchstart', start, { passive: false })
    return () => layer.removeEventListener('touchstart', start)
  }, [])

  const down = (e: React.PointerEvent) => {
    if (!hearing || e.button !== 0) return
    const p = place(e)
    if (p.outside) return
    const taken = pointAt(p)
    const line = taken < 0 ? lineAt(p) : undefined
    if (taken >= 0 || line) {
      e.preventDefault()
      svg.current!.setPointerCapture(e.pointerId)
    }
    setWas(taken >= 0 ? 0 : p.rpm)
    if (taken >= 0) return setHeld(taken)
    tap.current = { x: e.clientX, y: e.clientY, time: p.time, label: line?.label }
  }
  const move = (e: React.PointerEvent) => {
    const from = tap.current
    if (from) {
      if (Math.hypot(e.clientX - from.x, e.clientY - from.y) < TAP) return
      tap.current = undefined
      if (!from.label) return
      const p = place(e)
      setHeld(locks.length)
      return onLocks([...locks, { label: from.label, time: p.time, rpm: Math.round(p.rpm) }])
    }
    if (held === undefined) return
    const p = place(e)
    onLocks(locks.map((l, i) => (i === held ? { ...l, time: p.time, rpm: Math.round(p.rpm) } : l)))
  }
  const cancel = () => {
    tap.current = undefined
    setHeld(undefined)
  }
  const up = () => {
    if (tap.current) onSeek(tap.current.time)
    const point = held === undefined ? undefined : locks[held]
    cancel()
    if (!point) return
    const means = dragMeans(was, point.rpm)
    if (means === 'point') return
    onLocks(locks.filter((l) => l !== point))
    onOctave(means, point.label, point.time)
  }
  const drag = held === undefined || !locks[held] ? 'point' : dragMeans(was, locks[held].rpm)

  return (
    <svg
      ref={svg}
      className="handlayer"
      viewBox={`0 0 ${sheet.width} ${sheet.height}`}
      onPointerDown={down}
      onPointerMove={move}
      onPointerUp={up}
      onPointerCancel={cancel}
      data-holding={held !== undefined || undefined}
    >
      <title>Points laid by hand</title>
      <rect
        x={plot.left}
        y={sheet.height - plot.top}
        width={plot.right - plot.left}
        height={plot.top - plot.bottom}
        fill="transparent"
      />
      {marks.map((m) => (
        <MarkBand
          key={`${m.kind}${m.label}${m.from}`}
          mark={m}
          x={x}
          top={sheet.height - plot.top}
          plot={plot}
        />
      ))}
      {drag !== 'point' && held !== undefined && (
        <text className="octave" x={x(locks[held]!.time) + 3} y={y(locks[held]!.rpm) - 3}>
          {drag === 'twice' ? 'twice the speed' : 'half the speed'}
        </text>
      )}
      <Cursor x={x} top={sheet.height - plot.top} bottom={sheet.height} plot={plot} />
      {locks.map(
        (l, i) =>
          l.time >= plot.x.min &&
          l.time <= plot.x.max && (
            <Handle
              // biome-ignore lint/suspicious/noArrayIndexKey: a point keeps its place in the list while it moves
              key={i}
              lock={l}
              cx={x(l.time)}
              cy={y(Math.min(l.rpm, plot.y.max))}
              most={plot.y.max}
              begin={plot.x.min}
              end={plot.x.max}
              onChange={(to) =>
                onLocks(to ? locks.map((o, k) => (k === i ? to : o)) : locks.filter((_, k) => k !== i))
              }
            />
          ),
      )}
    </svg>
  )
}

interface BandProps {
  mark: HandMark
  x: (time: number) => number
  top: number
  plot: Plot
}

const markWords: Record<HandMark['kind'], string> = { voice: 'voice', twice: '× 2', half: '÷ 2' }

/** A stretch judged by hand, as a bar along the top of the picture. */
function MarkBand({ mark, x, top, plot }: BandProps) {
  const from = Math.max(plot.left, x(mark.from))
  const to = Math.min(plot.right, x(mark.to))
  if (to <= from) return null
  const dy = mark.label === 'B' ? 2.4 : 0
  return (
    <g className="markband">
      <rect x={from} y={top + 0.4 + dy} width={to - from} height={1.6} fill={engineColour[mark.label]} />
      <text x={from} y={top + 6.4 + dy}>
        {markWords[mark.kind]}
      </text>
    </g>
  )
}

interface CursorProps {
  x: (time: number) => number
  top: number
  bottom: number
  plot: Plot
}

function Cursor({ x, top, bottom, plot }: CursorProps) {
  const { time } = player.use()
  const at = x(Math.min(plot.x.max, Math.max(plot.x.min, time)))
  return <line className="cursor" x1={at} x2={at} y1={top} y2={bottom} />
}

interface HandleProps {
  lock: LockedPoint
  cx: number
  cy: number
  most: number
  begin: number
  end: number
  onChange: (lock: LockedPoint | undefined) => void
}

/** One locked point: arrows move it, Shift in larger steps, Delete takes it away. */
function Handle({ lock, cx, cy, most, begin, end, onChange }: HandleProps) {
  const key = (e: React.KeyboardEvent) => {
    const big = e.shiftKey ? 10 : 1
    const rpm = (by: number) => ({ ...lock, rpm: Math.min(most, Math.max(0, lock.rpm + by * big)) })
    const time = (by: number) => ({ ...lock, time: Math.min(end, Math.max(begin, lock.time + by * big)) })
    const to =
      e.key === 'ArrowUp'
        ? rpm(10)
        : e.key === 'ArrowDown'
          ? rpm(-10)
          : e.key === 'ArrowRight'
            ? time(0.1)
            : e.key === 'ArrowLeft'
              ? time(-0.1)
              : undefined
    if (to) onChange(to)
    else if (e.key === 'Delete' || e.key === 'Backspace') onChange(undefined)
    else return
    e.preventDefault()
  }
  return (
    <g
      className="handle"
      role="slider"
      tabIndex={0}
      aria-label={`Engine ${lock.label} at ${clockText(lock.time)}`}
      aria-valuemin={0}
      aria-valuemax={Math.round(most)}
      aria-valuenow={lock.rpm}
      aria-valuetext={printed(say`${inRpm(lock.rpm / 60, 1)} at ${clockText(lock.time)}`)}
      onKeyDown={key}
    >
      <circle cx={cx} cy={cy} r={3.4} fill="transparent" />
      <rect
        x={cx - 1.5}
        y={cy - 1.5}
        width={3}
        height={3}
        fill={engineColour[lock.label]}
        stroke="#ffffff"
        strokeWidth={0.5}
      />
    </g>
  )
}

/** px, as pointers and fingers give it */
interface OnScreen {
  clientX: number
  clientY: number
}

type Place = ReturnType<typeof placeOf>

function placeOf(e: OnScreen, svg: SVGSVGElement, sheet: Sheet, plot: Plot) {
  const box = svg.getBoundingClientRect()
  const x = ((e.clientX - box.left) / box.width) * sheet.width
  const y = ((e.clientY - box.top) / box.height) * sheet.height
  const across = (x - plot.left) / (plot.right - plot.left)
  const up = (sheet.height - y - plot.bottom) / (plot.top - plot.bottom)
  const within = (v: number) => Math.min(1, Math.max(0, v))
  return {
    x,
    y,
    time: Math.round(valueAlong(plot.x, within(across)) * 50) / 50,
    rpm: valueAlong(plot.y, within(up)),
    outside: across < 0 || across > 1 || up > 1.02 || partAlong(plot.y, plot.y.min) > 1,
  }
}

/** The track that runs within reach of a place at that moment, the nearer one of two. */
function nearest(h: Hearing, time: number, at: number, y: (rpm: number) => number): Track | undefined {
  const i = Math.min(h.time.length - 1, Math.round(time / h.step))
  const off = (t: Track) => (t.rpm[i]! > 0 ? Math.abs(y(t.rpm[i]!) - at) : Number.POSITIVE_INFINITY)
  const best = [...h.tracks].sort((a, b) => off(a) - off(b))[0]
  return best && off(best) < REACH ? best : undefined
}
