import type { ReactNode } from 'react'
import type { Standing } from '../../../base/answers/finding.ts'
import { StandingMark } from './StandingMark.tsx'

interface Props {
  /** the page's question */
  asks: string
  /** the answer, one sentence */
  says: string
  /** the same with the tried values; shown beside `says` while something is tried */
  saysTried?: string | undefined
  /** the likely range in words, "9.1 to 11.4 km/h" */
  range?: string | undefined
  /** how sure, and what that rests on */
  confidence?: string | undefined
  standing?: Standing | undefined
}

/** The page's answer, large, in one sentence, with its range and how sure it is. */
export function AnswerHeader({ asks, says, saysTried, range, confidence, standing }: Props) {
  return (
    <header className="answer">
      <p className="asks">
        {asks} {standing && <StandingMark standing={standing} />}
      </p>
      <h1>{bound(says)}</h1>
      {saysTried !== undefined && saysTried !== says && (
        <p className="saystried">
          <span className="flag">tried</span> {bound(saysTried)}
        </p>
      )}
      {(range || confidence) && (
        <p className="sure">
          {range && <strong>Likely range {range}.</strong>} {confidence}
        </p>
      )}
    </header>
  )
}

/** A sentence in which no number is parted from its unit at the end of a line. */
function bound(sentence: string): ReactNode[] {
  return sentence.split(/(\d[\d.,\u202F]* [^\s.,;:]+)/).map((piece, i) =>
    i % 2 === 1 ? (
      // biome-ignore lint/suspicious/noArrayIndexKey: the pieces of one sentence have no other name
      <span key={i} className="bound">
        {piece}
      </span>
    ) : (
      piece
    ),
  )
}
