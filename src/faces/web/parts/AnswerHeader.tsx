import type { Standing } from '../../../base/answers/finding.ts'
import { printed, type Sentence } from '../../../base/answers/sentence.ts'
import { Says } from './Says.tsx'
import { StandingMark } from './StandingMark.tsx'
import { useNotYours } from './useNotYours.ts'

interface Props {
  /** the page's question */
  asks: string
  /** the answer, one sentence */
  says: Sentence
  /** the same with the tried values; shown beside `says` while something is tried */
  saysTried?: Sentence | undefined
  /** the likely range in words, "9.1 to 11.4 km/h" */
  range?: Sentence | undefined
  /** how sure, and what that rests on */
  confidence?: Sentence | undefined
  standing?: Standing | undefined
}

/** The page's answer, large, in one sentence, with its range and how sure it is. */
export function AnswerHeader({ asks, says, saysTried, range, confidence, standing }: Props) {
  const notYours = useNotYours()
  return (
    <header className="answer" data-not-yours={notYours || undefined}>
      <p className="asks">
        {asks}{' '}
        {notYours ? (
          <span className="flag">not yours yet</span>
        ) : (
          standing && <StandingMark standing={standing} />
        )}
      </p>
      <h1>
        <Says says={says} />
      </h1>
      {saysTried !== undefined && printed(saysTried) !== printed(says) && (
        <p className="saystried">
          <span className="flag">tried</span> <Says says={saysTried} />
        </p>
      )}
      {notYours && (
        <p className="sure">
          Worked out from values that nobody gave. Give four of your own on the{' '}
          <a href="#/craft">Craft page</a>, and it is your craft that is judged.
        </p>
      )}
      {/* it comes a little later than the sentence: its line is kept free */}
      <p className="sure">
        {range && (
          <strong>
            Likely range <Says says={range} />.
          </strong>
        )}{' '}
        {confidence && <Says says={confidence} />}
      </p>
    </header>
  )
}
