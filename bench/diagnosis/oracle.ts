/**
 * The best that can be made of a simulated session: whoever knows how the sessions are made. Thousands of days are drawn as the sessions are;
 * each weighs by how near its speeds and events come to those of the day in question and, exactly, by the chance that its parts show what
 * was noticed and found. The next check is the one that leaves least open. Nothing of the ranking is used.
 */
import { type Check, checksFor } from '../../src/whole/faults/nextChecks.ts'
import { observables } from '../../src/whole/faults/observables.ts'
import { type Drawn, drawSession, type Simulated } from './sessions.ts'
import { shareOf } from './signsOf.ts'
import type { Bench } from './trueCraft.ts'

interface Day {
  drawn: Drawn
  first: number
  last: number
  lines: number
  parts: number
  kinds: ReadonlySet<string>
  log: string
  causes: string
}

/** seeds of the days drawn, far from those of any session */
const far = 5_000_000
/** days looked at in choosing a check */
const lookedAt = 250
/** how near speeds have to be (ln), and what each difference in events, parts or log costs */
const near = { first: 0.02, last: 0.03 } as const
const costs = { kind: 1.1, parts: 1.2, lines: 3, log: 3.5 } as const

function dayOf(drawn: Drawn): Day {
  const sounding = drawn.stretches.filter((s) => s.a > 0)
  const last = sounding.at(-1)
  return {
    drawn,
    first: Math.log(Math.max(1, sounding[1]?.a ?? 1)),
    last: Math.log(Math.max(1, last?.a ?? 1)),
    lines: last?.b ? 2 : 1,
    parts: drawn.stretches.length,
    kinds: new Set(drawn.events.map((e) => e.kind)),
    log: drawn.log.map((l) => l.says).join('|'),
    causes: [...drawn.faults.map((f) => f.cause)].sort().join('|'),
  }
}

export interface Told {
  checks: number
  minutes: number
  order: readonly (readonly [cause: string, share: number])[]
}

export class Oracle {
  private readonly days: readonly Day[]
  private readonly bench: Bench

  constructor(bench: Bench, count: number) {
    this.bench = bench
    this.days = Array.from({ length: count }, (_, i) => dayOf(drawSession(bench, far + i)))
  }

  /** Shares of causes after 0, 1, … `most` checks of its own choice, and last with every check made (`checks` -1). */
  tell({ drawn, session, look }: Simulated, most: number): Told[] {
    const own = dayOf(drawn)
    const logs = this.days.map((d) => lnNear(d, own))
    for (const { id, state } of session.observed ?? [])
      this.days.forEach((d, i) => {
        logs[i]! += Math.log(shareOf(id, d.drawn.seen, state, 0.15))
      })
    const all = checksFor(this.bench.craft)
    const from = [...logs]
    const open = new Set(all.filter((c) => !session.observed?.some((o) => o.id === c.reveals)))
    const out: Told[] = []
    let minutes = 0
    for (let k = 0; k <= most; k++) {
      out.push({ checks: k, minutes, order: this.order(logs) })
      const next = this.best(logs, [...open])
      if (!next || k === most) break
      open.delete(next)
      minutes += next.minutes
      this.learn(logs, next, look(next.reveals, next.reliability))
    }
    for (const c of all)
      if (!session.observed?.some((o) => o.id === c.reveals))
        this.learn(from, c, look(c.reveals, c.reliability))
    out.push({ checks: -1, minutes: 0, order: this.order(from) })
    return out
  }

  private learn(logs: number[], check: Check, state: string): void {
    this.days.forEach((d, i) => {
      // what is far below everything stays there
      if (logs[i]! > -40)
        logs[i]! += Math.log(shareOf(check.reveals, d.drawn.seen, state, 1 - check.reliability))
    })
  }

  private order(logs: readonly number[]): (readonly [string, number])[] {
    const w = shares(logs)
    const of = new Map<string, number>()
    this.days.forEach((d, i) => {
      if (w[i]! > 1e-9) for (const f of d.drawn.faults) of.set(f.cause, (of.get(f.cause) ?? 0) + w[i]!)
    })
    return [...of].sort((a, b) => b[1] - a[1])
  }

  private best(logs: readonly number[], open: readonly Check[]): Check | undefined {
    const w = shares(logs)
    const lead = [...w.keys()].sort((a, b) => w[b]! - w[a]!).slice(0, lookedAt)
    let best: { check: Check; left: number } | undefined
    for (const check of open) {
      const { states } = observables.find((o) => o.id === check.reveals)!
      let left = 0
      for (const state of states) {
        const of = new Map<string, number>()
        let sum = 0
        for (const i of lead) {
          const p = w[i]! * shareOf(check.reveals, this.days[i]!.drawn.seen, state, 1 - check.reliability)
          sum += p
          const { causes } = this.days[i]!
          of.set(causes, (of.get(causes) ?? 0) + p)
        }
        for (const p of of.values()) if (p > 0) left -= p * Math.log(p / sum)
      }
      if (!best || left < best.left) best = { check, left }
    }
    return best?.check
  }
}

function shares(logs: readonly number[]): Float64Array {
  const top = logs.reduce((m, l) => Math.max(m, l), Number.NEGATIVE_INFINITY)
  const w = Float64Array.from(logs, (l) => Math.exp(l - top))
  const sum = w.reduce((a, b) => a + b, 0)
  return w.map((x) => x / sum)
}

function lnNear(d: Day, own: Day): number {
  if (d.drawn.long !== own.drawn.long) return -60
  const off = (x: number, by: number) => 0.5 * Math.min(80, (x / by) ** 2)
  let differs = 0
  for (const k of d.kinds) if (!own.kinds.has(k)) differs++
  for (const k of own.kinds) if (!d.kinds.has(k)) differs++
  return -(
    off(d.first - own.first, near.first) +
    off(d.last - own.last, near.last) +
    costs.kind * differs +
    costs.parts * Math.abs(d.parts - own.parts) +
    costs.lines * Math.abs(d.lines - own.lines) +
    (d.log === own.log ? 0 : costs.log)
  )
}
