/**
 * Where a craft comes to rest: the nearest minimum of its potential energy (see energy.ts).
 * Method: Newton's steps on the exact second derivatives, shifted until positive definite, shortened until the energy falls
 * (J. Nocedal and S. Wright, Numerical Optimization, 2nd ed. 2006, sections 3.4 and 3.5); a compass search where that stalls.
 */
import type { Solved } from '../../base/answers/solved.ts'
import { type EnergyState, lookAt, makeState } from './energy.ts'
import { type Floater, wholeMass } from './load.ts'

/** The water seen from the craft: n·x = h (m), trim bow up (rad), heel port down (rad). */
export interface Attitude {
  h: number
  trim: number
  heel: number
}

export interface SettleOptions {
  /** false holds the trim or the heel where it starts; both free when left out */
  freeTrim?: boolean
  freeHeel?: boolean
  /** what may be left of the balance, m of lever arm and of draft; 1e-11 when left out */
  tolerance?: number
  maxIterations?: number
  /** stop, unconverged, once heel or trim leaves ± this, rad */
  giveUp?: number
  /** false leaves out the slow search when Newton stalls, for maps of many places */
  compass?: boolean
  /** a balance on a knife's edge is left by a nudge of heel, so that what is found stays; false keeps the edge */
  leaveEdge?: boolean
}

export interface Resting extends Solved<Attitude> {
  /** kg by which the weight exceeds all the lift there is; above 0 it sinks and nothing else holds */
  deficit: number
  /** the last look: energy, derivatives, centres */
  state: EnergyState
}

const largest = { h: 0.03, trim: 0.09, heel: 0.18 }

/** m of draft and lever arm that may be left after a nudge: a hundredth of what a tape tells */
const nudgeLeaves = 1e-5
const mostNudges = 4

/**
 * The rest of a craft that is little else than one whose rest is known: Newton's steps from there, heel held, with no search for where it falls. For small
 * changes of load or hull; not converged where the change was not small, and nothing then holds.
 */
export function nudged(f: Floater, from: Attitude): Solved<Attitude> {
  const state = makeState()
  const at = { ...from }
  let left = Number.POSITIVE_INFINITY
  for (let i = 0; i < mostNudges; i++) {
    lookAt(f, at.h, at.trim, at.heel, state)
    left = residualOf(state, f, true, false)
    if (left <= nudgeLeaves) return { value: at, converged: true, iterations: i, residual: left }
    if (!newtonStep(state, f, true, false)) break
    at.h += step.h
    at.trim = clampTrim(at.trim + step.trim)
  }
  return { value: at, converged: false, iterations: mostNudges, residual: left }
}

/** kg by which the weight exceeds the greatest lift; below 0 is reserve. */
export function sinkDeficit(f: Floater): number {
  return wholeMass(f) - f.mostLift
}

/** The draft offset h at which the craft displaces its weight at a fixed trim and heel. Newton on V(h), kept in a bracket. */
function levelFor(f: Floater, trim: number, heel: number, state: EnergyState, guess?: number): Solved {
  let low = -2 * f.size - 1
  let high = 4 * f.size + 1
  let h = guess ?? 0.05 * f.size
  for (let i = 1; i <= 100; i++) {
    lookAt(f, h, trim, heel, state)
    const over = state.g0
    if (Math.abs(over) <= 1e-13 * Math.max(state.mass, 1e-9))
      return { value: h, converged: true, iterations: i, residual: Math.abs(over) }
    if (over > 0) high = h
    else low = h
    const step = state.h00 > 1e-9 ? h - over / state.h00 : Number.NaN
    // a first step out of the water or to the bottom: feel for the hull by halves
    const next =
      step > low && step < high && Math.abs(step - h) < 0.7 * f.size ? step : nearer(low, high, h, f.size)
    if (next === h || high - low < 1e-15)
      return { value: h, converged: true, iterations: i, residual: Math.abs(over) }
    h = next
  }
  return { value: h, converged: false, iterations: 100, residual: Math.abs(state.g0) }
}

/** The craft held at a trim and heel (rad), sunk to where it displaces its weight, and let go of in nothing: one look, no rest. Its weight must be less than all the lift there is. */
export function heldAt(f: Floater, trim = 0, heel = 0, guess?: number): Solved<EnergyState> {
  const state = makeState()
  const found = levelFor(f, trim, heel, state, guess)
  return { ...found, value: state }
}

function nearer(low: number, high: number, h: number, size: number): number {
  const middle = (low + high) / 2
  return Math.abs(middle - h) > size ? h + Math.sign(middle - h) * 0.3 * size : middle
}

/** Comes to rest from a start. Not converged and `deficit` above 0 when it sinks. Never throws. */
export function settle(f: Floater, start?: Attitude, options: SettleOptions = {}): Resting {
  const deficit = sinkDeficit(f)
  let state = makeState()
  if (!(deficit < 0)) {
    const attitude = { h: Number.NaN, trim: 0, heel: 0 }
    return { value: attitude, converged: false, iterations: 0, residual: Number.NaN, deficit, state }
  }
  let trial = makeState()
  const at: Attitude = start ? { ...start } : { h: levelFor(f, 0, 0, state).value, trim: 0, heel: 0 }
  const tolerance = options.tolerance ?? 1e-11
  const most = options.maxIterations ?? 60
  const giveUp = options.giveUp ?? Infinity
  const free1 = options.freeTrim ?? true
  const free2 = options.freeHeel ?? true
  lookAt(f, at.h, at.trim, at.heel, state)
  let left = residualOf(state, f, free1, free2)
  let done = 0
  for (; done < most && left > tolerance; done++) {
    if (Math.max(Math.abs(at.heel), Math.abs(at.trim)) > giveUp) break
    if (!newtonStep(state, f, free1, free2)) break
    // shorten until the energy falls; near the end, where energies tie, until the imbalance does
    let taken = false
    for (let cut = 1; cut > 1e-6; cut *= 0.5) {
      lookAt(f, at.h + cut * step.h, clampTrim(at.trim + cut * step.trim), at.heel + cut * step.heel, trial)
      const fall = state.g0 * step.h + (free1 ? state.g1 * step.trim : 0) + (free2 ? state.g2 * step.heel : 0)
      const now = residualOf(trial, f, free1, free2)
      if (
        trial.energy <= state.energy + 1e-4 * cut * fall ||
        (now < 0.7 * left && trial.energy <= state.energy + 1e-13 * f.size * state.mass)
      ) {
        taken = true
        left = now
        at.h += cut * step.h
        at.trim = clampTrim(at.trim + cut * step.trim)
        at.heel += cut * step.heel
        const swap = state
        state = trial
        trial = swap
        break
      }
    }
    if (!taken) break
  }
  const within = Math.max(Math.abs(at.heel), Math.abs(at.trim)) <= giveUp
  if (left > Math.max(tolerance, 1e-9) && within && (options.compass ?? true)) {
    done += compass(f, at, trial, free1, free2)
    // the search ends within a hair of the place; Newton takes the last step unless a kink forbids it
    const polished = settle(f, at, { ...options, maxIterations: 30, compass: false, leaveEdge: false })
    if (polished.converged) return { ...polished, iterations: polished.iterations + done }
    lookAt(f, at.h, at.trim, at.heel, state)
    left = residualOf(state, f, free1, free2)
  }
  const converged = left <= Math.max(tolerance, 1e-9)
  if (converged && free2 && (options.leaveEdge ?? true) && !holdsHeel(state, free1)) {
    const again = settle(f, { ...at, heel: at.heel + 0.01 }, { ...options, leaveEdge: false })
    return { ...again, iterations: again.iterations + done }
  }
  return { value: at, converged, iterations: done, residual: left, deficit, state }
}

const clampTrim = (t: number): number => Math.max(-1.55, Math.min(1.55, t))

/** What is left of the balance as a length: draft error and lever arms, m. */
function residualOf(s: EnergyState, f: Floater, free1: boolean, free2: boolean): number {
  const draft = Math.abs(s.g0) / Math.max(s.h00, s.mass / f.size)
  return Math.max(draft, free1 ? Math.abs(s.g1) / s.mass : 0, free2 ? Math.abs(s.g2) / s.mass : 0)
}

const step = { h: 0, trim: 0, heel: 0 }

/** Fills `step` with a downhill Newton step, clamped; false when no downhill step is found. */
function newtonStep(s: EnergyState, f: Floater, free1: boolean, free2: boolean): boolean {
  const d0 = Math.max(s.h00, s.mass / f.size)
  const d1 = s.mass * f.size
  const d2 = 0.1 * d1
  for (let shift = 0; shift < 1e4; shift = shift === 0 ? 1e-4 : 6 * shift) {
    // Cholesky of the free block, the held rows replaced by the unit matrix
    const a00 = s.h00 + shift * d0
    const a11 = free1 ? s.h11 + shift * d1 : 1
    const a22 = free2 ? s.h22 + shift * d2 : 1
    const a01 = free1 ? s.h01 : 0
    const a02 = free2 ? s.h02 : 0
    const a12 = free1 && free2 ? s.h12 : 0
    if (!(a00 > 1e-9 * d0)) continue
    const l00 = Math.sqrt(a00)
    const l10 = a01 / l00
    const l20 = a02 / l00
    const p1 = a11 - l10 * l10
    if (!(p1 > (free1 ? 1e-9 * d1 : 0))) continue
    const l11 = Math.sqrt(p1)
    const l21 = (a12 - l20 * l10) / l11
    const p2 = a22 - l20 * l20 - l21 * l21
    if (!(p2 > (free2 ? 1e-9 * d2 : 0))) continue
    const l22 = Math.sqrt(p2)
    const y0 = -s.g0 / l00
    const y1 = ((free1 ? -s.g1 : 0) - l10 * y0) / l11
    const y2 = ((free2 ? -s.g2 : 0) - l20 * y0 - l21 * y1) / l22
    const heel = y2 / l22
    const trim = (y1 - l21 * heel) / l11
    const h = (y0 - l10 * trim - l20 * heel) / l00
    const shrink = Math.min(
      1,
      largest.h / Math.abs(h),
      largest.trim / Math.abs(trim),
      largest.heel / Math.abs(heel),
    )
    step.h = shrink * h
    step.trim = free1 ? shrink * trim : 0
    step.heel = free2 ? shrink * heel : 0
    return true
  }
  return false
}

/** Fallback: at each trim and heel the right draft by bracketing, then steps along trim and heel that lower the energy, halved to nothing. */
function compass(f: Floater, at: Attitude, s: EnergyState, free1: boolean, free2: boolean): number {
  const energyAt = (trim: number, heel: number): number => {
    at.h = levelFor(f, trim, heel, s, at.h).value
    return s.energy
  }
  let best = energyAt(at.trim, at.heel)
  let h = at.h
  let reach = 0.05
  let looks = 0
  while (reach > 1e-7 && looks < 400) {
    let better = false
    for (const [dt, dp] of [
      [1, 0],
      [-1, 0],
      [0, 1],
      [0, -1],
    ] as const) {
      if ((dt !== 0 && !free1) || (dp !== 0 && !free2)) continue
      looks++
      const e = energyAt(clampTrim(at.trim + reach * dt), at.heel + reach * dp)
      if (e < best) {
        best = e
        h = at.h
        at.trim = clampTrim(at.trim + reach * dt)
        at.heel += reach * dp
        better = true
      }
    }
    if (!better) reach /= 2
  }
  at.h = h
  return looks
}

function holdsHeel(s: EnergyState, free1: boolean): boolean {
  return free1 ? isStable(s) : s.h00 * s.h22 - s.h02 * s.h02 > 0
}

/** True when the last look is at a minimum in all three ways: left alone it stays. */
export function isStable(s: EnergyState): boolean {
  const minor = s.h00 * s.h11 - s.h01 * s.h01
  const whole =
    s.h00 * (s.h11 * s.h22 - s.h12 * s.h12) -
    s.h01 * (s.h01 * s.h22 - s.h12 * s.h02) +
    s.h02 * (s.h01 * s.h12 - s.h11 * s.h02)
  return s.h00 > 0 && minor > 0 && whole > 0
}

/** Settled upright with the heel held, and let go it stays as it is: nothing turns it to a side and it is at a minimum. */
export function staysUpright(up: Resting): boolean {
  return up.converged && Math.abs(up.state.g2) <= 1e-11 * up.state.mass && isStable(up.state)
}

/** Stiffness in heel with draft and trim left to follow, over the weight: metacentric height, m, slack liquids included. */
export function metacentricHeight(s: EnergyState): number {
  const minor = s.h00 * s.h11 - s.h01 * s.h01
  const give =
    minor === 0
      ? 0
      : (s.h02 * (s.h11 * s.h02 - s.h01 * s.h12) + s.h12 * (s.h00 * s.h12 - s.h01 * s.h02)) / minor
  const ct = Math.cos(s.frame.trim)
  return (s.h22 - give) / (s.mass * ct * ct)
}

/** The same in trim, m. */
export function longitudinalMetacentricHeight(s: EnergyState): number {
  return (s.h11 - (s.h00 === 0 ? 0 : (s.h01 * s.h01) / s.h00)) / s.mass
}
