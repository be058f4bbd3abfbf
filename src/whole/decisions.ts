/**
 * From findings to decisions: one line for each thing to do, know or decide. Twins (front and rear, port and starboard) and findings
 * that ask for the same change are one line; what is good is not listed. The most harmful comes first; within a harm what stops,
 * then what one can do something about, then the most gainful.
 */
import { asChange, inCount, inNewtons, inSpeed } from '../base/answers/amounts.ts'
import { type Decision, type Gain, type Harm, harms } from '../base/answers/decision.ts'
import type { Finding, Question, Standing } from '../base/answers/finding.ts'
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

/** What the headline has told already: how fast it runs is no decision. */
const toldAbove: ReadonlySet<string> = new Set(['push.top'])

/** Something to act on or decide: not what is good, nor a page's own headline. */
const asks = (f: Finding): boolean =>
  (f.standing === 'stop' || f.standing === 'watch' || f.changes !== undefined) &&
  !f.id.endsWith('.headline') &&
  !toldAbove.has(f.id)

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
  const ordered = [...groups.values()]
    .map((group) => ({ standing: group[0]!.standing, decision: decisionOf(group) }))
    .sort((a, b) => byHarm(a.decision, b.decision) || byStop(a, b) || byAct(a.decision, b.decision))
    .map((one) => one.decision)
  return withoutRepeats(ordered)
}

/** Decisions that change the same values to the same are one: the first of them, resting on the findings of all. */
function withoutRepeats(decisions: readonly Decision[]): Decision[] {
  const kept = new Map<string, Decision>()
  for (const d of decisions) {
    const key = d.changes?.length
      ? d.changes.map((c) => `${c.path}=${c.to}`).join('\n')
      : `${d.id}\n${d.findings.join()}`
    const first = kept.get(key)
    kept.set(key, first ? { ...first, findings: [...first.findings, ...d.findings] } : d)
  }
  return [...kept.values()]
}

/**
 * What to do next, three at most: the first that says what to do, which is the worst that can be acted on, and after it the changes
 * that buy most. The first page, the terminal and the book all take it from here.
 */
export function nextOf(decisions: readonly Decision[]): Decision[] {
  const first = decisions.find((d) => d.act !== undefined || d.changes !== undefined)
  const rest = decisions.filter((d) => d.changes !== undefined && d !== first)
  return first ? [first, ...rest].slice(0, 3) : []
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

/** All decisions, those to do next before the others: the numbers that the list and the craft's picture share. */
export function nextFirst(decisions: readonly Decision[]): Decision[] {
  const next = nextOf(decisions)
  return [...next, ...decisions.filter((d) => !next.includes(d))]
}

type Ranked = { standing: Standing; decision: Decision }

const byHarm = (a: Decision, b: Decision): number =>
  harms.indexOf(a.harm ?? 'comfort') - harms.indexOf(b.harm ?? 'comfort')
const byStop = (a: Ranked, b: Ranked): number => Number(b.standing === 'stop') - Number(a.standing === 'stop')
const byAct = (a: Decision, b: Decision): number =>
  Number(b.act !== undefined) - Number(a.act !== undefined) || worth(b.gain) - worth(a.gain)

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
