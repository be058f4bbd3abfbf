/**
 * How well causes are ranked in simulated sessions, and how much the choice of the next check is worth.
 * Run: npx tsx bench/diagnosisBench.ts [--from SEED] [--count N] [--compare N] [--keep FILE] [--merge FILE,FILE] [--write docs/diagnosis.md]
 */
import { readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { seededRandom } from '../src/base/numerics/random.ts'
import { readCraft } from '../src/craft/index.ts'
import { checksFor, nextChecks } from '../src/whole/faults/nextChecks.ts'
import type { NextCheck, RunRanking } from '../src/whole/faults/rankingTypes.ts'
import { rankRun } from '../src/whole/faults/rankRun.ts'
import { solveBalance } from '../src/whole/push/solveBalance.ts'
import { Oracle, type Told } from './diagnosis/oracle.ts'
import { diagnosisReport, type Outcome } from './diagnosis/report.ts'
import { type Simulated, simulate } from './diagnosis/sessions.ts'
import { throughSound } from './diagnosis/soundOf.ts'
import { type Bench, benchOf } from './diagnosis/trueCraft.ts'

const option = (name: string, usual: string) => {
  const i = process.argv.indexOf(`--${name}`)
  return i < 0 ? usual : (process.argv[i + 1] ?? usual)
}
const from = Number(option('from', '1'))
const count = Number(option('count', '60'))
const compare = Number(option('compare', '0'))
const write = option('write', '')
const keep = option('keep', '')
const merge = option('merge', '')
/** sessions go through an invented sound, phone and the real hearing */
const sounding = process.argv.includes('--sound')
/** days an all-knowing reckoner draws; 0: none */
const knowing = Number(option('oracle', '0'))

const craftOf = (name: string): Bench => {
  const file = join(import.meta.dirname, `../demo/${name}.yaml`)
  const { craft } = readCraft(readFileSync(file, 'utf8'), file)
  if (!craft) throw new Error(`${name} does not read`)
  return benchOf(name, craft, solveBalance(craft))
}
const benches = ['sandpiper', 'teal', 'heron'].map(craftOf)

/** Which check comes next. */
type Chooser = (r: RunRanking, done: ReadonlySet<string>, seed: number) => NextCheck | undefined
const left = (r: RunRanking, done: ReadonlySet<string>) => r.checks.filter((c) => !done.has(c.id))
const choosers: Readonly<Record<string, Chooser>> = {
  worth: (r, done) => left(r, done)[0],
  cheapest: (r, done) =>
    [...left(r, done)].sort((a, b) => a.minutes - b.minutes || a.id.localeCompare(b.id))[0],
  random: (r, done, seed) => {
    const list = left(r, done).sort((a, b) => a.id.localeCompare(b.id))
    return list[Math.floor(seededRandom(seed * 131 + done.size).next() * list.length)]
  },
}

const stops = [0, 3, 5, 7]

function run(sim: Simulated, choose: Chooser, seed: number, everything: boolean): Outcome[] {
  const out: Outcome[] = []
  const answered: { check: string; outcome: string }[] = []
  const done = new Set<string>()
  let minutes = 0
  for (let k = 0; k <= 7; k++) {
    const r = rankRun({ ...sim.session, answered })
    if (stops.includes(k)) out.push(outcomeOf(r, sim, k, minutes))
    const next = choose(r, done, seed)
    if (!next) break
    done.add(next.id)
    minutes += next.minutes
    const c = nextChecks.find((x) => x.id === next.id)!
    answered.push({ check: next.id, outcome: sim.look(c.reveals, c.reliability) })
  }
  if (everything) {
    const r = rankRun({
      ...sim.session,
      answered: checksFor(sim.session.craft).map((c) => ({
        check: c.id,
        outcome: sim.look(c.reveals, c.reliability),
      })),
    })
    out.push(outcomeOf(r, sim, -1, 0))
  }
  return out
}

const oracles: (Oracle | undefined)[] = []

const outcomeKnown = ({ checks, minutes, order }: Told, sim: Simulated): Outcome =>
  outcome(order, sim, checks, minutes)

function outcomeOf(r: RunRanking, sim: Simulated, checks: number, minutes: number): Outcome {
  return outcome(
    r.causes.map((c) => [c.id, c.share] as const),
    sim,
    checks,
    minutes,
  )
}

function outcome(
  told: readonly (readonly [cause: string, share: number])[],
  sim: Simulated,
  checks: number,
  minutes: number,
): Outcome {
  const truth = sim.faults.map((f) => f.cause)
  const order = told.map(([id]) => id)
  return {
    checks,
    minutes,
    truth,
    first: truth.includes(order[0] ?? ''),
    main: order.slice(0, 3).includes(truth[0]!),
    any: truth.some((x) => order.slice(0, 3).includes(x)),
    all: truth.every((x) => order.slice(0, 3).includes(x)),
    top: told[0]?.[1] ?? 0,
    shares: told.map(([id, share]) => [share, truth.includes(id)] as const),
    missed: truth.filter((x) => !order.slice(0, 3).includes(x)),
    named: order.slice(0, 3),
  }
}

const results: Record<string, Outcome[]> = { worth: [], sound: [], cheapest: [], random: [], knowing: [] }
const byWorth = sounding ? 'sound' : 'worth'
const began = performance.now()
// parts that ran side by side are put together
const parts = merge === '' ? [] : merge.split(',')
for (const part of parts)
  for (const [name, list] of Object.entries(
    JSON.parse(readFileSync(part, 'utf8')) as Record<string, Outcome[]>,
  ))
    results[name]!.push(...list)
for (let i = 0; i < (parts.length > 0 ? 0 : count); i++) {
  const seed = from + i
  const sim = simulate(benches[i % benches.length]!, seed, sounding ? throughSound : undefined)
  if (knowing > 0) {
    const oracle = (oracles[i % benches.length] ??= new Oracle(benches[i % benches.length]!, knowing))
    results['knowing']!.push(...oracle.tell(sim, 7).map((told) => outcomeKnown(told, sim)))
    continue
  }
  results[byWorth]!.push(...run(sim, choosers['worth']!, seed, true))
  if (i < compare)
    for (const name of ['cheapest', 'random'])
      results[name]!.push(...run(simulate(benches[i % benches.length]!, seed), choosers[name]!, seed, false))
}
const report = diagnosisReport(results, { from, count, seconds: (performance.now() - began) / 1000 })
console.log(report.text)
if (keep) writeFileSync(keep, JSON.stringify(results))
// what other measurements found stands beside it
const beside = () => readFileSync(join(import.meta.dirname, 'diagnosis/beside.md'), 'utf8')
if (write) writeFileSync(join(import.meta.dirname, '..', write), `${report.page}\n${beside()}`)
