import { Button } from 'react-aria-components/Button'
import type { Problem } from '../state/craftFile.ts'

interface Props {
  problems: readonly Problem[]
  file: string
  /** goes to a place in the text; without it the places are plain words */
  onGo?: (problem: Problem) => void
}

/** problems shown; the rest are counted, so that a hostile file cannot fill the page */
const most = 50

/** What is wrong with a file, place by place. */
export function ProblemList({ problems, file, onGo }: Props) {
  const rest = problems.length - most
  return (
    <ol className="problems">
      {problems.slice(0, most).map((problem, i) => {
        const place = `${file}:${problem.line}:${problem.column}`
        return (
          // biome-ignore lint/suspicious/noArrayIndexKey: two problems may read the same
          <li key={i}>
            {onGo ? (
              <Button className="plain place" onPress={() => onGo(problem)}>
                {place}
              </Button>
            ) : (
              <span className="place">{place}</span>
            )}{' '}
            {problem.severity === 'warning' && 'worth a look: '}
            {problem.says}
          </li>
        )
      })}
      {rest > 0 && <li>and {rest} more</li>}
    </ol>
  )
}
