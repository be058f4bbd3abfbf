/**
 * From findings to decisions: one line for each thing to do, know or decide. Twins (front and rear, port and starboard) are one
 * line; what is good is not listed; the most harmful comes first, then the most gainful.
 */
import { asChange, inCount, inNewtons, inSpeed } from '../base/answers/amounts.ts'
import { type Decision, type Gain, type Harm, harms } from '../base/answers/decision.ts'
import type { Finding, Question } from '../base/answers/finding.ts'
import { type Sentence, say } from '../base/answers/sentence.ts'
import { type Craft, fieldAt } from '../craft/index.ts'
import type { Balance } from './push/balanceTypes.ts'

/** What a thing to watch may do, where its trade does not say: by the page it stands on. */
const usualHarm: Readonly<Record<Question, Harm>> = {
  craft: 'comfort',
  push: 'costs speed',
  breath: 'costs speed',
  float: 'before the water',
  strength: 'will stop the run',
  fuel: 'will stop the run',
  make: 'comfort',
  runs: 'will stop the run',
}

const harmOf = (f: Finding): Harm =>
  f.harm ?? (f.standing === 'stop' ? 'before the water' : usualHarm[f.question])

/** The decision on the impeller bears one fixed name, whichever finding it comes from. */
const named: Readonly<Record<string, string>> = { 'push.pitch': 'impeller' }

/** `breath.engines.1.level` and `deck.bay.0` without their places: findings alike at several places. */
const twinOf = (f: Finding): string => f.twin ?? f.id.replace(/\.\d+(?=\.|$)/g, '.*')

/** Something to act on or decide: not what is good, nor a page's own headline. */
const asks = (f: Finding): boolean =>
  (f.standing === 'stop' || f.standing === 'watch' || f.changes !== undefined) && !f.id.endsWith('.headline')

/** Everything to do, know or decide, worst first. `findings` come worst first. */
export function decisionsOf(_craft: Craft, findings: readonly Finding[], _balance?: Balance): Decision[] {
  const groups = new Map<string, Finding[]>()
  for (const f of findings) {
    if (!asks(f)) continue
    const key = twinOf(f)
    const group = groups.get(key)
    if (group) group.push(f)
    else groups.set(key, [f])
  }
  return [...groups.values()].map(decisionOf).sort(byHarmThenGain)
}

function decisionOf(group: readonly Finding[]): Decision {
  const worst = group[0]!
  return {
    id: named[worst.id] ?? twinOf(worst).replace(/\.\*/g, ''),
    says: withTwins(worst.says, group.length - 1),
    ...(worst.act === undefined ? {} : { act: worst.act }),
    ...(worst.changes === undefined ? {} : { changes: worst.changes }),
    ...(worst.gain === undefined ? {} : { gain: worst.gain }),
    harm: harmOf(worst),
    findings: group.map((f) => f.id),
  }
}

function withTwins(says: Sentence, more: number): Sentence {
  return more === 0 ? says : say`${says} (and ${inCount(more)} more like it)`
}

/** How much a change is worth, as one number to sort by: newtons of pull, and a speed at a usual thrust. */
const worth = (gain: Gain | undefined): number =>
  gain ? finite(gain.pull.value) + 60 * finite(gain.topSpeed?.value ?? 0) : 0
const finite = (x: number) => (Number.isFinite(x) ? x : 0)

function byHarmThenGain(a: Decision, b: Decision): number {
  const harm = harms.indexOf(a.harm ?? 'comfort') - harms.indexOf(b.harm ?? 'comfort')
  return harm || worth(b.gain) - worth(a.gain)
}

/** Where a decision leads: a page, and the input it is about, or `finding:` and the finding's id where it is about none alone. */
export interface LeadsTo {
  question: Question
  to: string
}

/** The page of a decision's first finding, and the first input that it changes or rests on. */
export function leadsTo(decision: Decision, findings: readonly Finding[]): LeadsTo {
  const id = decision.findings[0] ?? ''
  const first = findings.find((f) => f.id === id)
  const paths = [...(decision.changes ?? []).map((c) => c.path), ...(first ? pathsOf(first) : [])]
  return { question: first?.question ?? 'craft', to: paths.find(isInput) ?? `finding:${id}` }
}

/** Craft paths that a finding rests on, strongest first. */
export const pathsOf = (finding: Finding): string[] =>
  finding.because.flatMap(({ link }) => (link === undefined || /^(finding|result):/.test(link) ? [] : [link]))

function isInput(path: string): boolean {
  const type = fieldAt(path)?.type
  return type === 'quantity' || type === 'choice' || type === 'flag'
}

/** What a change buys in words: "+38 N of pull, −0.3 km/h". */
export function gainSays(gain: Gain): Sentence {
  const pull = say`${asChange(inNewtons(gain.pull.value))} of pull`
  return gain.topSpeed ? say`${pull}, ${asChange(inSpeed(gain.topSpeed.value))}` : pull
}
