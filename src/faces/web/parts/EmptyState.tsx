import type { MeasureNext } from '../../../base/answers/finding.ts'
import type { Sentence } from '../../../base/answers/sentence.ts'
import { MeasureNote } from './MeasureNote.tsx'
import { Says } from './Says.tsx'

interface Props {
  title: string
  says: Sentence
  /** what to measure, with what, in how many minutes */
  measures?: readonly MeasureNext[]
  children?: React.ReactNode
}

/** Nothing to show yet: says what is missing and how to get it. */
export function EmptyState({ title, says, measures = [], children }: Props) {
  return (
    <section className="empty">
      <h1>{title}</h1>
      <p>
        <Says says={says} />
      </p>
      {measures.map((m) => (
        <MeasureNote key={m.what} measure={m} />
      ))}
      {children}
    </section>
  )
}
