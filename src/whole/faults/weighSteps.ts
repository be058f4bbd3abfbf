/**
 * Steps of speed weighed against the roots of the craft under the same faults, averaged over how severe they may be: as severe in one step
 * as in the others.
 */
import type { Atom } from './atoms.ts'
import type { StepItem } from './evidence.ts'
import { type Line, severities } from './roots.ts'
import type { Weighing } from './weigher.ts'

/** standard deviation of a step whose cause nobody can reckon, and of what dead engines and open joints add to a step */
export const anyStep = 0.5
const brokenStep = 0.12
/** how far a severity stands for those beside it, ln of the speed */
const neighbours = 0.04
/** how often a fault that comes and goes does so between two stretches */
const swung = 0.4
/** the same for engines that race: the end of their curve is better known than the drag of a dead one */
const freeStep = 0.02
export const normal = (x: number, mean: number, sigma: number) =>
  Math.exp(-0.5 * ((x - mean) / sigma) ** 2) / (sigma * Math.sqrt(2 * Math.PI))

/** It is at work in episode `k`. */
export const atWork = (a: Atom, k: number) => a.onset <= k && k < a.until

/** Likelihoods of the steps of a session under atoms. */
export class Steps {
  private readonly w: Weighing
  readonly steps: readonly StepItem[]
  /** by step: what moves it at all */
  private readonly stepAlone: Float64Array
  private readonly stepsAlone: number

  constructor(w: Weighing) {
    this.w = w
    this.steps = w.items.filter((i): i is StepItem => i.kind === 'step')
    this.stepAlone = Float64Array.from(this.steps, (s) => {
      const logs = new Float64Array(1)
      this.addStep(s, [], logs)
      return Math.exp(logs[0]!)
    })
    this.stepsAlone = this.stepAlone.reduce((sum, p) => sum + Math.log(p), 0)
  }

  /** Likelihood of step `k` by itself under atoms. */
  one(k: number, atoms: readonly number[]): number {
    if (!this.moved(atoms)) return this.stepAlone[k]!
    const logs = new Float64Array(severities.length)
    this.addStep(this.steps[k]!, atoms, logs)
    return Math.exp(logMean(logs))
  }

  /** ln of the likelihood of all steps together: a fault is as severe in one of them as in the others. */
  together(atoms: readonly number[]): number {
    if (!this.moved(atoms)) return this.stepsAlone
    const logs = new Float64Array(severities.length)
    for (const s of this.steps) this.addStep(s, atoms, logs)
    return logMean(logs)
  }

  moved(atoms: readonly number[]): boolean {
    for (const a of atoms) {
      const { dead, open, shift } = this.w.atoms[a]!
      if (dead !== 0 || open !== 0 || shift) return true
    }
    return false
  }

  /** Adds ln of a step's likelihood by severity. */
  private addStep(item: StepItem, atoms: readonly number[], logs: Float64Array): void {
    const broad = normal(item.moved, 0, anyStep)
    const { roots } = this.w
    const place = this.w.shared ? -1 : item.label === 'A' ? 0 : 1
    const by = item.byHand
    let deadBefore = 0
    let deadNow = 0
    let openBefore = 0
    let openNow = 0
    let shifts = false
    let swings = false
    for (const a of atoms) {
      const atom = this.w.atoms[a]!
      const now = atWork(atom, item.at)
      // against the prediction everything counts that is at work by then
      const before = item.from >= 0 && atWork(atom, item.from)
      if (now) {
        deadNow |= atom.dead
        openNow = this.w.shared ? Math.max(openNow, atom.open) : openNow | atom.open
      }
      if (before) {
        deadBefore |= atom.dead
        openBefore = this.w.shared ? Math.max(openBefore, atom.open) : openBefore | atom.open
      }
      if (now !== before && atom.shift) shifts = true
      if (now && before && atom.turns && atom.shift && (place < 0 || atom.engines.includes(place)))
        swings = true
    }
    const broken = deadBefore !== deadNow || openBefore !== openNow
    if (!roots || !(broken || shifts)) {
      const same = normal(item.moved, 0, item.sigma)
      for (let v = 0; v < logs.length; v++) {
        const p = swings ? (1 - swung) * same + swung * this.swing(item, atoms, v) : same
        logs[v]! += Math.log((1 - by) * p + by * broad)
      }
      return
    }
    const here = (l: Line) => place < 0 || l.engines.includes(place)
    const before = roots.lines({ dead: deadBefore, open: openBefore }).filter(here)
    const now = roots.lines({ dead: deadNow, open: openNow }).filter(here)
    const start = before.find((l) => l.pushes) ?? before[0]
    if (!start || now.length === 0) {
      for (let v = 0; v < logs.length; v++) logs[v]! += Math.log(by * broad + 1e-4)
      return
    }
    for (let v = 0; v < logs.length; v++) {
      let sum = 0
      for (const line of now) {
        const sigma = broken ? Math.hypot(item.sigma, line.pushes ? brokenStep : freeStep) : item.sigma
        let moved = Math.log(line.rotation / start.rotation)
        if (line.pushes)
          for (const a of atoms) {
            const atom = this.w.atoms[a]!
            if (!atom.shift || (place >= 0 && !atom.engines.includes(place))) continue
            if (atWork(atom, item.at)) moved += atom.shift[v]!
            if (item.from >= 0 && atWork(atom, item.from)) moved -= atom.shift[v]!
          }
        // a severity stands for its neighbours too
        sum += normal(item.moved, moved, shifts && line.pushes ? Math.hypot(sigma, neighbours) : sigma)
      }
      logs[v]! += Math.log((1 - by) * (sum / now.length) + by * broad)
    }
  }

  /** A step by a fault of severity `v` that has just come or gone. */
  private swing(item: StepItem, atoms: readonly number[], v: number): number {
    let sum = 0
    let count = 0
    for (const a of atoms) {
      const { turns, shift } = this.w.atoms[a]!
      if (!turns || !shift) continue
      const sigma = Math.hypot(item.sigma, neighbours)
      if (item.racing !== 0) sum += normal(item.racing * item.moved, shift[v]!, sigma)
      else sum += normal(Math.abs(item.moved), Math.abs(shift[v]!), sigma) / 2
      count++
    }
    return count > 0 ? sum / count : 0
  }
}

/** ln of the mean of what has these logarithms. */
function logMean(logs: Float64Array): number {
  let top = Number.NEGATIVE_INFINITY
  for (let i = 0; i < logs.length; i++) top = Math.max(top, logs[i]!)
  let sum = 0
  for (let i = 0; i < logs.length; i++) sum += Math.exp(logs[i]! - top)
  return top + Math.log(sum / logs.length)
}
