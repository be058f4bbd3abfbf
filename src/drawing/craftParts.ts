/** What stands on board, for the sketch of a craft: machines, tanks with what is in them, openings, the jet. */
import { centreLine } from './dimension.ts'
import { circle, polygon, polyline, rectangle } from './marks.ts'
import { ink, okabeIto } from './palette.ts'
import type { Mark, Style } from './sheet.ts'

export interface SketchPart {
  name: string
  /** middle: forward of the transom, to port, up; m */
  at: readonly [number, number, number]
  /** length, width, height of a box round it, m */
  size: readonly [number, number, number]
  /** true when the size was not given but guessed from the weight: drawn dashed */
  sizeGuessed: boolean
  look: 'engine' | 'tank' | 'box' | 'weight'
}

export interface SketchTank {
  name: string
  /** middle, m */
  at: readonly [number, number, number]
  /** length, width, height, m */
  size: readonly [number, number, number]
  /** the axis of a round one */
  round?: 'along' | 'across' | 'up'
  /** liquid surface: height above the keel at the tank's middle, m, and its rise a metre forward; undefined when empty */
  surface?: { height: number; rise: number }
}

/** Where water can get in: lowest point, m. */
export interface SketchOpening {
  name: string
  at: readonly [number, number, number]
}

export interface SketchJet {
  bore: number
  nozzle: number
  /** nozzle centre above the transom's foot */
  height: number
  intakeFront: number
  intakeLength: number
  intakeWidth: number
  /** impeller, forward of the transom */
  rotorAt: number
}

export const thin: Style = { stroke: ink, width: 0.25 }
export const jetLine: Style = { stroke: okabeIto.blue, width: 0.45 }
const liquid: Style = { fill: '#f3dfb8' }

/** One weight's box. */
export function partFromSide(p: SketchPart, k: number): Mark[] {
  const [x, , z] = [p.at[0] * k, p.at[1] * k, p.at[2] * k]
  const [l, h] = [p.size[0] * k, p.size[2] * k]
  const style: Style = { ...(p.sizeGuessed ? { ...thin, dash: [1.4, 0.7] } : thin), fill: '#ffffff' }
  switch (p.look) {
    case 'weight':
      return []
    case 'engine': {
      // crankcase below, finned cylinder above
      const marks = [rectangle(x - l / 2, z - h / 2, l, h * 0.5, style, 'mark')]
      for (let i = 0; i < 4; i++)
        marks.push(
          rectangle(
            x - l * 0.3,
            z + h * (0.02 + i * 0.12),
            l * 0.6,
            h * 0.07,
            { ...thin, fill: '#ffffff' },
            'mark',
          ),
        )
      return marks
    }
    case 'tank':
      return [
        rectangle(x - l / 2, z - h / 2, l, h, style, 'mark'),
        rectangle(x - l * 0.08, z + h / 2, l * 0.16, h * 0.12, thin, 'mark'),
      ]
    case 'box':
      return [rectangle(x - l / 2, z - h / 2, l, h, style, 'mark')]
  }
}

/** Duct, impeller and nozzle. */
export function jetFromSide(j: SketchJet, k: number): Mark[] {
  const x = (v: number) => v * k
  const back = j.intakeFront - j.intakeLength
  const [r, n] = [j.bore / 2, j.nozzle / 2]
  const roof = [x(j.intakeFront), 0, x(j.rotorAt), x(j.height + r)]
  const floor = [x(back), 0, x(Math.min(back, j.rotorAt)), x(j.height - r)]
  return [
    polyline([x(j.intakeFront), 0, x(back), 0], { stroke: '#ffffff', width: 0.7 }, 'mark'),
    polyline([...roof, x(j.rotorAt * 0.45), x(j.height + r), 0, x(j.height + n)], jetLine, 'mark', 'jet'),
    polyline([...floor, x(j.rotorAt * 0.45), x(j.height - r), 0, x(j.height - n)], jetLine, 'mark', 'jet'),
    rectangle(
      x(j.rotorAt) - 0.12 * x(j.bore),
      x(j.height - r),
      0.24 * x(j.bore),
      x(j.bore),
      { ...jetLine, fill: '#d5e8f5' },
      'mark',
    ),
    centreLine(x(-0.02), x(j.height), x(j.rotorAt + j.bore), x(j.height), 2),
  ]
}

/** Where a weight acts: a small circle with two dark quarters. */
export function weightSign(x: number, y: number): Mark[] {
  const r = 1
  const quarter = (a: number) => {
    const points = [x, y]
    for (let i = 0; i <= 6; i++)
      points.push(x + r * Math.cos(a + (i * Math.PI) / 12), y + r * Math.sin(a + (i * Math.PI) / 12))
    return polygon(points, { fill: ink }, 'mark')
  }
  return [
    circle(x, y, r, { stroke: ink, width: 0.15, fill: '#ffffff' }, 'mark'),
    quarter(0),
    quarter(Math.PI),
  ]
}

/** A tank from the side, with what is in it. */
export function tankFromSide(t: SketchTank, k: number): Mark[] {
  const shape =
    t.round === 'across' ? ring(t.at[0], t.at[2], t.size[2] / 2) : box(t.at[0], t.at[2], t.size[0], t.size[2])
  const { surface } = t
  const under = surface ? clippedBelow(shape, (x) => surface.height + surface.rise * (x - t.at[0])) : []
  const neck = t.size[0] * 0.16
  return [
    ...filledTank(shape, under, k),
    rectangle(
      (t.at[0] - neck / 2) * k,
      (t.at[2] + t.size[2] / 2) * k,
      neck * k,
      t.size[2] * 0.12 * k,
      thin,
      'mark',
    ),
  ]
}

/** The same from astern, port to the left. */
export function tankFromAstern(t: SketchTank, k: number): Mark[] {
  const shape =
    t.round === 'along'
      ? ring(-t.at[1], t.at[2], t.size[2] / 2)
      : box(-t.at[1], t.at[2], t.size[1], t.size[2])
  const { surface } = t
  return filledTank(shape, surface ? clippedBelow(shape, () => surface.height) : [], k)
}

/** The same from above. */
export function tankFromAbove(t: SketchTank, k: number): Mark {
  const shape =
    t.round === 'up' ? ring(t.at[0], t.at[1], t.size[0] / 2) : box(t.at[0], t.at[1], t.size[0], t.size[1])
  return polygon(
    shape.map((v) => v * k),
    { ...thin, fill: '#ffffff' },
    'mark',
    t.name,
  )
}

function filledTank(shape: number[], under: number[], k: number): Mark[] {
  const drawn = (points: number[]) => points.map((v) => v * k)
  return [
    polygon(drawn(shape), { fill: '#ffffff' }, 'mark'),
    ...(under.length > 4 ? [polygon(drawn(under), liquid, 'mark')] : []),
    polygon(drawn(shape), thin, 'mark', 'tank'),
  ]
}

/** A place where water can get in. */
export function openingSign(x: number, y: number): Mark {
  return circle(x, y, 0.8, { stroke: okabeIto.vermillion, width: 0.35, fill: '#ffffff' }, 'mark')
}

const box = (x: number, z: number, l: number, h: number): number[] => [
  ...[x - l / 2, z - h / 2, x + l / 2, z - h / 2],
  ...[x + l / 2, z + h / 2, x - l / 2, z + h / 2],
]

const ring = (x: number, z: number, r: number): number[] =>
  Array.from({ length: 36 }, (_, i) => (2 * Math.PI * i) / 36).flatMap((a) => [
    x + r * Math.cos(a),
    z + r * Math.sin(a),
  ])

/** The part of a ring of points at or below a line over x. Method: I. Sutherland and G. Hodgman, "Reentrant polygon clipping", 1974, one edge. */
export function clippedBelow(points: readonly number[], line: (x: number) => number): number[] {
  const out: number[] = []
  const n = points.length / 2
  for (let i = 0; i < n; i++) {
    const [x, z] = [points[2 * i]!, points[2 * i + 1]!]
    const [nx, nz] = [points[(2 * i + 2) % points.length]!, points[(2 * i + 3) % points.length]!]
    const here = z - line(x)
    const there = nz - line(nx)
    if (here <= 0) out.push(x, z)
    if (here < 0 !== there < 0 && here !== there) {
      const along = here / (here - there)
      if (along > 0 && along < 1) out.push(x + along * (nx - x), z + along * (nz - z))
    }
  }
  return out
}
