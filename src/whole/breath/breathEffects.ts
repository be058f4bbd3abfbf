/** What a small move of one input does to the curve: the engine simulated again round its power peak. */
import { type Craft, camel, fieldAt, whatIf } from '../../craft/index.ts'
import { simulateCurve } from '../../trades/engine/simulate.ts'
import { speedsToRun } from '../../trades/engine/speeds.ts'
import { peaksOf } from '../../trades/engine/torqueFromSimulation.ts'
import { twoStrokeFromCraft } from '../../trades/engine/twoStrokeFromCraft.ts'

export interface Effect {
  /** craft path */
  path: string
  /** SI: how far the input was moved, upwards */
  step: number
  /** change of most power, W of the whole engine, and of the speed it comes at, rev/min */
  power: number
  rpm: number
}

interface Work {
  progress?: (part: number, says: string) => void
  cancelled?: () => boolean
}

/** m; on coarser cells the small shifts of the peak drown in the grid */
const dx = 0.01
const degree = Math.PI / 180

/** The inputs of one two-stroke that a builder can change, in the order of the gas. */
export function leverPaths(craft: Craft, index: number): string[] {
  const engine = craft.engines[index]
  if (engine?.kind !== 'two-stroke') return []
  const at = `engines.${index}`
  const pipe = engine.exhaust?.pipe ?? []
  const baffle = pipe.findLastIndex((s) => s.to.value < 0.97 * s.from.value)
  const diffuser = pipe.findIndex((s) => s.to.value - s.from.value > 0.035 * s.length.value)
  const parts = [...new Set([0, diffuser, baffle])].filter((i) => i >= 0 && i < pipe.length)
  return [
    ...parts.map((i) => `${at}.exhaust.pipe.${i}.length`),
    ...(engine.exhaust?.stinger ? [`${at}.exhaust.stinger.bore`, `${at}.exhaust.stinger.length`] : []),
    `${at}.ports.exhaust.opens`,
    `${at}.ports.exhaust.width`,
    `${at}.ports.transfers.opens`,
    `${at}.carburettor.bore`,
    `${at}.ignition.advance`,
  ]
}

/** One unit of what a builder would do: a degree, or a twentieth of a length. */
function stepOf(craft: Craft, path: string): { value: number; step: number } | undefined {
  let at: unknown = craft
  for (const key of path.split('.').map(camel)) at = (at as Record<string, unknown> | undefined)?.[key]
  const value = (at as { value?: number } | undefined)?.value
  const field = fieldAt(path)
  if (value === undefined || field?.type !== 'quantity') return undefined
  const step = field.kind === 'angle' ? 1 * degree : 0.05 * value
  return value + step <= field.max ? { value, step } : undefined
}

/**
 * Effect of each path, strongest first by power and speed together. Paths whose move makes no engine, or no peak, are left
 * out. Undefined when called off. RangeError for an engine that cannot be simulated.
 */
export function effectsOf(
  craft: Craft,
  index: number,
  paths: readonly string[],
  work: Work = {},
): Effect[] | undefined {
  const base = twoStrokeFromCraft(craft, index)
  if (!base.spec || base.faults.length > 0) throw new RangeError(`engines.${index} cannot be simulated`)
  const all = speedsToRun(base.spec, base.span, true)
  const off = () => work.cancelled?.() ?? false
  const first = peakNear(craft, index, all, off)
  if (off()) return undefined
  if (!first) return []
  // half steps round the peak, so that its shift is seen
  const half = 0.03 * first.at
  const near = [-2, -1, 0, 1, 2].map((k) => Math.round(first.at + k * half))
  const from = peakNear(craft, index, near, off)
  if (off()) return undefined
  if (!from) return []
  const out: Effect[] = []
  for (const [i, path] of paths.entries()) {
    work.progress?.(i / paths.length, 'What each input does')
    const move = stepOf(craft, path)
    if (!move) continue
    const to = peakNear(whatIf(craft, { [path]: move.value + move.step }), index, near, off)
    if (off()) return undefined
    if (!to) continue
    const power = (to.power - from.power) * base.cylinders
    out.push({ path, step: move.step, power, rpm: to.rpm - from.rpm })
  }
  const size = (e: Effect) => Math.abs(e.power) / (from.power * base.cylinders) + Math.abs(e.rpm) / from.rpm
  return out.sort((a, b) => size(b) - size(a))
}

/** Peak of power, W of one cylinder, with a parabola through the best point and its neighbours; `at` the best point. */
function peakNear(craft: Craft, index: number, rpms: readonly number[], cancelled: () => boolean) {
  const { spec, faults } = twoStrokeFromCraft(craft, index)
  if (!spec || faults.length > 0) return undefined
  const curve = simulateCurve(spec, rpms, { dx, cancelled })
  const peak = peaksOf(curve)?.power
  if (!peak?.point) return undefined
  const i = curve.points.indexOf(peak)
  const side = [curve.points[i - 1], curve.points[i + 1]].map((p) => p?.point)
  const top = { at: peak.rpm, rpm: peak.rpm, power: peak.point.power }
  const [before, after] = side
  if (!before || !after) return top
  const v = topOfParabola([before.rpm, peak.rpm, after.rpm], [before.power, peak.point.power, after.power])
  return v ? { at: peak.rpm, rpm: v.x, power: v.y } : top
}

/** Vertex of the parabola through three points (Lagrange), when it lies between the outer ones. */
function topOfParabola(x: readonly number[], y: readonly number[]): { x: number; y: number } | undefined {
  const [x0, x1, x2] = x as [number, number, number]
  const [y0, y1, y2] = y as [number, number, number]
  const s0 = (y1 - y0) / (x1 - x0)
  const s1 = (y2 - y1) / (x2 - x1)
  const bend = (s1 - s0) / (x2 - x0)
  if (!(bend < 0)) return undefined
  const at = (x0 + x1) / 2 - s0 / (2 * bend)
  if (at < x0 || at > x2) return undefined
  return { x: at, y: y1 + (at - x1) * (s0 + bend * (at - x0)) }
}
