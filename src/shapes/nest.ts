/**
 * Pieces laid on sheets and offcuts: largest first, each to the lowest and then leftmost free place of the allowed turns (bottom-left heuristic: B. S. Baker,
 * E. G. Coffman, R. L. Rivest, SIAM J. Comput. 9 (1980) 846), on a grid that errs on the careful side. Small pieces go into the holes of large ones.
 */
import { inCount, inMm } from '../base/answers/amounts.ts'
import type { FlatPiece, FlatPoint } from '../base/answers/madePart.ts'
import { say } from '../base/answers/sentence.ts'
import { CellBoard, type Cells, cellsOf, taken } from './cells.ts'
import { areaOf, lengthOf } from './outlines.ts'
import { netArea } from './plate.ts'
import { extremes, mustLie, ShapeFault } from './shapeFault.ts'

export interface StockSheet {
  id: string
  /** along x and y, m; the rolling direction runs along x */
  width: number
  height: number
  thickness: number
  /** how many there are; those to buy are as many as are needed */
  count: number
  /** of an offcut, m, within width and height */
  outline?: readonly FlatPoint[]
  /** not there yet: opened only when what is there is full */
  toBuy?: boolean
}

export interface NestRules {
  /** width the cut takes, and metal left between two cuts, m */
  kerf: number
  gap: number
  /** from a sheet's edge, m */
  edge: number
}

/** A piece on a sheet: turned by `turn` rad about its own origin, then shifted to x, y. */
export interface LaidOnSheet {
  piece: FlatPiece
  /** which of its copies, from 0 */
  copy: number
  turn: number
  x: number
  y: number
}

export interface FilledSheet {
  stock: StockSheet
  laid: readonly LaidOnSheet[]
  /** net area of the pieces on it over the sheet's own */
  used: number
  /** m */
  cutLength: number
}

export interface Nested {
  sheets: readonly FilledSheet[]
  /** what lies on no sheet, and why */
  left: readonly { piece: FlatPiece; copy: number; fault: ShapeFault }[]
  /** sheets to buy, by stock id */
  buy: Readonly<Record<string, number>>
}

/** cells on the larger side of a sheet at most; a cell is at least a millimetre */
const mostCells = 900
const leastCell = 1e-3

const quarter = Math.PI / 2

/** Where a point of a piece lies on its sheet. */
export const onSheet =
  ({ turn, x, y }: Pick<LaidOnSheet, 'turn' | 'x' | 'y'>) =>
  ([u, v]: FlatPoint): FlatPoint => {
    const [c, s] = [Math.cos(turn), Math.sin(turn)]
    return [x + c * u - s * v, y + s * u + c * v]
  }

/** Turns a piece may take, rad: any quarter, or both ways along the rolling direction where it has one. */
const turnsOf = ({ grain }: FlatPiece): number[] =>
  grain === undefined ? [0, quarter, 2 * quarter, 3 * quarter] : [-grain, Math.PI - grain]

/** Cut length (m), net area (m²) and mass (kg) of one copy of a piece of a density, kg/m³. */
export function pieceNumbers(
  piece: FlatPiece,
  density: number,
): { cutLength: number; area: number; mass: number } {
  const cutLength = piece.lines.reduce(
    (sum, l) => sum + (l.use === 'cut' || l.use === 'hole' ? lengthOf(l.points, l.closed) : 0),
    0,
  )
  const area = netArea(piece)
  return { cutLength, area, mass: area * piece.thickness * density }
}

/** Cut edges and holes of a piece, turned and shifted as it lies. */
export const outlinesOf = (piece: FlatPiece, turn: number, x = 0, y = 0): FlatPoint[][] =>
  piece.lines
    .filter((l) => l.closed && (l.use === 'cut' || l.use === 'hole'))
    .map((l) => l.points.map(onSheet({ turn, x, y })))

interface Open {
  stock: StockSheet
  cell: number
  board: CellBoard
  laid: LaidOnSheet[]
}

function opened(stock: StockSheet, rules: NestRules): Open {
  const cell = Math.max(leastCell, Math.max(stock.width, stock.height) / mostCells)
  const [cols, rows] = [Math.floor(stock.width / cell), Math.floor(stock.height / cell)]
  const reach = (rules.kerf + rules.gap) / 2
  const rim: FlatPoint[] = [
    [0, 0],
    [stock.width, 0],
    [stock.width, stock.height],
    [0, stock.height],
  ]
  // outside the offcut, and as near to an edge as the rules forbid beyond what the pieces keep off by themselves
  const outline = stock.outline ?? rim
  const off = Math.max(0, rules.edge - reach)
  const far = stock.width + stock.height
  const round: FlatPoint[] = [
    [-far, -far],
    [2 * far, -far],
    [2 * far, 2 * far],
    [-far, 2 * far],
  ]
  const grid = taken([round, outline], cell, cols, rows, off)
  return { stock, cell, board: new CellBoard(grid, cols, rows), laid: [] }
}

/** ShapeFault naming stock.k or the rules. */
function check(stock: readonly StockSheet[], rules: NestRules): void {
  mustLie('kerf', rules.kerf, 0, 0.02)
  mustLie('gap', rules.gap, 0, 0.1)
  mustLie('edge', rules.edge, 0, 0.2)
  stock.forEach((s, k) => {
    mustLie(`stock.${k}.width`, s.width, 5e-3, extremes.most)
    mustLie(`stock.${k}.height`, s.height, 5e-3, extremes.most)
    mustLie(`stock.${k}.thickness`, s.thickness, extremes.thinnest, extremes.thickest)
    mustLie(`stock.${k}.count`, s.count, 0, 1000, inCount)
  })
}

const areaOfStock = (s: StockSheet): number => (s.outline ? Math.abs(areaOf(s.outline)) : s.width * s.height)

/** sheets are the same thickness within this, m */
export const sameThickness = 5e-5

/**
 * Lays all copies of all pieces on sheets of their thickness: offcuts and sheets that are there first, the smallest that takes the piece, then
 * those to buy. What goes on none is told with why, and in how many parts it would go. ShapeFault naming stock.k, kerf, gap or edge.
 */
export function nest(pieces: readonly FlatPiece[], stock: readonly StockSheet[], rules: NestRules): Nested {
  check(stock, rules)
  for (const { id, count } of pieces) mustLie(`pieces.${id}.count`, count, 0, 1000, inCount)
  const reach = (rules.kerf + rules.gap) / 2
  const copies = pieces
    .flatMap((piece) =>
      Array.from({ length: Math.max(0, Math.round(piece.count)) }, (_, copy) => ({ piece, copy })),
    )
    .map((c) => ({ ...c, size: sizeOf(c.piece) }))
    .sort((a, b) => b.size.long - a.size.long || b.size.short - a.size.short)
  const waiting = stock
    .flatMap((s) => Array.from({ length: s.toBuy ? 1 : Math.round(s.count) }, () => s))
    .sort((a, b) => Number(a.toBuy ?? false) - Number(b.toBuy ?? false) || areaOfStock(a) - areaOfStock(b))
  const open: Open[] = []
  const left: { piece: FlatPiece; copy: number; fault: ShapeFault }[] = []
  const shapes = new Map<string, Cells>()
  const shapeOf = (piece: FlatPiece, turn: number, cell: number): Cells => {
    const key = `${pieces.indexOf(piece)} ${turn} ${cell}`
    let shape = shapes.get(key)
    if (!shape) shapes.set(key, (shape = cellsOf(outlinesOf(piece, turn), cell, reach)))
    return shape
  }
  // a piece that found no place on a sheet finds none for its other copies either
  const full = new Map<Open, Set<FlatPiece>>()
  const layOn = (sheet: Open, piece: FlatPiece, copy: number): boolean => {
    if (full.get(sheet)?.has(piece)) return false
    let best: { x: number; y: number; turn: number; shape: Cells } | undefined
    for (const turn of turnsOf(piece)) {
      const shape = shapeOf(piece, turn, sheet.cell)
      const at = sheet.board.place(shape, best ? best.y + best.shape.rows : sheet.board.rows)
      const lower =
        at &&
        (!best ||
          at.y + shape.rows < best.y + best.shape.rows ||
          at.x + shape.cols < best.x + best.shape.cols)
      if (at && lower) best = { ...at, turn, shape }
    }
    if (!best) {
      full.set(sheet, (full.get(sheet) ?? new Set()).add(piece))
      return false
    }
    sheet.board.take(best.shape, best.x, best.y)
    sheet.laid.push({
      piece,
      copy,
      turn: best.turn,
      x: best.x * sheet.cell + best.shape.x,
      y: best.y * sheet.cell + best.shape.y,
    })
    return true
  }
  for (const { piece, copy, size } of copies) {
    const fits = (s: StockSheet) => Math.abs(s.thickness - piece.thickness) <= sameThickness
    if (open.some((sheet) => fits(sheet.stock) && layOn(sheet, piece, copy))) continue
    let done = false
    for (let k = 0; k < waiting.length && !done; k++) {
      const s = waiting[k]!
      if (!fits(s) || areaOfStock(s) < size.area) continue
      const fresh = opened(s, rules)
      done = layOn(fresh, piece, copy)
      if (!done) continue
      open.push(fresh)
      if (!s.toBuy) waiting.splice(k, 1)
    }
    if (!done) left.push({ piece, copy, fault: whyNot(piece, size, stock.filter(fits), rules) })
  }
  const buy: Record<string, number> = {}
  for (const { stock: s } of open) if (s.toBuy) buy[s.id] = (buy[s.id] ?? 0) + 1
  return { sheets: open.map(filled), left, buy }
}

function filled({ stock, laid }: Open): FilledSheet {
  const sum = laid.reduce(
    (all, { piece }) => {
      const { area, cutLength } = pieceNumbers(piece, 1)
      return { area: all.area + area, cutLength: all.cutLength + cutLength }
    },
    { area: 0, cutLength: 0 },
  )
  return { stock, laid, used: sum.area / areaOfStock(stock), cutLength: sum.cutLength }
}

/** Sides of the box round a piece as it was drawn, longer first, and its area; m. */
function sizeOf(piece: FlatPiece): { long: number; short: number; area: number } {
  const points = outlinesOf(piece, 0).flat()
  if (points.length < 3)
    throw new ShapeFault(
      `pieces.${piece.id}`,
      points.length,
      3,
      'The piece has no outline to cut.',
      'Draw it first.',
    )
  let [left, right, low, high] = [Infinity, -Infinity, Infinity, -Infinity]
  for (const [x, y] of points) {
    left = Math.min(left, x)
    right = Math.max(right, x)
    low = Math.min(low, y)
    high = Math.max(high, y)
  }
  const [a, b] = [right - left, high - low]
  mustLie(
    `pieces.${piece.id}`,
    points.flat().every(Number.isFinite) ? Math.max(a, b) : Number.NaN,
    1e-4,
    extremes.most,
  )
  return { long: Math.max(a, b), short: Math.min(a, b), area: netArea(piece) }
}

function whyNot(
  piece: FlatPiece,
  size: { long: number; short: number },
  stock: readonly StockSheet[],
  rules: NestRules,
): ShapeFault {
  const field = `pieces.${piece.id}`
  if (stock.length === 0)
    return new ShapeFault(
      field,
      piece.thickness,
      0,
      say`There is no sheet of ${inMm(piece.thickness, 0.1)} for it.`,
      say`Put a sheet of ${inMm(piece.thickness, 0.1)} into the stock, or one to buy.`,
    )
  const round = 2 * rules.edge
  const long = Math.max(...stock.map((s) => Math.max(s.width, s.height))) - round
  const short = Math.max(...stock.map((s) => Math.min(s.width, s.height))) - round
  if (size.long <= long && size.short <= short)
    return new ShapeFault(
      field,
      size.long,
      long,
      'No sheet has room left for it.',
      say`Add a sheet with ${inMm(size.long)} by ${inMm(size.short)} free, or one to buy.`,
    )
  const parts = Math.max(
    2,
    Math.ceil(size.long / Math.max(long, 1e-3)),
    Math.ceil(size.short / Math.max(short, 1e-3)),
  )
  return new ShapeFault(
    field,
    size.long,
    long,
    say`At ${inMm(size.long)} by ${inMm(size.short)} it is larger than the largest sheet, ${inMm(long)} by ${inMm(short)} inside its edges.`,
    say`Make it in ${String(parts)} parts with a seam more between each, or buy a larger sheet.`,
  )
}
