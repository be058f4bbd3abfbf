import type { Standing } from '../../answers/finding.ts'
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
      <h1>{says}</h1>
      {saysTried !== undefined && saysTried !== says && (
        <p className="saystried">
          <span className="flag">tried</span> {saysTried}
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
