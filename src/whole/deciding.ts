/**
 * Which values of the craft file would change a decision: each one that is not measured is put at either end of its range, alone, and
 * the craft is looked at again. What moves no decision need not be measured now, however vague it is.
 */
import type { Standing } from '../base/answers/finding.ts'
import type { Sentence } from '../base/answers/sentence.ts'
import { type Craft, type Quantity, quantitiesOf, whatIf } from '../craft/index.ts'
import type { EngineAnswers } from './breath/engineAnswers.ts'
import type { Deciding, DecidingValue, Turn } from './decidingSays.ts'
import { decisionsOf } from './decisions.ts'
import { findingsApart, leaning } from './look.ts'
import { MapStore } from './push/craftModel.ts'
import { insideEngine } from './push/draws.ts'
import { type TradeEntry, trades } from './trades.ts'

export interface DecidingWork {
  engines?: EngineAnswers
  list?: readonly TradeEntry[]
  /** every `of`-th value from the `hand`-th on, to deal the work out; all when left out */
  hand?: number
  of?: number
  progress?: (part: number, says: string) => void
  /** throw here to end between two values */
  check?: () => void
  early?: (answer: Deciding) => void
}

/** Tries every value that is not measured. Takes two quick looks a value. */
export function decidingOf(craft: Craft, work: DecidingWork = {}): Deciding {
  const { hand = 0, of = 1 } = work
  const stands = standsBy(work)
  const soft = [...quantitiesOf(craft)].filter(inDoubt)
  const outside = soft.filter((q) => !simulated(q.path, work.engines))
  const mine = outside.filter((_, i) => i % of === hand)
  const now = stands(craft)
  const answer: Deciding = { asked: 0, inside: soft.length - outside.length, values: [], final: false }
  for (const q of mine) {
    work.check?.()
    work.progress?.(answer.asked / mine.length, `${q.path} at both ends`)
    const ends = [q.low, q.high]
      .filter((at) => at !== q.value)
      .map((at) => ({ at, turns: turned(now, stands(whatIf(craft, { [q.path]: at }))) }))
      .filter((end) => end.turns.length > 0)
    answer.asked++
    if (ends.length === 0) continue
    const { path, kind, value, low, high } = q
    answer.values.push({ path, kind, value, low, high, ends })
    work.early?.(sorted(answer))
  }
  return { ...sorted(answer), final: true }
}

/** Puts together what several hands found. */
export function joinDeciding(parts: readonly Deciding[]): Deciding {
  return sorted({
    asked: parts.reduce((sum, p) => sum + p.asked, 0),
    inside: parts[0]?.inside ?? 0,
    values: parts.flatMap((p) => p.values),
    final: parts.every((p) => p.final),
  })
}

/** it ends in the torque curve of an engine that was simulated, and a look without simulating again would not see it move */
const simulated = (path: string, engines: EngineAnswers | undefined): boolean =>
  insideEngine.test(path) && engines?.simulated.has(Number(path.split('.')[1])) === true

const inDoubt = (q: Quantity): boolean =>
  q.source !== 'measured' && q.high > q.low && !/^(log|fitted)\b/.test(q.path)

const worst = ({ ends }: DecidingValue): number =>
  ends.reduce(
    (sum, { turns }) => sum + turns.reduce((s, t) => s + (t.from === 'stop' || t.to === 'stop' ? 10 : 1), 0),
    0,
  )

function sorted(answer: Deciding): Deciding {
  return {
    ...answer,
    values: [...answer.values].sort((a, b) => worst(b) - worst(a) || (a.path < b.path ? -1 : 1)),
  }
}

type Stands = ReadonlyMap<string, { standing: Standing; says: Sentence }>

/** How each decision of a craft stands, by the look without joint draws: both sides of a comparison are looked at alike. */
function standsBy({ engines, list = trades }: DecidingWork): (craft: Craft) => Stands {
  const maps = new MapStore()
  return (craft) => {
    const options = { maps, ranges: false, ...(engines ? { engines } : {}) }
    const findings = [...leaning(craft, options, list).findings, ...findingsApart(craft, list)]
    const standing = new Map(findings.map((f) => [f.id, f.standing]))
    const out = new Map<string, { standing: Standing; says: Sentence }>()
    for (const { id, says, findings: on } of decisionsOf(craft, findings)) {
      const all = on.map((f) => standing.get(f))
      // a change that only gains something is no trouble that comes or goes
      const is = all.includes('stop') ? 'stop' : all.includes('watch') ? 'watch' : undefined
      if (is) out.set(id, { standing: is, says })
    }
    return out
  }
}

function turned(now: Stands, then: Stands): Turn[] {
  const turns: Turn[] = []
  for (const id of new Set([...now.keys(), ...then.keys()])) {
    const [a, b] = [now.get(id), then.get(id)]
    const [from, to] = [a?.standing ?? 'good', b?.standing ?? 'good']
    if (from !== to) turns.push({ decision: id, says: (b ?? a)!.says, from, to })
  }
  return turns
}
