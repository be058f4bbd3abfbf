import { stepFromSi } from '../../../base/units/convert.ts'
import type { InputAt } from '../state/craftFile.ts'
import { tidyNumber } from '../state/shownValues.ts'

/** How well a value is known: measured, from the maker, guessed or assumed, and its likely half range. */
export function Provenance({
  input,
}: {
  input: Pick<InputAt, 'source' | 'low' | 'high' | 'kind' | 'unit' | 'why'>
}) {
  const half = (input.high - input.low) / 2
  const shown = half > 0 && tidyNumber(stepFromSi(half, input.kind, input.unit), 2)
  return (
    <span className="provenance" data-source={input.source} title={input.why}>
      <svg viewBox="0 0 12 12" aria-hidden="true">
        <circle cx="6" cy="6" r="4.2" fill="none" stroke="currentColor" strokeWidth="1.4" />
        {signs[input.source]}
      </svg>
      {input.source}
      {shown && ` ±${shown} ${input.unit}`}
    </span>
  )
}

/** full, half, a dot and empty: the surer, the fuller */
const signs: Record<InputAt['source'], React.ReactNode> = {
  measured: <circle cx="6" cy="6" r="4.2" fill="currentColor" />,
  maker: <path d="M6 1.8a4.2 4.2 0 0 1 0 8.4z" fill="currentColor" />,
  guess: <circle cx="6" cy="6" r="1.5" fill="currentColor" />,
  assumed: null,
}
