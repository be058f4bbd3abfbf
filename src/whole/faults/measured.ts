/**
 * Speed, pull and pace as they would be measured under a story, from the model of the craft: the speed from the torque balance, the pull
 * for that speed from what is left of the thrust, the pace for that pull from the drag. One share for each state of the observable, the
 * mean over how severe the faults may be, blurred by how well the craft is known.
 */
import type { Atom } from './atoms.ts'
import { observableAt, observables } from './observables.ts'
import { type RootTable, severities } from './roots.ts'

/** ln of the ratios to what is expected at which one state ends and the next begins */
const edges: Readonly<Record<string, readonly number[]>> = {
  rpm: [0.75, 0.92, 1.06].map(Math.log),
  pull: [0.8, 1.15].map(Math.log),
  pace: [0.86].map(Math.log),
}
/** standard deviations (ln) of pull and pace between a sound craft and its file, with what reading them adds: judgement */
const doubts = { pull: 0.11, pace: 0.1 } as const
/** a severity stands for its neighbours too */
const between = 0.04
/** least share of a state */
const floor = 0.02

export type Measure = 'rpm' | 'pull' | 'pace'
const measures: readonly Measure[] = ['rpm', 'pull', 'pace']
const byPlace = new Map(measures.map((m) => [observableAt(m), m]))

/** The measure that an observable's place stands for. */
export const measureAt = (observable: number): Measure | undefined => byPlace.get(observable)

/** Φ by a table: half a per cent of a standard deviation apart is finer than anything compared here. */
const reach = 5
const fine = 100
const below = (() => {
  const out = new Float64Array(2 * reach * fine + 2)
  let sum = 0
  for (let i = 0; i < out.length; i++) {
    const x = (i - reach * fine) / fine
    out[i] = sum
    sum += Math.exp(-0.5 * (x + 0.5 / fine) ** 2) / (fine * Math.sqrt(2 * Math.PI))
  }
  return out
})()

/** Share of a normal distribution below `x` standard deviations. */
export function shareBelow(x: number): number {
  if (x <= -reach) return 0
  if (x >= reach) return 1
  const at = (x + reach) * fine
  const i = Math.floor(at)
  return below[i]! + (at - i) * (below[i + 1]! - below[i]!)
}

export interface MeasuredSetting {
  atoms: readonly Atom[]
  roots: RootTable | undefined
  /** engines on one shaft are heard as one speed */
  shared: boolean
  /** how many engines run */
  engines: number
  /** standard deviation of the predicted speed, ln */
  doubt: number
}

export class Measured {
  private readonly s: MeasuredSetting
  private readonly sound: ReadonlyMap<Measure, Float64Array>

  constructor(s: MeasuredSetting) {
    this.s = s
    this.sound = new Map(measures.map((m) => [m, this.reckoned(m, []) ?? Float64Array.of()]))
  }

  /** What an atom does to a measure, ln by severity; undefined where the model has no say. */
  moves(measure: Measure, atom: Atom): boolean {
    if (measure === 'rpm') return atom.shift !== undefined || atom.dead !== 0
    return (measure === 'pull' ? atom.thrust : atom.pace) !== undefined
  }

  /** Shares of the states under atoms, summing to 1; undefined where the model cannot tell and signs must do. */
  shares(measure: Measure, atoms: readonly number[]): Float64Array | undefined {
    if (measure === 'rpm' && !this.s.roots) return undefined
    for (const a of atoms) {
      const atom = this.s.atoms[a]!
      if (atom.open !== 0) return undefined
      // one of several jets: whose speed is meant is not said
      if (measure === 'rpm' && !this.s.shared && atom.engines.length < this.s.engines) return undefined
    }
    const moving = atoms.filter((a) => this.moves(measure, this.s.atoms[a]!))
    return moving.length === 0 ? this.sound.get(measure) : this.reckoned(measure, moving)
  }

  private reckoned(measure: Measure, atoms: readonly number[]): Float64Array | undefined {
    const cuts = edges[measure]!
    const n = observables[observableAt(measure)]!.states.length
    const out = new Float64Array(n)
    const base = measure === 'rpm' ? this.deadShift(atoms) : 0
    const sigma = Math.hypot(
      measure === 'rpm' ? this.s.doubt : doubts[measure],
      atoms.length > 0 ? between : 0,
    )
    for (let v = 0; v < severities.length; v++) {
      let moved = base
      for (const a of atoms) {
        const atom = this.s.atoms[a]!
        const by = measure === 'rpm' ? atom.shift : measure === 'pull' ? atom.thrust : atom.pace
        if (by) moved += by[v]!
      }
      let last = 0
      for (let s = 0; s < n; s++) {
        const now = s < cuts.length ? shareBelow((cuts[s]! - moved) / sigma) : 1
        out[s]! += now - last
        last = now
      }
    }
    for (let s = 0; s < n; s++) out[s] = ((1 - floor) * out[s]!) / severities.length + floor / n
    return out
  }

  /** ln of the speed with engines dead over that with all firing. */
  private deadShift(atoms: readonly number[]): number {
    const { roots } = this.s
    const dead = atoms.reduce((d, a) => d | this.s.atoms[a]!.dead, 0)
    if (!roots || dead === 0) return 0
    const of = (d: number) => roots.lines({ dead: d, open: 0 }).find((l) => l.pushes)?.rotation ?? 0
    const [now, whole] = [of(dead), of(0)]
    return now > 0 && whole > 0 ? Math.log(now / whole) : -2
  }
}
