/**
 * Stories: up to three faults at once, each from a moment on, weighed by Bayes' rule against the evidence. The usual share of a sign is
 * multiplied by what each fault at work does to it; steps of speed are compared with the roots of the craft under the same faults, averaged
 * over how severe they may be. Two faults at once weigh 0.6 times the product of their own weights (authored judgement).
 */
import type { Atom } from './atoms.ts'
import { noneWeight } from './atoms.ts'
import type { Item, LinesItem, StateItem, StepItem } from './evidence.ts'
import { Measured, measureAt } from './measured.ts'
import { observableAt, observables } from './observables.ts'
import { type Line, type RootTable, severities } from './roots.ts'

export interface Story {
  /** indices of its atoms, rising; empty for "none of these" */
  atoms: readonly number[]
  /** ln of weight times likelihood, then its share of all */
  log: number
  share: number
}

/** weight of each further fault */
const further = 0.6
/** a joint that has opened takes the load off the others: they hardly open too */
const secondOpen = 0.15
/** ln below the best at which a story is dropped */
const depth = 11
/** atoms that may join a story: those that alone do best */
const mostPartners = 200
const widest = { second: 60, third: 40 } as const
/** standard deviation of a step whose cause nobody can reckon, and of what dead engines and open joints add to a step */
const anyStep = 0.5
const brokenStep = 0.12
/** how far a severity stands for those beside it, ln of the speed */
const neighbours = 0.04
/** how often a fault that comes and goes does so between two stretches */
const swung = 0.4
/** the same for engines that race: the end of their curve is better known than the drag of a dead one */
const freeStep = 0.02
/** how often an engine that races is not heard as such, and how near it has to be (ln) */
const unheard = 0.1
/** how often a second speed is heard that is none of the craft's */
const extra = 0.12
const nearLine = 0.3

/** weight of a speed that is said where it was heard beside its prediction */
const saidTwice = 0.3
const rpmAt = observableAt('rpm')

const normal = (x: number, mean: number, sigma: number) =>
  Math.exp(-0.5 * ((x - mean) / sigma) ** 2) / (sigma * Math.sqrt(2 * Math.PI))

/** It is at work in episode `k`. */
const atWork = (a: Atom, k: number) => a.onset <= k && k < a.until

export interface Weighing {
  items: readonly Item[]
  atoms: readonly Atom[]
  roots: RootTable | undefined
  /** engines on one shaft are heard as one line, and either label may be it */
  shared: boolean
  /** weights beforehand of all causes and of none */
  total: number
  /** how many engines run, and the standard deviation of their predicted speed, ln */
  engines: number
  doubt: number
}

/** Likelihoods of items under stories. */
export class Weigher {
  private readonly w: Weighing
  readonly measured: Measured
  private readonly states: readonly StateItem[]
  private readonly steps: readonly StepItem[]
  /** place of each item among those of its kind */
  private readonly places: readonly number[]
  private readonly touches: (readonly number[] | undefined)[] = []
  /** by state item: likelihood where nothing touches it, and where it is none of these */
  private readonly plain: Float64Array
  private readonly unknown: Float64Array
  private readonly weights: Float64Array
  /** by step item: what moves it at all */
  private readonly stepAlone: Float64Array
  private readonly stepsAlone: number

  constructor(w: Weighing) {
    this.w = w
    this.states = w.items.filter((i): i is StateItem => i.kind === 'state')
    this.steps = w.items.filter((i): i is StepItem => i.kind === 'step')
    const count = { state: 0, step: 0, lines: 0 }
    this.places = w.items.map((i) => count[i.kind]++)
    this.measured = new Measured(w)
    this.plain = Float64Array.from(this.states, (i) => {
      const m = measureAt(i.observable)
      return dot(i.likely, (m && this.measured.shares(m, [])) ?? observables[i.observable]!.usual)
    })
    // the speed was heard beside its prediction: that it is off says hardly anything new
    const level = this.steps.some((s) => s.from < 0 && s.byHand < 0.3)
    this.weights = Float64Array.from(this.states, ({ observable }) =>
      level && observable === rpmAt ? saidTwice : observables[observable]!.weight,
    )
    this.unknown = Float64Array.from(this.states, (i, k) => {
      const n = i.likely.length
      return 0.5 * this.plain[k]! + 0.5 * i.likely.reduce((a, b) => a + b / n, 0)
    })
    this.stepAlone = Float64Array.from(this.steps, (s) => {
      const logs = new Float64Array(1)
      this.addStep(s, [], logs)
      return Math.exp(logs[0]!)
    })
    this.stepsAlone = this.stepAlone.reduce((sum, p) => sum + Math.log(p), 0)
  }

  /** Likelihood of state item `k` under atoms; weight of its observable in it already. */
  state(k: number, atoms: readonly number[]): number {
    const item = this.states[k]!
    const weight = this.weights[k]!
    const measure = measureAt(item.observable)
    if (measure) {
      const at = item.at < 0 ? atoms : atoms.filter((a) => atWork(this.w.atoms[a]!, item.at))
      const shares = this.measured.shares(measure, at)
      if (shares) return dot(item.likely, shares) ** weight
    }
    const o = observables[item.observable]!
    let first: Float64Array | undefined
    let more = false
    for (const a of atoms) {
      const t = this.w.atoms[a]!.touches[k]
      if (!t) continue
      if (first) more = true
      else first = t
    }
    let p = this.plain[k]!
    if (first) {
      let sum = 0
      let hit = 0
      for (let s = 0; s < item.likely.length; s++) {
        let q = o.usual[s]!
        if (more) {
          for (const a of atoms) {
            const t = this.w.atoms[a]!.touches[k]
            if (t) q *= t[s]!
          }
        } else q *= first[s]!
        sum += q
        hit += q * item.likely[s]!
      }
      p = hit / sum
    }
    return weight === 1 ? p : p ** weight
  }

  /** Likelihood of step item `k` by itself under atoms. */
  step(k: number, atoms: readonly number[]): number {
    if (!this.moved(atoms)) return this.stepAlone[k]!
    const logs = new Float64Array(severities.length)
    this.addStep(this.steps[k]!, atoms, logs)
    return Math.exp(logMean(logs))
  }

  /** ln of the likelihood of all steps together: a fault is as severe in one of them as in the others. */
  private together(atoms: readonly number[]): number {
    if (!this.moved(atoms)) return this.stepsAlone
    const logs = new Float64Array(severities.length)
    for (const s of this.steps) this.addStep(s, atoms, logs)
    return logMean(logs)
  }

  private moved(atoms: readonly number[]): boolean {
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

  /** Likelihood of lines item `k` under atoms. */
  line(item: LinesItem, atoms: readonly number[]): number {
    const { roots } = this.w
    let open = 0
    let dead = 0
    for (const a of atoms) {
      const atom = this.w.atoms[a]!
      if (!atWork(atom, item.at)) continue
      open = Math.max(open, atom.open)
      dead |= atom.dead
    }
    if (!roots) return 1 - unheard
    const lines = roots.lines({ dead, open })
    let p = 1 - unheard
    // two speeds on a shaft that turns as one: another engine nearby, or a voice taken for one
    if (item.heard.length > Math.max(1, lines.length)) p *= extra
    for (const l of lines)
      if (!l.pushes && item.heard.every((h) => Math.abs(Math.log(h / l.rotation)) > nearLine)) p *= unheard
    return p
  }

  likelihood(atoms: readonly number[]): number {
    return this.terms(atoms).reduce((sum, t) => sum + t, 0)
  }

  /** ln of the likelihood of every item under atoms, in the order of the items; all steps as one behind them. */
  terms(atoms: readonly number[]): Float64Array {
    const n = this.w.items.length
    const out = new Float64Array(n + 1)
    for (let i = 0; i < n; i++) if (this.w.items[i]!.kind !== 'step') out[i] = this.item(i, atoms)
    out[n] = this.together(atoms)
    return out
  }

  /** Likelihood of atoms with one more among them: only the items that one touches are weighed again. */
  grown(terms: Float64Array, sum: number, atoms: readonly number[], more: number): number {
    let log = sum
    for (const i of this.touched(more)) log += this.item(i, atoms) - terms[i]!
    if (this.moved([more])) log += this.together(atoms) - terms[this.w.items.length]!
    return log
  }

  /** Places of the items that an atom may touch. */
  private touched(atom: number): readonly number[] {
    const known = this.touches[atom]
    if (known) return known
    const { dead, open, touches } = this.w.atoms[atom]!
    const found = this.w.items.flatMap((item, i) => {
      const own =
        item.kind === 'state'
          ? this.moves(item, atom, touches[this.places[i]!] !== undefined)
          : item.kind === 'lines' && (dead !== 0 || open !== 0)
      return own ? [i] : []
    })
    this.touches[atom] = found
    return found
  }

  private moves(item: StateItem, atom: number, touches: boolean): boolean {
    const measure = measureAt(item.observable)
    return touches || (measure !== undefined && this.measured.moves(measure, this.w.atoms[atom]!))
  }

  /** Likelihood when it is none of these: half as usual, half anything. */
  none(): number {
    let log = 0
    for (let i = 0; i < this.w.items.length; i++) log += this.item(i, undefined)
    return log
  }

  /** ln of one item's likelihood, by its place among all items; without atoms it is none of these. */
  item(index: number, atoms: readonly number[] | undefined): number {
    const item = this.w.items[index]!
    const k = this.places[index]!
    switch (item.kind) {
      case 'state':
        return atoms ? Math.log(this.state(k, atoms)) : this.weights[k]! * Math.log(this.unknown[k]!)
      case 'lines':
        return Math.log(atoms ? this.line(item, atoms) : 1 - unheard)
      case 'step':
        return Math.log(atoms ? this.step(k, atoms) : unknownStep(item))
    }
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

const unknownStep = (s: StepItem) => 0.5 * normal(s.moved, 0, anyStep) + 0.5 * normal(s.moved, 0, s.sigma)

function dot(a: ArrayLike<number>, b: ArrayLike<number>): number {
  let sum = 0
  for (let i = 0; i < a.length; i++) sum += a[i]! * b[i]!
  return sum
}

/** Every story worth telling, likeliest first; their shares sum to 1. `alone`: causes that stand for nothing being wrong. */
export function tellStories(w: Weighing, alone: ReadonlySet<number>): { stories: Story[]; weigher: Weigher } {
  const weigher = new Weigher(w)
  const { atoms } = w
  const singles = atoms.map((a, i) => ({ atoms: [i], log: a.prior + weigher.likelihood([i]), share: 0 }))
  const none = { atoms: [], log: Math.log(noneWeight / w.total) + weigher.none(), share: 0 }
  const partners = singles
    .filter((s) => !alone.has(atoms[s.atoms[0]!]!.cause))
    .sort((a, b) => b.log - a.log)
    .slice(0, mostPartners)
    .map((s) => s.atoms[0]!)
  const seen = new Set<string>()
  const grow = (from: readonly Story[], most: number): Story[] => {
    const out: Story[] = []
    const lead = [...from].sort((a, b) => b.log - a.log).slice(0, most)
    const best = lead[0]?.log ?? 0
    for (const story of lead) {
      if (story.log < best - depth - 4) break
      const terms = weigher.terms(story.atoms)
      const sum = terms.reduce((a, b) => a + b, 0)
      for (const p of partners) {
        if (story.atoms.some((a) => atoms[a]!.cause === atoms[p]!.cause || alone.has(atoms[a]!.cause)))
          continue
        const set = [...story.atoms, p].sort((a, b) => a - b)
        const key = set.join()
        if (seen.has(key)) continue
        seen.add(key)
        const opens = set.filter((a) => atoms[a]!.open !== 0).length
        const prior = set.reduce(
          (sum, a) => sum + atoms[a]!.prior,
          (set.length - 1) * Math.log(further) + Math.max(0, opens - 1) * Math.log(secondOpen),
        )
        out.push({ atoms: set, log: prior + weigher.grown(terms, sum, set, p), share: 0 })
      }
    }
    return out
  }
  const pairs = grow(
    singles.filter((s) => !alone.has(atoms[s.atoms[0]!]!.cause)),
    widest.second,
  )
  const triples = grow(pairs, widest.third)
  const all = [none, ...singles, ...pairs, ...triples]
  return { stories: shared(all), weigher }
}

/** Shares from logarithms; what is far below the best goes. */
export function shared(all: readonly Story[]): Story[] {
  const best = all.reduce((m, s) => Math.max(m, s.log), Number.NEGATIVE_INFINITY)
  const kept = all.filter((s) => s.log > best - depth)
  const sum = kept.reduce((a, s) => a + Math.exp(s.log - best), 0)
  return kept.map((s) => ({ ...s, share: Math.exp(s.log - best) / sum })).sort((a, b) => b.share - a.share)
}
