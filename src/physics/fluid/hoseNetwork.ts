/**
 * Hoses that meet in tees: pressures at the nodes by Newton's method, so that as much flows in as out at each.
 * The flow of a hose rises with the pressure over it, so the Jacobian is a weighted graph Laplacian, symmetric and positive definite
 * once one node's pressure is known: there is one solution, and a halved step finds it. Kirchhoff's laws; derived for this project.
 */
import type { Solved } from '../../base/answers/solved.ts'
import { type FlowRegime, type Hose, hoseDrop, hoseFlow, type Liquid } from './hoseDrop.ts'

export interface NetworkNode {
  name: string
  /** Pa that its height (and what speeds the craft up) is worth: ρ times the potential, from any level */
  potential: number
  /** Pa gauge where it is known, as in an open tank */
  pressure?: number
  /** m³/s drawn out here */
  demand: number
}

export interface NetworkHose extends Hose {
  /** places in the list of nodes */
  from: number
  to: number
  /** Pa that a pump in it adds, the way from `from` to `to` */
  gain?: number
}

export interface NetworkState {
  /** Pa gauge, one a node */
  pressure: number[]
  /** m³/s, one a hose, from `from` to `to` */
  flow: number[]
  regime: FlowRegime[]
}

/** Nodes that no hose joins to one of known pressure. */
function cutOff(nodes: readonly NetworkNode[], hoses: readonly NetworkHose[]): number[] {
  const joined = new Set(nodes.flatMap((n, i) => (n.pressure === undefined ? [] : [i])))
  for (let more = true; more; ) {
    more = false
    for (const { from, to } of hoses)
      if (joined.has(from) !== joined.has(to)) {
        joined.add(from).add(to)
        more = true
      }
  }
  return nodes.flatMap((_, i) => (joined.has(i) ? [] : [i]))
}

/** m³/s; a thousandth of a millilitre an hour is no flow */
const stillFlow = 1e-13

/** Solves the network. RangeError where a node is cut off from every known pressure. `residual` is the worst leak at a node, m³/s. */
export function solveNetwork(
  nodes: readonly NetworkNode[],
  hoses: readonly NetworkHose[],
  liquid: Liquid,
): Solved<NetworkState> {
  const lost = cutOff(nodes, hoses)[0]
  if (lost !== undefined)
    throw new RangeError(`nodes.${lost}: no hose joins ${nodes[lost]!.name} to a node of known pressure`)
  const free = nodes.flatMap((n, i) => (n.pressure === undefined ? [i] : []))
  const place = new Map(free.map((node, k) => [node, k]))
  const known = nodes.find((n) => n.pressure !== undefined) ?? { pressure: 0, potential: 0 }
  // at rest every node has the known pressure and what its height is worth
  const pressure = nodes.map((n) => n.pressure ?? (known.pressure ?? 0) + known.potential - n.potential)
  const flow = new Array<number>(hoses.length).fill(0)
  const slope = new Array<number>(hoses.length).fill(0)
  const biggest = Math.max(stillFlow, ...nodes.map((n) => Math.abs(n.demand)))

  /** flows at the present pressures, and what is left over at each free node */
  const leaks = (): number[] => {
    const left = free.map((i) => -nodes[i]!.demand)
    for (const [k, h] of hoses.entries()) {
      const a = nodes[h.from]!
      const b = nodes[h.to]!
      const over = pressure[h.from]! + a.potential - pressure[h.to]! - b.potential + (h.gain ?? 0)
      const got = hoseFlow(over, h, liquid)
      flow[k] = got.flow
      slope[k] = got.slope
      const from = place.get(h.from)
      const to = place.get(h.to)
      if (from !== undefined) left[from]! -= got.flow
      if (to !== undefined) left[to]! += got.flow
    }
    return left
  }
  const worst = (left: readonly number[]) => left.reduce((m, v) => Math.max(m, Math.abs(v)), 0)

  let left = leaks()
  let residual = worst(left)
  let iterations = 0
  for (; iterations < 60 && residual > 1e-11 * biggest; iterations++) {
    const step = newtonStep(hoses, slope, place, free.length, left)
    if (!step) break
    const before = free.map((i) => pressure[i]!)
    let part = 1
    for (;;) {
      free.forEach((i, k) => {
        pressure[i] = before[k]! + part * step[k]!
      })
      left = leaks()
      const now = worst(left)
      if (now < residual || part < 1e-4) {
        residual = now
        break
      }
      part /= 2
    }
  }
  return {
    value: {
      pressure,
      flow,
      regime: hoses.map((h, k) => hoseDrop(flow[k]!, h, liquid).regime),
    },
    converged: residual <= 1e-9 * biggest,
    iterations,
    residual,
  }
}

/** Pressures to add so that the leaks go to nought, from the slopes of the hoses; undefined where they say nothing. */
function newtonStep(
  hoses: readonly NetworkHose[],
  slope: readonly number[],
  place: ReadonlyMap<number, number>,
  n: number,
  left: readonly number[],
): number[] | undefined {
  const A = Array.from({ length: n }, () => new Array<number>(n).fill(0))
  for (const [k, h] of hoses.entries()) {
    const s = slope[k]!
    const a = place.get(h.from)
    const b = place.get(h.to)
    if (a !== undefined) A[a]![a]! += s
    if (b !== undefined) A[b]![b]! += s
    if (a !== undefined && b !== undefined) {
      A[a]![b]! -= s
      A[b]![a]! -= s
    }
  }
  const x = [...left]
  // elimination without pivots: the matrix is symmetric and positive definite
  for (let i = 0; i < n; i++) {
    const pivot = A[i]![i]!
    if (!(pivot > 0)) return undefined
    for (let r = i + 1; r < n; r++) {
      const f = A[r]![i]! / pivot
      if (f === 0) continue
      for (let c = i; c < n; c++) A[r]![c]! -= f * A[i]![c]!
      x[r]! -= f * x[i]!
    }
  }
  for (let i = n - 1; i >= 0; i--) {
    for (let c = i + 1; c < n; c++) x[i]! -= A[i]![c]! * x[c]!
    x[i]! /= A[i]![i]!
  }
  return x.every(Number.isFinite) ? x : undefined
}
