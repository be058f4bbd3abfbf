/**
 * How likely what was heard, seen and found is under a story: the usual share of a sign is multiplied by what each fault at work does to it;
 * speed, pull and pace come from the model (measured.ts), steps of speed too (weighSteps.ts).
 */
import type { Atom } from './atoms.ts'
import type { Item, LinesItem, StateItem, StepItem } from './evidence.ts'
import { Measured, measureAt } from './measured.ts'
import { observableAt, observables } from './observables.ts'
import type { RootTable } from './roots.ts'
import { anyStep, atWork, normal, Steps } from './weighSteps.ts'

/** how often an engine that races is not heard as such, and how near it has to be (ln) */
const unheard = 0.1
/** how often a second speed is heard that is none of the craft's */
const extra = 0.12
const nearLine = 0.3

/** weight of a speed that is said where it was heard beside its prediction */
const saidTwice = 0.3
const rpmAt = observableAt('rpm')

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
  private readonly steps: Steps
  /** place of each item among those of its kind */
  private readonly places: readonly number[]
  private readonly touches: (readonly number[] | undefined)[] = []
  /** by state item: likelihood where nothing touches it, and where it is none of these */
  private readonly plain: Float64Array
  private readonly unknown: Float64Array
  private readonly weights: Float64Array

  constructor(w: Weighing) {
    this.w = w
    this.states = w.items.filter((i): i is StateItem => i.kind === 'state')
    this.steps = new Steps(w)
    const count = { state: 0, step: 0, lines: 0 }
    this.places = w.items.map((i) => count[i.kind]++)
    this.measured = new Measured(w)
    this.plain = Float64Array.from(this.states, (i) => {
      const m = measureAt(i.observable)
      return dot(i.likely, (m && this.measured.shares(m, [])) ?? observables[i.observable]!.usual)
    })
    // the speed was heard beside its prediction: that it is off says hardly anything new
    const level = this.steps.steps.some((s) => s.from < 0 && s.byHand < 0.3)
    this.weights = Float64Array.from(this.states, ({ observable }) =>
      level && observable === rpmAt ? saidTwice : observables[observable]!.weight,
    )
    this.unknown = Float64Array.from(this.states, (i, k) => {
      const n = i.likely.length
      return 0.5 * this.plain[k]! + 0.5 * i.likely.reduce((a, b) => a + b / n, 0)
    })
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
    out[n] = this.steps.together(atoms)
    return out
  }

  /** Likelihood of atoms with one more among them: only the items that one touches are weighed again. */
  grown(terms: Float64Array, sum: number, atoms: readonly number[], more: number): number {
    let log = sum
    for (const i of this.touched(more)) log += this.item(i, atoms) - terms[i]!
    if (this.steps.moved([more])) log += this.steps.together(atoms) - terms[this.w.items.length]!
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
        return Math.log(atoms ? this.steps.one(k, atoms) : unknownStep(item))
    }
  }
}

const unknownStep = (s: StepItem) => 0.5 * normal(s.moved, 0, anyStep) + 0.5 * normal(s.moved, 0, s.sigma)

function dot(a: ArrayLike<number>, b: ArrayLike<number>): number {
  let sum = 0
  for (let i = 0; i < a.length; i++) sum += a[i]! * b[i]!
  return sum
}
