import { type ReactNode, useState } from 'react'
import type { Sentence } from '../../../base/answers/sentence.ts'
import { Says } from './Says.tsx'

export interface FoldPart {
  /** what its tests and its style know it by */
  id: string
  title: string
  /** the result in a few words, so that nobody need open it to know */
  says?: Sentence | undefined
  children: ReactNode
}

/**
 * What is not the answer itself, folded under a line that states its result. Its contents are made when it is first opened, and stay;
 * `eager` makes them at once, for what links lead to.
 */
export function Fold({ id, title, says, children, eager = false }: FoldPart & { eager?: boolean }) {
  const [made, setMade] = useState(eager)
  return (
    <details className="more" data-fold={id} onToggle={(event) => event.currentTarget.open && setMade(true)}>
      <summary>
        <h2>{title}</h2>
        {says !== undefined && (
          <span className="result">
            <Says says={says} />
          </span>
        )}
      </summary>
      {made && <div className="within">{children}</div>}
    </details>
  )
}
