import { createElement, memo, type ReactElement, useEffect, useId, useMemo, useRef, useState } from 'react'
import { partAlong, valueAlong } from '../../../drawing/axes.ts'
import { type Reading, readAt, readingText } from '../../../drawing/readOut.ts'
import type { Mark, Plot, Sheet } from '../../../drawing/sheet.ts'
import { fontStack, num, shapeOf } from '../../../drawing/svg.ts'
import { textWidth } from '../../../drawing/textWidth.ts'
import { useWidth } from './useWidth.ts'
import '../style/sheet.css'

/** `stroke-width` to `strokeWidth`, as React names SVG attributes */
function named(pairs: readonly [string, string][]): Record<string, string> {
  return Object.fromEntries(
    pairs.map(([n, v]) => [n.replace(/-(\w)/g, (_, c: string) => c.toUpperCase()), v]),
  )
}

function element(mark: Mark, height: number, key: number): ReactElement {
  const { tag, attributes } = shapeOf(mark, height)
  return createElement(tag, { key, ...named(attributes) }, mark.kind === 'text' ? mark.text : undefined)
}

const Marks = memo(function Marks({ sheet }: { sheet: Sheet }) {
  return <>{sheet.marks.map((m, i) => element(m, sheet.height, i))}</>
})

interface Props {
  /** lays the figure out for the width there is, mm; keep its identity stable between renders */
  draw: (width: number) => Sheet
  /** hands over each sheet as it is shown, for saving it */
  onShow?: (sheet: Sheet) => void
  /** where a number on the drawing leads, and what it is about */
  spots?: ((n: number) => SpotLink | undefined) | undefined
}

export interface SpotLink {
  href: string
  says: string
}

/** A drawing on the screen, laid out for the space it has; charts can be read with pointer or keyboard. */
export function SheetSvg({ draw, onShow, spots }: Props) {
  const [ref, width] = useWidth()
  const sheet = useMemo(() => (width > 20 ? draw(width) : undefined), [draw, width])
  useEffect(() => {
    if (sheet) onShow?.(sheet)
  }, [sheet, onShow])
  return (
    <div ref={ref} className="sheet">
      {sheet && <Drawn sheet={sheet} />}
      {sheet?.spots && spots && <Spots sheet={sheet} of={spots} />}
    </div>
  )
}

function Drawn({ sheet }: { sheet: Sheet }) {
  const id = useId()
  const plot = sheet.plots?.[0]
  const [at, setAt] = useState<number>()
  const svg = useRef<SVGSVGElement>(null)
  const follow = (e: React.PointerEvent) => {
    const box = svg.current?.getBoundingClientRect()
    if (!plot || !box || box.width === 0) return
    const x = ((e.clientX - box.left) / box.width) * sheet.width
    const part = (x - plot.left) / (plot.right - plot.left)
    setAt(part < -0.02 || part > 1.02 ? undefined : valueAlong(plot.x, Math.min(1, Math.max(0, part))))
  }
  const readings = plot && at !== undefined ? readAt(plot, at) : []
  return (
    <>
      <svg
        ref={svg}
        role="img"
        aria-labelledby={`${id}t`}
        aria-describedby={`${id}d`}
        viewBox={`0 0 ${num(sheet.width)} ${num(sheet.height)}`}
        fontFamily={fontStack}
        onPointerMove={follow}
        onPointerLeave={() => setAt(undefined)}
      >
        <title id={`${id}t`}>{sheet.title}</title>
        <desc id={`${id}d`}>{sheet.says}</desc>
        <Marks sheet={sheet} />
        {plot && at !== undefined && <CrossHair plot={plot} sheet={sheet} at={at} readings={readings} />}
      </svg>
      {plot && <Reader plot={plot} sheet={sheet} at={at} readings={readings} onMove={setAt} />}
    </>
  )
}

/** The numbers of a drawing as something to press, over their discs. */
function Spots({ sheet, of }: { sheet: Sheet; of: (n: number) => SpotLink | undefined }) {
  return (sheet.spots ?? []).map(({ n, x, y, r }, i) => {
    const link = of(n)
    if (!link) return null
    return (
      <a
        // biome-ignore lint/suspicious/noArrayIndexKey: a number may stand at several places
        key={i}
        className="spot"
        href={link.href}
        title={link.says}
        style={{
          left: `${(100 * x) / sheet.width}%`,
          top: `${100 - (100 * y) / sheet.height}%`,
          width: `${(200 * r) / sheet.width}%`,
        }}
      >
        <span className="hush">
          {n}: {link.says}
        </span>
      </a>
    )
  })
}

const steps = 100

interface ReaderProps {
  plot: Plot
  sheet: Sheet
  at: number | undefined
  readings: readonly Reading[]
  onMove: (at: number | undefined) => void
}

/** The keyboard's way to the cross-hair: a slider that is seen only while it has the focus. */
function Reader({ plot, sheet, at, readings, onMove }: ReaderProps) {
  const here = at ?? plot.x.min
  const says = `${plot.x.label} ${readingText(plot.x, here)}: ${readings.map((r) => r.says).join(', ') || 'no line here'}`
  return (
    <input
      type="range"
      className="sheet-reader"
      aria-label={`Read “${sheet.title}” along ${plot.x.label}`}
      // its ends stand under the ends of the axis
      style={{
        left: `${(100 * plot.left) / sheet.width}%`,
        width: `${(100 * (plot.right - plot.left)) / sheet.width}%`,
      }}
      aria-valuetext={says}
      min={0}
      max={steps}
      step={1}
      value={Math.round(partAlong(plot.x, here) * steps)}
      onChange={(e) => onMove(valueAlong(plot.x, Number(e.target.value) / steps))}
      onFocus={() => onMove(here)}
      onBlur={() => onMove(undefined)}
    />
  )
}

interface CrossHairProps {
  plot: Plot
  sheet: Sheet
  at: number
  readings: readonly Reading[]
}

function CrossHair({ plot, sheet, at, readings }: CrossHairProps) {
  const h = sheet.height
  const part = partAlong(plot.x, at)
  const x = plot.left + part * (plot.right - plot.left)
  const rows = [`${plot.x.label} ${readingText(plot.x, at)}`, ...readings.map((r) => r.says)]
  const size = 2.8
  const wide = Math.max(...rows.map((r) => textWidth(r, size, true))) + 6
  const left = x + wide + 3 < plot.right ? x + 2 : Math.max(0.5, x - wide - 2)
  const tall = rows.length * 4 + 1.6
  const top = h - plot.top + 1
  return (
    <g pointerEvents="none">
      <line x1={x} x2={x} y1={h - plot.top} y2={h - plot.bottom} stroke="#1b1b1b" strokeWidth={0.25} />
      {readings.map((r) => (
        <circle key={r.name} cx={r.x} cy={h - r.y} r={1} fill={r.colour} stroke="#ffffff" strokeWidth={0.3} />
      ))}
      <rect
        x={left}
        y={top}
        width={wide}
        height={tall}
        fill="#ffffff"
        stroke="#5c5c5c"
        strokeWidth={0.2}
        rx={0.8}
      />
      {rows.map((row, i) => (
        <g key={row}>
          {i > 0 && (
            <rect x={left + 1.2} y={top + 2.1 + i * 4} width={2} height={2} fill={readings[i - 1]!.colour} />
          )}
          <text
            x={left + (i > 0 ? 4.2 : 1.2)}
            y={top + 4 + i * 4}
            fontSize={size}
            textLength={textWidth(row, size, i === 0)}
            lengthAdjust="spacingAndGlyphs"
            fontWeight={i > 0 ? 400 : 700}
            fill="#1b1b1b"
          >
            {row}
          </text>
        </g>
      ))}
    </g>
  )
}
