/** A look on one screen: whether it goes, why, what to do, what happens if, what to measure. For the terminal and the first page alike. */
import type { Decision, Harm } from '../base/answers/decision.ts'
import type { Finding, Standing } from '../base/answers/finding.ts'
import { type Sentence, say } from '../base/answers/sentence.ts'
import { fieldAt, labelOf } from '../craft/index.ts'
import { gainSays, nextOf } from './decisions.ts'
import type { Look } from './look.ts'

export interface ScreenSection {
  head: string
  decisions: Decision[]
  /** further ones that are not shown */
  left: number
}

export interface LookScreen {
  /** how it goes, and where the doubt comes from */
  answer: Sentence[]
  sections: ScreenSection[]
  /** what happens if: one engine dies, it is swamped, somebody steps hard on the deck */
  whatIf: Sentence[]
  /** the measurement that narrows the answer most */
  measure?: Sentence
  counts: Readonly<Record<Standing, number>>
}

/** decisions of each harm shown at most: with the rest of the screen they stay within thirty lines */
const most: Readonly<Record<Harm, number>> = {
  'before the water': 7,
  'will stop the run': 4,
  'costs speed': 4,
  comfort: 1,
}

const heads: Readonly<Record<Harm, string>> = {
  'before the water': 'Before it goes in the water',
  'will stop the run': 'What will stop the run',
  'costs speed': 'What costs speed',
  comfort: 'Comfort',
}

/** findings that answer a "what if" and stand there instead of among what there is to do */
const ifs: readonly (readonly [string, RegExp])[] = [
  ['If one engine dies', /^push\.one-dead$/],
  ['If it is swamped', /^float\.swamped$/],
  ['The deck', /^deck\.bay\./],
]

/** Chooses what stands on the first screen. */
export function screenOf(look: Pick<Look, 'findings' | 'decisions'>): LookScreen {
  const { findings, decisions } = look
  const headline =
    findings.find((f) => f.id === 'push.headline') ?? findings.find((f) => f.id === 'push.not-known')
  const next = nextOf(decisions)
  const toldIf = ifs.flatMap(([head, pattern]) => {
    // findings come worst first, so the first is the worst of its kind
    const f = findings.find((one) => pattern.test(one.id))
    return f ? [{ head, f, told: findings.filter((one) => pattern.test(one.id)).map((one) => one.id) }] : []
  })
  const elsewhere = new Set([...next.flatMap((d) => d.findings), ...toldIf.flatMap((t) => t.told)])
  const rest = decisions.filter((d) => !next.includes(d) && !d.findings.every((id) => elsewhere.has(id)))
  const sections: ScreenSection[] = []
  if (next.length > 0) sections.push({ head: 'Do next, one at a time', decisions: next, left: 0 })
  for (const harm of Object.keys(heads) as Harm[]) {
    const own = rest.filter((d) => (d.harm ?? 'comfort') === harm)
    if (own.length > 0)
      sections.push({
        head: heads[harm],
        decisions: own.slice(0, most[harm]),
        left: Math.max(0, own.length - most[harm]),
      })
  }
  const measure = measureOf(headline, findings)
  return {
    answer: headline ? [headline.says, ...headline.because.map((b) => say`${b.says}.`)] : [],
    sections,
    whatIf: toldIf.map(({ head, f }) => say`${head}: ${f.says}`),
    ...(measure ? { measure } : {}),
    counts: countsOf(findings),
  }
}

/** One decision in one line: what is so, what to do, what that buys. */
export function decisionLine(d: Decision): Sentence {
  const act = d.act === undefined ? '' : say` → ${d.act}`
  const gain = d.gain ? say` (${gainSays(d.gain)})` : ''
  return say`${d.says}${act}${gain}`
}

function measureOf(headline: Finding | undefined, findings: readonly Finding[]): Sentence | undefined {
  const m = headline?.measureNext ?? findings.find((f) => f.measureNext && f.standing !== 'good')?.measureNext
  // "read it off a map" says nothing by itself: what it is stands before it
  const of = m?.path === undefined || fieldAt(m.path) === undefined ? '' : `${labelOf(m.path)}: `
  return m && say`${of}${m.what}, with ${m.with}, ${String(m.minutes)} minutes`
}

function countsOf(findings: readonly Finding[]): Record<Standing, number> {
  const counts: Record<Standing, number> = { stop: 0, watch: 0, unknown: 0, good: 0 }
  for (const f of findings) counts[f.standing]++
  return counts
}
