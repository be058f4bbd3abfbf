/**
 * The way of a pipe in space: straight pieces between mitres, as its patterns make them, so that the drawn way and the welded one are the same.
 * Elementary geometry of rigid frames; the frame is carried along without twist, so a line drawn straight along the pipe stays its mark.
 */
import {
  after,
  atHome,
  cross,
  dot,
  minus,
  type Place,
  put,
  shift,
  turnAbout,
  unit,
  type Vec,
} from './placing.ts'

/** One part of a pipe: m along its middle, outside radii (m), its whole bend (rad) and toward which side, rad clockwise from the mark at the flange. */
export interface RouteLeg {
  name: string
  length: number
  startRadius: number
  endRadius: number
  bend: number
  clock: number
}

/** most that one joint turns, rad: 22.5 degrees is the coarse limit of handbooks of pipe drafting (common practice) */
export const mostAtOneJoint = Math.PI / 8

/** Joints that share a bend (rad), none for a straight part. */
export const jointsOf = (bend: number): number => Math.ceil(bend / mostAtOneJoint - 1e-9)

/** A joint of the way: m from its part's beginning, rad. */
export function jointsAlong(leg: Pick<RouteLeg, 'length' | 'bend'>): { at: number; turn: number }[] {
  const n = jointsOf(leg.bend)
  return Array.from({ length: n }, (_, k) => ({ at: ((k + 0.5) * leg.length) / n, turn: leg.bend / n }))
}

/** A point of the way: its place, outside radius there, m along the middle, and the leg it lies on. */
export interface RoutePoint {
  at: Vec
  radius: number
  along: number
  leg: number
}

export interface Route {
  /** corners of the way, first the flange, last the end */
  points: readonly RoutePoint[]
  /** frames at the beginning of each leg, and at the end: z along the pipe, x to the mark */
  frames: readonly Place[]
}

/** The frame of a flange: z from `from` toward `aims`, the mark as near to up as it can be; toward the bow where the pipe stands upright. */
export function flangeFrame(from: Vec, aims: Vec): Place {
  const z = unit(minus(aims, from))
  const up: Vec = Math.abs(z[2]) > 0.999 ? [1, 0, 0] : [0, 0, 1]
  const k = dot(up, z)
  const x = unit([up[0] - k * z[0], up[1] - k * z[1], up[2] - k * z[2]])
  return [...x, ...cross(z, x), ...z, ...from]
}

/** A bend of an angle toward a side, at the frame's own origin. */
const bent = (turn: number, clock: number): Place =>
  turnAbout([0, 0, 0], [-Math.sin(clock), Math.cos(clock), 0], turn)

/** The way of legs from a frame; m, rad. Never fails on finite numbers. */
export function routeOf(start: Place, legs: readonly RouteLeg[]): Route {
  let frame = start
  let along = 0
  const frames: Place[] = []
  const points: RoutePoint[] = []
  const mark = (leg: number, radius: number) =>
    points.push({ at: [frame[9]!, frame[10]!, frame[11]!], radius, along, leg })
  legs.forEach((leg, i) => {
    frames.push(frame)
    mark(i, leg.startRadius)
    let done = 0
    for (const { at, turn } of jointsAlong(leg)) {
      frame = after(frame, shift([0, 0, at - done]))
      along += at - done
      done = at
      mark(i, leg.startRadius + ((leg.endRadius - leg.startRadius) * at) / leg.length)
      frame = after(frame, bent(turn, leg.clock))
    }
    frame = after(frame, shift([0, 0, leg.length - done]))
    along += leg.length - done
    mark(i, leg.endRadius)
  })
  frames.push(frame)
  return { points, frames }
}

/** Where a way ends. */
export const endOf = (route: Route): Vec => put(route.frames.at(-1) ?? atHome, [0, 0, 0])

/** A box along the axes, m. */
export interface RouteBox {
  name: string
  from: Vec
  to: Vec
}

/** The least gap between the outside of a pipe and something, m (negative: they meet), where along it and which leg. */
export interface Gap {
  gap: number
  along: number
  leg: number
}

/** Samples of the way, at most `step` (m) apart. */
export function sampled(route: Route, step = 4e-3): RoutePoint[] {
  const { points } = route
  return points.slice(0, -1).flatMap((a, i) => {
    const b = points[i + 1]!
    const n = Math.max(1, Math.ceil((b.along - a.along) / step))
    return Array.from({ length: n + (i === points.length - 2 ? 1 : 0) }, (_, k): RoutePoint => {
      const s = k / n
      const mix = (p: number, q: number) => p + s * (q - p)
      return {
        at: [mix(a.at[0], b.at[0]), mix(a.at[1], b.at[1]), mix(a.at[2], b.at[2])],
        radius: mix(a.radius, b.radius),
        along: mix(a.along, b.along),
        leg: a.leg,
      }
    })
  })
}

/** Least gap of samples by a distance of a point, m. Undefined without samples. */
export function leastGap(samples: readonly RoutePoint[], distance: (at: Vec) => number): Gap | undefined {
  let best: Gap | undefined
  for (const { at, radius, along, leg } of samples) {
    const gap = distance(at) - radius
    if (!best || gap < best.gap) best = { gap, along, leg }
  }
  return best
}

/** Distance of a point from a box, m; negative inside, by as much as it lies under the nearest face. */
export function fromBox({ from, to }: RouteBox, at: Vec): number {
  let outside = 0
  let inside = Number.NEGATIVE_INFINITY
  for (let k = 0; k < 3; k++) {
    const d = Math.max(from[k]! - at[k]!, at[k]! - to[k]!)
    if (d > 0) outside += d * d
    inside = Math.max(inside, d)
  }
  return outside > 0 ? Math.sqrt(outside) : inside
}

/** Distance of a point from the outside of another pipe's samples, m. */
export function fromPipe(samples: readonly RoutePoint[], at: Vec): number {
  let best = Number.POSITIVE_INFINITY
  for (const s of samples)
    best = Math.min(best, Math.hypot(s.at[0] - at[0], s.at[1] - at[1], s.at[2] - at[2]) - s.radius)
  return best
}
