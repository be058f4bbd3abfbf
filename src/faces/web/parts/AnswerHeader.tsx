import type { Standing } from '../../../base/answers/finding.ts'
import { printed, type Sentence } from '../../../base/answers/sentence.ts'
import { Says } from './Says.tsx'
import { StandingMark } from './StandingMark.tsx'

interface Props {
  /** the page's question */
  asks: string
  /** the answer, one sentence */
  says: Sentence
  /** the same with the tried values; shown beside `says` while something is tried */
  saysTried?: Sentence | undefined
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
      <h1>
        <Says says={says} />
      </h1>
      {saysTried !== undefined && printed(saysTried) !== printed(says) && (
        <p className="saystried">
          <span className="flag">tried</span> <Says says={saysTried} />
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
