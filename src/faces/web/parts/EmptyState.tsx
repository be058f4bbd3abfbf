import type { MeasureNext } from '../../../base/answers/finding.ts'
import { MeasureNote } from './MeasureNote.tsx'

interface Props {
  title: string
  says: string
  /** what to measure, with what, in how many minutes */
  measures?: readonly MeasureNext[]
  children?: React.ReactNode
}

/** Nothing to show yet: says what is missing and how to get it. */
export function EmptyState({ title, says, measures = [], children }: Props) {
  return (
    <section className="empty">
      <h1>{title}</h1>
      <p>{says}</p>
      {measures.map((m) => (
        <MeasureNote key={m.what} measure={m} />
      ))}
      {children}
    </section>
  )
}
