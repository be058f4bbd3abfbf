import type { MeasureNext } from '../../../base/answers/finding.ts'
import { InputLink } from './InputLink.tsx'

/** What to measure, with what, in how many minutes. */
export function MeasureNote({ measure }: { measure: MeasureNext }) {
  const minutes = measure.minutes === 1 ? '1 minute' : `${measure.minutes} minutes`
  return (
    <p className="measure">
      <strong>Measure next:</strong> <InputLink link={measure.path}>{measure.what}</InputLink>, with{' '}
      {measure.with}; about {minutes}.
    </p>
  )
}
