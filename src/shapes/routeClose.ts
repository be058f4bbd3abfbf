/**
 * What closes a pipe's way on its hole: of all sets of three changes (turn of a bend's plane, its angle, the length of a part) the one that alters
 * least, found by Newton's method on the end's place and checked by laying the changed way again.
 */
import type { Solved } from '../base/answers/solved.ts'
import { minus, type Place, type Vec } from './placing.ts'
import { endOf, type RouteLeg, routeOf } from './route.ts'

export interface RouteChange {
  leg: number
  what: 'clock' | 'bend' | 'length'
  /** rad or m, to be added */
  by: number
}

export interface Closing {
  changes: readonly RouteChange[]
  legs: readonly RouteLeg[]
}

/** What counts as one unit of trouble: a bend's plane and angle in rad, a tube's and a cone's length in m (a cone's is tuned). Judgement. */
const trouble = { clock: 0.2, bend: 0.15, tube: 0.03, cone: 5e-3 } as const
/** an end that is nearer than this is met, m */
const met = 1e-4
const mostBend = (2 * Math.PI) / 3
const leastLength = 0.01

type Free = Pick<RouteChange, 'leg' | 'what'> & { unit: number }

function freedoms(legs: readonly RouteLeg[]): Free[] {
  return legs.flatMap((leg, i): Free[] => [
    { leg: i, what: 'length', unit: leg.startRadius === leg.endRadius ? trouble.tube : trouble.cone },
    ...(leg.bend > 0
      ? [
          { leg: i, what: 'clock' as const, unit: trouble.clock },
          { leg: i, what: 'bend' as const, unit: trouble.bend },
        ]
      : []),
  ])
}

function changed(legs: readonly RouteLeg[], free: readonly Free[], by: readonly number[]): RouteLeg[] {
  const out = legs.map((l) => ({ ...l }))
  free.forEach(({ leg, what, unit }, k) => {
    out[leg]![what] += by[k]! * unit
  })
  return out
}

const det = (a: Vec, b: Vec, c: Vec): number =>
  a[0] * (b[1] * c[2] - b[2] * c[1]) - a[1] * (b[0] * c[2] - b[2] * c[0]) + a[2] * (b[0] * c[1] - b[1] * c[0])

/** Newton on three freedoms; undefined where it leads nowhere or out of what can be made. */
function newton(start: Place, legs: readonly RouteLeg[], free: readonly [Free, Free, Free], to: Vec) {
  const by = [0, 0, 0]
  const miss = (at: readonly number[]): Vec => minus(endOf(routeOf(start, changed(legs, free, at))), to)
  for (let iteration = 1; iteration <= 12; iteration++) {
    const now = miss(by)
    const residual = Math.hypot(...now)
    if (residual < met / 10) return { by, residual, iterations: iteration }
    const h = 1e-5
    const [a, b, c] = free.map((_, k) => {
      const far = minus(miss(by.map((v, j) => (j === k ? v + h : v))), now)
      return far.map((v) => v / h) as unknown as Vec
    }) as [Vec, Vec, Vec]
    const d = det(a, b, c)
    if (!(Math.abs(d) > 1e-12)) return undefined
    const step = [det(now, b, c) / d, det(a, now, c) / d, det(a, b, now) / d]
    const size = Math.hypot(...step)
    if (!Number.isFinite(size)) return undefined
    const short = Math.min(1, 3 / size)
    step.forEach((s, k) => {
      by[k]! -= short * s
    })
    const made = changed(legs, free, by)
    const can = made.every((l, i) => {
      // what is not touched may be as it is
      const was = legs[i]!
      return (
        l.length >= Math.min(leastLength, was.length) && l.bend >= 0 && l.bend <= Math.max(mostBend, was.bend)
      )
    })
    if (!can) return undefined
  }
  return undefined
}

/** Most freedoms that are tried in threes, those of least trouble first: 14 give 364 threes. */
const mostFree = 14

/**
 * The least changes that end a way at a place, m. `converged` is false, and `value` empty of changes, where no three do; `residual` is the miss that is
 * left, m.
 */
export function closeRoute(start: Place, legs: readonly RouteLeg[], to: Vec): Solved<Closing> {
  const missed = Math.hypot(...minus(endOf(routeOf(start, legs)), to))
  let best: { cost: number; by: readonly number[]; free: readonly Free[]; iterations: number } | undefined
  // tubes and bends first; tuned cones only where those do not do it
  const all = freedoms(legs)
  for (const list of [all.filter((f) => f.unit !== trouble.cone), all]) {
    const free = list.slice(0, mostFree)
    for (let i = 0; i < free.length; i++)
      for (let j = i + 1; j < free.length; j++)
        for (let k = j + 1; k < free.length; k++) {
          const three = [free[i]!, free[j]!, free[k]!] as const
          const found = newton(start, legs, three, to)
          if (!found) continue
          const cost = found.by.reduce((sum, v) => sum + v * v, 0)
          if (!best || cost < best.cost)
            best = { cost, by: found.by, free: three, iterations: found.iterations }
        }
    if (best) break
  }
  if (!best) return { value: { changes: [], legs }, converged: missed < met, iterations: 0, residual: missed }
  const { free, by, iterations } = best
  const made = changed(legs, free, by)
  const residual = Math.hypot(...minus(endOf(routeOf(start, made)), to))
  const changes = free.map(({ leg, what, unit }, k) => ({ leg, what, by: by[k]! * unit }))
  return { value: { changes, legs: made }, converged: residual < met, iterations, residual }
}
