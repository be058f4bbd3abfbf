import { type ReactNode, useEffect, useMemo } from 'react'
import {
  type Finding,
  type Question,
  type Standing,
  worstFirst,
  worstStanding,
} from '../../../base/answers/finding.ts'
import type { Sentence } from '../../../base/answers/sentence.ts'
import { app } from '../state/app.ts'
import type { Craft } from '../state/craftFile.ts'
import { useApp } from '../state/hooks.ts'
import { AnswerHeader } from './AnswerHeader.tsx'
import { Cautions } from './Cautions.tsx'
import { FindingsList } from './FindingsList.tsx'
import { Fold, type FoldPart } from './Fold.tsx'
import { InputsPanel, type PanelInput } from './InputsPanel.tsx'
import type { PageAnswer } from './pageAnswer.ts'
import { Sources } from './SourcesFoot.tsx'
import { several } from './several.ts'
import { useFindings } from './useFindings.ts'

interface Props {
  question: Question
  asks: string
  answer: PageAnswer
  /** the same with what is tried, or why there is none */
  triedSays?: Sentence | undefined
  /** what the tried values should do, for the log */
  expects?: string | undefined
  /** what is being worked out */
  status?: ReactNode
  /** what has to be decided before there is an answer to speak of: stands above it */
  first?: ReactNode
  /** which of several things is looked at: a bay, an engine */
  choose?: ReactNode
  picture: ReactNode
  /** what stands beside the picture where that is no inputs of the craft file */
  panel?: ReactNode
  /** strongest first; three stand beside the picture, the rest in a fold */
  inputs: readonly PanelInput[]
  /** the craft whose values the inputs show, where it is not the file's as it stands */
  of?: Craft
  /** found by the page itself, in place of those of the look with the same names; the page then waits for no look */
  own?: readonly Finding[] | undefined
  folds: readonly FoldPart[]
  cautions: readonly string[]
  /** how the answer is worked out */
  method: readonly string[]
}

/** inputs and findings in sight */
const few = 3

/** Every page of a question: the answer, one picture beside three inputs, the three worst findings; the rest in folds. */
export function QuestionPage(props: Props) {
  const { question, asks, answer, triedSays, expects = '', folds, inputs, cautions, method } = props
  const { findings, standing, tried, stale, found } = useShown(question, props.own)
  useEffect(() => app.expect(expects), [expects])
  const [first, rest] = useParted(findings)
  const [near, more] = useParted(inputs)
  return (
    <div className="question" data-question={question}>
      {props.first}
      <AnswerHeader
        asks={asks}
        says={answer.says}
        saysTried={triedSays}
        range={answer.range}
        confidence={answer.confidence}
        standing={standing}
      />
      <div className="status" role="status">
        {stale ? 'Being worked out again…' : ''}
        {props.status}
      </div>
      <div className="beside">
        <div className="pictures">
          {props.choose}
          {props.picture}
        </div>
        {props.panel ?? <InputsPanel inputs={near} of={props.of} />}
      </div>
      {!found && findings.length === 0 && <p className="quiet findingscoming">Looking the craft over…</p>}
      <FindingsList findings={first} title={tried ? 'Found, with what is tried' : 'What we found'} brief />
      <Cautions says={cautions} />
      <div className="folds">
        {more.length > 0 && (
          <Fold id="inputs" title="More that moves it" says={several(more.length, 'input')} eager>
            <InputsPanel inputs={more} title="" of={props.of} />
          </Fold>
        )}
        {rest.length > 0 && (
          <Fold id="findings" title="More findings" says={inCounts(rest)} eager>
            <FindingsList findings={rest} title="" />
          </Fold>
        )}
        {folds.map((fold) => (
          <Fold key={fold.id} {...fold} />
        ))}
        <Fold id="method" title="Where this comes from" says="method and sources">
          <Sources how={method} sources={findings.flatMap((f) => f.sources)} />
        </Fold>
      </div>
    </div>
  )
}

/** The few in sight and the rest, the same arrays as long as the list is the same. */
function useParted<T>(list: readonly T[]): [readonly T[], readonly T[]] {
  return useMemo(() => [list.slice(0, few), list.slice(few)], [list])
}

const none: readonly Finding[] = []

/** Findings to show, worst first, and how the question stands as the file has it. */
function useShown(question: Question, given: readonly Finding[] | undefined) {
  const own = given ?? none
  const found = useFindings(question)
  const looked = useApp((s) => s.findings[question] !== undefined)
  const findings = useMemo(() => {
    const ids = new Set(own.map((f) => f.id))
    return worstFirst([...own, ...(found.tried ?? found.now).filter((f) => !ids.has(f.id))])
  }, [own, found.tried, found.now])
  const all = found.headline ? [found.headline, ...found.now] : found.now
  return {
    findings,
    standing: all.length + own.length > 0 ? worstStanding([...all, ...own]) : undefined,
    tried: found.tried !== undefined,
    stale: found.stale,
    found: looked || given !== undefined,
  }
}

const words: Record<Standing, string> = {
  stop: 'stop',
  watch: 'to watch',
  unknown: 'not known',
  good: 'good',
}

/** "2 to watch, 5 good" */
function inCounts(findings: readonly Finding[]): string {
  return (Object.keys(words) as Standing[])
    .map((s) => [findings.filter((f) => f.standing === s).length, words[s]] as const)
    .filter(([count]) => count > 0)
    .map(([count, word]) => `${count} ${word}`)
    .join(', ')
}
