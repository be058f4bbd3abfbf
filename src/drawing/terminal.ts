/** Draw list to letters: Unicode 15.0, Braille Patterns U+2800–U+28FF, two by four dots to a letter. */
import { styleText } from './ansi.ts'
import { contrast, paper } from './palette.ts'
import type { Mark, Sheet } from './sheet.ts'

/** paper a letter cell stands for: a letter of 3 mm text is about this wide, and twice as tall as wide */
export const cellWidth = 1.9
export const cellHeight = 3.8

export interface TerminalLook {
  /** colour the marks with ANSI sequences; plain when left out */
  colour?: boolean
}

const dotBits = [
  [0x01, 0x08],
  [0x02, 0x10],
  [0x04, 0x20],
  [0x40, 0x80],
] as const

/** Width to lay a figure out at, mm, for a terminal of so many columns. */
export const widthFor = (columns: number): number => columns * cellWidth

/** A drawing as rows of letters: lines as dots, text as itself. Draw the figure at `widthFor(columns)` first. */
export function terminalOf(sheet: Sheet, look: TerminalLook = {}): string[] {
  const cols = Math.max(1, Math.round(sheet.width / cellWidth))
  const rows = Math.max(1, Math.round(sheet.height / cellHeight))
  const dots = new Uint8Array(cols * rows)
  const colours: (string | undefined)[] = Array(cols * rows)
  const letters: (string | undefined)[] = Array(cols * rows)
  const dot = (x: number, y: number, colour: string | undefined) => {
    const [px, py] = [Math.floor((x / cellWidth) * 2), Math.floor(((sheet.height - y) / cellHeight) * 4)]
    const [c, r] = [px >> 1, py >> 2]
    if (c < 0 || r < 0 || c >= cols || r >= rows) return
    dots[r * cols + c]! |= dotBits[py & 3]![(px & 1) as 0 | 1]
    if (colour) colours[r * cols + c] = colour
  }
  for (const mark of sheet.marks) if (mark.layer !== 'grid') drawMark(mark, dot)
  for (const mark of sheet.marks)
    if (mark.kind === 'text') write(mark, sheet.height, cols, rows, letters, colours)

  return Array.from({ length: rows }, (_, r) => {
    let row = ''
    for (let c = 0; c < cols; c++) {
      const k = r * cols + c
      const letter = letters[k] ?? (dots[k] ? String.fromCharCode(0x2800 + dots[k]!) : ' ')
      const colour = look.colour && letter !== ' ' ? colours[k] : undefined
      row += colour ? styleText(letter, colour) : letter
    }
    return row.trimEnd()
  })
}

type Dot = (x: number, y: number, colour: string | undefined) => void

function drawMark(mark: Mark, dot: Dot): void {
  if (mark.kind === 'polyline') drawLine(mark.points, mark.style.stroke, mark.style.dash !== undefined, dot)
  else if (mark.kind === 'arc') {
    const n = Math.max(8, Math.ceil((mark.r * Math.abs(mark.to - mark.from)) / 0.4))
    const colour = mark.style.stroke ?? mark.style.fill
    for (let i = 0; i <= n; i++) {
      const a = mark.from + ((mark.to - mark.from) * i) / n
      dot(mark.cx + mark.r * Math.cos(a), mark.cy + mark.r * Math.sin(a), colour)
    }
  } else if (mark.kind === 'polygon') {
    const closed = [...mark.points, mark.points[0] ?? 0, mark.points[1] ?? 0]
    if (mark.layer === 'fill') fill(mark.points, mark.style.fill, 1.9, dot)
    else {
      // tints that hardly differ from paper stay empty: dots have no half tones
      if (mark.style.fill && contrast(mark.style.fill, paper) > 1.3)
        fill(mark.points, mark.style.fill, 0.7, dot)
      drawLine(closed, mark.style.stroke ?? mark.style.fill, false, dot)
    }
  }
}

function drawLine(points: ArrayLike<number>, colour: string | undefined, dashed: boolean, dot: Dot): void {
  let along = 0
  for (let i = 0; i + 3 < points.length; i += 2) {
    const [dx, dy] = [points[i + 2]! - points[i]!, points[i + 3]! - points[i + 1]!]
    const length = Math.hypot(dx, dy)
    const n = Math.max(1, Math.ceil(length / 0.4))
    for (let k = 0; k <= n; k++) {
      if (dashed && (along + (length * k) / n) % 4 > 2) continue
      dot(points[i]! + (dx * k) / n, points[i + 1]! + (dy * k) / n, colour)
    }
    along += length
  }
}

/** Dots at a fixed spacing inside an outline, even-odd. */
function fill(points: ArrayLike<number>, colour: string | undefined, spacing: number, dot: Dot): void {
  let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY]
  for (let i = 1; i < points.length; i += 2) {
    low = Math.min(low, points[i]!)
    high = Math.max(high, points[i]!)
  }
  for (let y = Math.ceil(low / spacing) * spacing; y <= high; y += spacing) {
    const cuts: number[] = []
    for (let i = 0; i < points.length; i += 2) {
      const j = (i + 2) % points.length
      const [ay, by] = [points[i + 1]!, points[j + 1]!]
      if (ay > y !== by > y) cuts.push(points[i]! + ((y - ay) / (by - ay)) * (points[j]! - points[i]!))
    }
    cuts.sort((a, b) => a - b)
    for (let i = 0; i + 1 < cuts.length; i += 2)
      for (let x = Math.ceil(cuts[i]! / spacing) * spacing; x <= cuts[i + 1]!; x += spacing) dot(x, y, colour)
  }
}

function write(
  mark: Extract<Mark, { kind: 'text' }>,
  height: number,
  cols: number,
  rows: number,
  letters: (string | undefined)[],
  colours: (string | undefined)[],
): void {
  const words = [...mark.text]
  const x = Math.round(mark.x / cellWidth)
  const wished =
    mark.anchor === 'start' ? x : mark.anchor === 'end' ? x - words.length : x - Math.floor(words.length / 2)
  const start = Math.max(0, Math.min(wished, cols - words.length))
  const r = Math.min(rows - 1, Math.max(0, Math.floor((height - mark.y - 0.35 * mark.size) / cellHeight)))
  words.forEach((letter, i) => {
    if (start + i >= cols) return
    letters[r * cols + start + i] = letter === '\u202f' ? ' ' : letter
    colours[r * cols + start + i] = mark.style.fill
  })
}
