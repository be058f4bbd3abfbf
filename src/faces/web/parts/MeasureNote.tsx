import type { MeasureNext } from '../../../base/answers/finding.ts'
import { InputLink } from './InputLink.tsx'
import { Says } from './Says.tsx'

/** What to measure, with what, in how many minutes. */
export function MeasureNote({ measure }: { measure: MeasureNext }) {
  const minutes = measure.minutes === 1 ? '1 minute' : `${measure.minutes} minutes`
  return (
    <p className="measure">
      <strong>Measure next:</strong>{' '}
      <InputLink link={measure.path}>
        <Says says={measure.what} />
      </InputLink>
      , with <Says says={measure.with} />; about {minutes}.
    </p>
  )
}
