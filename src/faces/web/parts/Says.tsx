import type { ReactNode } from 'react'
import { printedAmount, type Sentence } from '../../../base/answers/sentence.ts'
import { proseIn } from '../../../base/units/prose.ts'
import { useApp } from '../state/hooks.ts'

/** A sentence with its numbers, and the figures of fixed words, in the reader's units; no number is parted from its unit at the end of a line. */
export function Says({ says }: { says: Sentence }) {
  const units = useApp((s) => s.units)
  if (typeof says === 'string') return <>{bound(proseIn(says, units))}</>
  return (
    <>
      {says.map((piece, i) =>
        typeof piece === 'string' ? (
          bound(proseIn(piece, units))
        ) : (
          // biome-ignore lint/suspicious/noArrayIndexKey: the pieces of one sentence have no other name
          <Shown key={i} text={printedAmount(piece, units)} />
        ),
      )}
    </>
  )
}

/** A number with its unit, and with its range, which may go on to the next line. */
function Shown({ text }: { text: string }) {
  const range = text.indexOf(' (')
  if (range < 0) return <span className="bound">{text}</span>
  return (
    <>
      <span className="bound">{text.slice(0, range)}</span> {bound(text.slice(range + 1))}
    </>
  )
}

/** Words in which no number is parted from its unit at the end of a line. */
function bound(sentence: string): ReactNode[] {
  return sentence.split(/(\d[\d.,\u202F]* [^\s.,;:]+)/).map((piece, i) =>
    i % 2 === 1 ? (
      // biome-ignore lint/suspicious/noArrayIndexKey: the pieces of one sentence have no other name
      <span key={i} className="bound">
        {piece}
      </span>
    ) : (
      piece
    ),
  )
}
