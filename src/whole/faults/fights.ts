/** Evidence that cannot all be right: two items that fight, readings that cannot be, a run that may be another craft's. */
import { inNewtons, inPercent, inRpm } from '../../base/answers/amounts.ts'
import type { Finding } from '../../base/answers/finding.ts'
import { type Sentence, say } from '../../base/answers/sentence.ts'
import type { Atom } from './atoms.ts'
import type { HeardEpisode } from './episodes.ts'
import type { Item, StateItem } from './evidence.ts'
import type { RankLimits } from './rankLimits.ts'
import type { RunSession } from './session.ts'
import type { Weigher } from './weigher.ts'

const doubt = (id: string, says: Sentence, act: Sentence): Finding => ({
  id: `doubt-${id}`,
  question: 'runs',
  says,
  standing: 'watch',
  because: [],
  act,
  harm: 'will stop the run',
  sources: [],
})

/** The two items of the whole day that no fault explains together, worst first; the same thing said twice differently is the plainest. */
export function fightOf(
  all: readonly StateItem[],
  items: readonly Item[],
  atoms: readonly Atom[],
  weigher: Weigher,
  limits: RankLimits,
): Finding | undefined {
  for (const a of all)
    for (const b of all) {
      if (a === b || a.observable !== b.observable || a.at !== b.at || a.state === b.state) continue
      return pairSays(a.says, b.says)
    }
  const day = items.flatMap((i, k) => (i.kind === 'state' ? [{ i, k }] : []))
  let worst: { ratio: number; a: StateItem; b: StateItem } | undefined
  const each = new Map<number, Float64Array>()
  for (const { k } of day)
    each.set(
      k,
      Float64Array.from(atoms, (_, x) => Math.exp(weigher.item(k, [x]))),
    )
  for (const [x, a] of day.entries())
    for (const b of day.slice(x + 1)) {
      const la = each.get(a.k)!
      const lb = each.get(b.k)!
      let [bestA, bestB, bestBoth] = [0, 0, 0]
      for (let n = 0; n < atoms.length; n++) {
        bestA = Math.max(bestA, la[n]!)
        bestB = Math.max(bestB, lb[n]!)
        bestBoth = Math.max(bestBoth, la[n]! * lb[n]!)
      }
      const ratio = bestBoth / (bestA * bestB)
      if (ratio < limits.fights.value && !(worst && worst.ratio <= ratio)) worst = { ratio, a: a.i, b: b.i }
    }
  return worst && pairSays(worst.a.says, worst.b.says)
}

const pairSays = (a: Sentence, b: Sentence): Finding =>
  doubt(
    'fight',
    say`Two things fight: ${a}, and ${b}; no fault known here does both.`,
    'Look at both again, the easier one first, and take back what was not seen.',
  )

/** Readings that cannot be of this craft. `most`: rev/s that no engine passes; `expected`: rev/s at full load. */
export function impossibleOf(
  session: RunSession,
  episodes: readonly HeardEpisode[],
  { most, expected, engines }: { most: number; expected: number; engines: number },
  limits: RankLimits,
): Finding[] {
  const out: Finding[] = []
  const fastest = Math.max(0, ...episodes.flatMap((e) => e.lines.map((l) => l.rotation)))
  if (most > 0 && fastest > limits.impossible.value * most)
    out.push(
      doubt(
        'speed',
        say`${inRpm(fastest)} was heard, which these engines cannot turn: ${inRpm(most)} is the most.`,
        'Halve that stretch by hand if it burbled, or open the run under the craft it belongs to.',
      ),
    )
  const lines = Math.max(0, ...episodes.map((e) => e.lines.length))
  if (lines > engines)
    out.push(
      doubt(
        'engines',
        engines === 1
          ? 'Two engines were heard and the craft has one: another ran nearby, or the run is another craft’s.'
          : 'More engines were heard than the craft has: another ran nearby, or the run is another craft’s.',
        'Say that another engine ran nearby, or open the run under the craft it belongs to.',
      ),
    )
  const pulled = episodes.filter((e) => e.kind === 'both-pulling' || e.kind === 'pulling')
  const off = pulled.map((e) => Math.log(e.lines[0]!.rotation / expected))
  if (expected > 0 && off.length > 0 && off.every((x) => Math.abs(x) > limits.otherCraft.value))
    out.push(
      doubt(
        'craft',
        say`Wherever it pulls it turns ${inPercent(Math.exp(Math.abs(off[0]!)) - 1)} ${off[0]! > 0 ? 'faster' : 'slower'} than this craft should: the run may be another craft’s.`,
        'Open the run under the craft it belongs to, or put the craft file right.',
      ),
    )
  const { pull, balance } = session
  if (pull !== undefined && (!(pull > 0) || (balance && pull > limits.pullMost.value * balance.pull.value)))
    out.push(
      doubt(
        'pull',
        balance
          ? say`A pull of ${inNewtons(pull)} cannot be: ${inNewtons(balance.pull.value)} is predicted.`
          : say`A pull of ${inNewtons(pull)} cannot be.`,
        'Read the scale again, three times, and type what it shows in its own unit.',
      ),
    )
  return out
}
