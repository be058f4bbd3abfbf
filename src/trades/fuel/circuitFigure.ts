/** The circuit from tank to jets, from the side and to scale: at rest, flat out, bow up, bow down, each with its pressures. */
import { inKpa } from '../../base/answers/amounts.ts'
import { printed, printedAmount, say } from '../../base/answers/sentence.ts'
import type { DisplaySystem } from '../../base/units/format.ts'
import { circle, line, polygon, polyline, rectangle, text } from '../../drawing/marks.ts'
import { ink, okabeIto, paper, quiet } from '../../drawing/palette.ts'
import type { Mark, Sheet } from '../../drawing/sheet.ts'
import { textWidth, wrapText } from '../../drawing/textWidth.ts'
import type { Solved } from '../trade.ts'
import type { FeedState } from './feedAnswer.ts'
import type { FuelAnswer } from './fuelAnswer.ts'
import type { FuelCraft, FuelInputs } from './fuelFromCraft.ts'
import { type FuelState, liquidFrame } from './fuelStates.ts'
import { shareAt, surfaceAt } from './tankReach.ts'

type FuelSolved = Solved<FuelInputs, FuelAnswer | undefined>

/** the leans shown, by name, and what stands over each */
const shown: readonly (readonly [string, string])[] = [
  ['at rest', 'At rest, idling'],
  ['flat out', 'Flat out'],
  ['hump', 'Bow up, over the hump'],
  ['bow down', 'Bow down 5°'],
]

type XZ = readonly [number, number]

/** Four leans on one sheet, mm wide; two in a row where there is room. */
export function circuitFigure(
  now: FuelSolved,
  tried: FuelSolved | undefined,
  width: number,
  system: DisplaySystem,
): Sheet {
  const { inputs, answer } = tried ?? now
  const title = 'From the tank to the jets'
  if (!inputs.known || !answer || answer.feed.states.length === 0) {
    const says = inputs.known
      ? 'No line leads to a carburettor: there is nothing to draw.'
      : 'With a fuel section in the file the circuit is drawn here, to scale.'
    const rows = wrapText(says, 3.2, width - 8)
    return {
      width,
      height: 8 + 5 * rows.length,
      title,
      says,
      marks: rows.map((row, i) => text(4, 4 + 5 * (rows.length - 1 - i), row, { size: 3.2, colour: quiet })),
    }
  }
  const c = inputs.known
  const panels = shown.flatMap(([name, head]) => {
    const at = answer.feed.states.find((s) => s.state.name === name)
    return at ? [{ head, at }] : []
  })
  const across = width >= 150 ? 2 : 1
  const cell = width / across
  const boxes = panels.map((p) => boundsOf(panelPoints(c, answer, p.at.state)))
  const wide = Math.max(...boxes.map((b) => b.x1 - b.x0))
  const tall = Math.max(...boxes.map((b) => b.z1 - b.z0))
  const scale = Math.min((cell - 26) / wide, 260 / tall)
  const foot = 12
  const panelTall = tall * scale + foot + 12
  const rows = Math.ceil(panels.length / across)
  const key = wrapText(keyOf(c), 2.8, width - 8)
  const height = rows * panelTall + 4.4 * key.length + 4
  const marks: Mark[] = []
  for (const [i, p] of panels.entries()) {
    const left = (i % across) * cell
    const bottom = height - (Math.floor(i / across) + 1) * panelTall
    const box = boxes[i]!
    const x0 = left + (cell - (box.x1 - box.x0) * scale) / 2 - box.x0 * scale
    const z0 = bottom + foot - box.z0 * scale
    marks.push(text(left + 4, bottom + panelTall - 5, p.head, { size: 3.2, bold: true }))
    marks.push(...panel(c, answer, p.at, (v) => [x0 + v[0] * scale, z0 + v[1] * scale], system, left, cell))
  }
  key.forEach((row, i) => {
    marks.push(text(4, 3 + 4.4 * (key.length - 1 - i), row, { size: 2.8, colour: quiet }))
  })
  return { width, height, title, says: printed(saysOf(panels, answer), system), marks }
}

const keyOf = (c: FuelCraft): string =>
  `Pressures over the air’s, the tank filled as in the file (${c.tank.name}), at twice the mean flow. Dotted: the vent’s hose; a square: the filter; a red ring: fuel at the vent.`

function saysOf(panels: readonly { head: string; at: FeedState }[], answer: FuelAnswer) {
  return panels.reduce(
    (all, { head, at }) =>
      answer.feed.circuit.nodes.reduce(
        (sum, n, i) => (n.engine === undefined ? sum : say`${sum} ${n.name} ${inKpa(at.pressure[i]!, 0.1)};`),
        say`${all}${all === '' ? '' : ' '}${head}:`,
      ),
    say``,
  )
}

/** A place turned as the craft lies, m: forward and up. */
const turned = (state: FuelState, x: number, z: number): XZ => [
  x * Math.cos(state.trim) - z * Math.sin(state.trim),
  x * Math.sin(state.trim) + z * Math.cos(state.trim),
]

/** The tank's outline from the side, m in the craft's axes. */
function tankOutline({ tank }: FuelCraft): XZ[] {
  const { shape, foot } = tank
  if (shape.kind === 'lying cylinder' && shape.lies === 'across') {
    const r = shape.diameter / 2
    return Array.from({ length: 48 }, (_, i): XZ => {
      const a = (2 * Math.PI * i) / 48
      return [foot[0] + r * Math.cos(a), foot[2] + r + r * Math.sin(a)]
    })
  }
  const half = (shape.kind === 'standing cylinder' ? shape.diameter : shape.length) / 2
  const high = shape.kind === 'lying cylinder' ? shape.diameter : shape.height
  const [x, , z] = foot
  return [
    [x - half, z],
    [x + half, z],
    [x + half, z + high],
    [x - half, z + high],
  ]
}

/** What of an outline lies on the low side of a x + b z = level. */
function below(outline: readonly XZ[], a: number, b: number, level: number): XZ[] {
  const over = ([x, z]: XZ) => a * x + b * z - level
  return outline.flatMap((p, i): XZ[] => {
    const q = outline[(i + 1) % outline.length]!
    const [dp, dq] = [over(p), over(q)]
    const out: XZ[] = dp <= 0 ? [p] : []
    if (dp <= 0 !== dq <= 0) {
      const t = dp / (dp - dq)
      out.push([p[0] + t * (q[0] - p[0]), p[1] + t * (q[1] - p[1])])
    }
    return out
  })
}

/** The vent's fitting and its outer end, from the side. */
function ventPlaces(c: FuelCraft, answer: FuelAnswer): { fitting: XZ; end?: XZ } {
  const { foot } = c.tank
  const { fitting } = answer.tank
  return {
    fitting: [foot[0] + fitting[0], foot[2] + fitting[2]],
    ...(c.ventEnd ? { end: [c.ventEnd.at[0], c.ventEnd.at[2]] as XZ } : {}),
  }
}

function panelPoints(c: FuelCraft, answer: FuelAnswer, state: FuelState): XZ[] {
  const vent = ventPlaces(c, answer)
  return [
    ...tankOutline(c),
    ...answer.feed.circuit.nodes.map((n): XZ => [n.at[0], n.at[2]]),
    vent.fitting,
    ...(vent.end ? [vent.end] : []),
  ].map(([x, z]) => turned(state, x, z))
}

function boundsOf(points: readonly XZ[]) {
  return {
    x0: Math.min(...points.map((p) => p[0])),
    x1: Math.max(...points.map((p) => p[0])),
    z0: Math.min(...points.map((p) => p[1])),
    z1: Math.max(...points.map((p) => p[1])),
  }
}

function panel(
  c: FuelCraft,
  answer: FuelAnswer,
  at: FeedState,
  place: (v: XZ) => XZ,
  system: DisplaySystem,
  left: number,
  cell: number,
): Mark[] {
  const { state } = at
  const put = ([x, z]: XZ): XZ => place(turned(state, x, z))
  const flat = (points: readonly XZ[]) => points.flatMap((p) => [...put(p)])
  const { body } = answer.tank
  const { foot } = c.tank
  const { frame } = liquidFrame(state)
  const level = surfaceAt(body, Math.min(c.filled.value, body.capacity), state)
  const outline = tankOutline(c)
  const wet = below(outline, frame.nx, frame.nz, level + frame.nx * foot[0] + frame.nz * foot[2])
  const marks: Mark[] = []
  if (wet.length > 2) marks.push(polygon(flat(wet), { fill: okabeIto.orange, opacity: 0.35 }, 'fill', 'fuel'))
  marks.push(polygon(flat(outline), { stroke: ink, width: 0.5 }, 'data', 'tank'))
  const { nodes, hoses } = answer.feed.circuit
  for (const h of hoses) {
    const [a, b] = [nodes[h.from]!.at, nodes[h.to]!.at]
    marks.push(
      polyline(
        flat([
          [a[0], a[2]],
          [b[0], b[2]],
        ]),
        { stroke: okabeIto.blue, width: 0.6 },
        'data',
        'hose',
      ),
    )
    // the filter: a small square in the middle of the hose that it sits in
    if (h.linear !== undefined) {
      const [x, z] = put([(a[0] + b[0]) / 2, (a[2] + b[2]) / 2])
      marks.push(
        rectangle(x - 1.2, z - 1.2, 2.4, 2.4, { stroke: okabeIto.blue, fill: paper, width: 0.4 }, 'data'),
      )
    }
  }
  const vent = ventPlaces(c, answer)
  const [fx, fz] = put(vent.fitting)
  if (vent.end) {
    const [ex, ez] = put(vent.end)
    marks.push(line(fx, fz, ex, ez, { stroke: quiet, width: 0.35, dash: [0.8, 0.8] }, 'data'))
  }
  const met = c.filled.value > shareAt(body, answer.tank.fitting, state) * body.capacity
  marks.push(
    circle(fx, fz, 1.2, { stroke: met ? okabeIto.vermillion : quiet, width: met ? 0.7 : 0.35 }, 'data'),
  )
  marks.push(...labels(answer, at, put, system, left, cell))
  return marks
}

/** The pressure at each node, above it or below, where no other label lies yet. */
function labels(
  answer: FuelAnswer,
  at: FeedState,
  put: (v: XZ) => XZ,
  system: DisplaySystem,
  left: number,
  cell: number,
): Mark[] {
  const size = 2.7
  const marks: Mark[] = []
  const taken: { x0: number; x1: number; y: number }[] = []
  for (const [i, n] of answer.feed.circuit.nodes.entries()) {
    const [x, z] = put([n.at[0], n.at[2]])
    const carburettor = n.engine !== undefined
    marks.push(circle(x, z, carburettor ? 1.1 : 0.7, { stroke: okabeIto.blue, fill: okabeIto.blue }, 'data'))
    if (n.name === 'top of the tank') continue
    const words = `${n.name} ${printedAmount(inKpa(at.pressure[i]!, 0.1), system)}`
    const w = textWidth(words, size, carburettor)
    const x0 = Math.min(Math.max(x - w / 2, left + 2), left + cell - w - 2)
    const free = (y: number) =>
      taken.every((t) => x0 > t.x1 + 1 || x0 + w < t.x0 - 1 || Math.abs(t.y - y) > size + 0.8)
    const rows = [z - 4.6, z + 2.6, z - 8.2, z + 6.2]
    const y = rows.find(free) ?? z - 11.8
    taken.push({ x0, x1: x0 + w, y })
    marks.push(text(x0, y, words, { size, colour: carburettor ? ink : quiet, bold: carburettor, halo: true }))
  }
  return marks
}
