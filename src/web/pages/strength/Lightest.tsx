import { useState } from 'react'
import { Button } from 'react-aria-components/Button'
import { plain } from '../../../balance/shown.ts'
import type { DeckAnswer } from '../../../strength/deck.ts'
import { valuesOf } from '../../../strength/pageAnswer.ts'
import { JobProgress } from '../../parts/JobProgress.tsx'
import { NumbersTable } from '../../parts/NumbersTable.tsx'
import { app } from '../../state/app.ts'
import { inputAt, triedValues } from '../../state/craftFile.ts'
import { useApp } from '../../state/hooks.ts'
import { shownNumber } from '../../state/shown.ts'
import { bayHead, partWord } from './table.ts'
import type { Deck } from './useDeck.ts'
import { useLightest } from './useLightest.ts'

interface Props {
  now: Deck
  tried: Deck | undefined
  bay: number
}

const ways: readonly [string, number][] = [
  ['no more than a fiftieth', 1 / 50],
  ['stiff: a hundredth', 1 / 100],
  ['whatever it gives', 1],
]

/** Searches the lightest build that holds in one bay, and sets the best of each kind against the bay as it is. */
export function Lightest({ now, tried, bay }: Props) {
  const work = useApp((s) => s.work)
  const readOnly = useApp((s) => s.role === 'follower')
  const [give, setGive] = useState(0)
  const { output, running, part, says, error, start, cancel } = useLightest()
  const own = (tried ?? now).answers[bay]!
  const search = () =>
    start({
      text: work?.goodText ?? '',
      tried: triedValues(work?.tried ?? []),
      bay,
      deflection: ways[give]![1],
    })
  const rows = output ? [...output.compared].sort((a, b) => a.massPerArea - b.massPerArea) : []
  const best = output?.holding[0]
  return (
    <section className="lightest">
      <h2>The lightest deck that holds you, in {own.bay.name}</h2>
      <p>
        Usual sheets alone, on folded hats, on foam and as a sandwich, about five hundred builds, all for the
        heaviest the rider may be; lightest first.
      </p>
      <div className="row">
        <label>
          It may give{' '}
          <select value={give} onChange={(e) => setGive(Number(e.target.value))}>
            {ways.map(([word], i) => (
              <option key={word} value={i}>
                {word}
                {i < 2 ? ' of its short side' : ''}
              </option>
            ))}
          </select>
        </label>
        {!running && (
          <Button className="main" onPress={search}>
            Search
          </Button>
        )}
      </div>
      {running && <JobProgress says={says} part={part} onCancel={cancel} />}
      {error && <p role="alert">The search failed: {error}</p>}
      {output && (
        <>
          <p role="status">
            {best
              ? `${best.bay.name} holds at ${best.massPerArea.toFixed(1)} kg/m², against ${own.massPerArea.toFixed(1)} as it is; ${output.tried} builds were worked out.`
              : `None of the ${output.tried} builds worked out holds within that; the nearest of each kind are below.`}
          </p>
          <NumbersTable
            caption="Options compared"
            columns={[{ head: 'Build' }, ...bayHead, { head: 'Holds' }]}
            rows={[
              row(own, `as it is: ${own.bay.name}`, own.margin >= 1 ? 'yes' : 'no'),
              ...rows.map((a) =>
                row(a, a.bay.name, output.holding.some((h) => h.bay.name === a.bay.name) ? 'yes' : 'no'),
              ),
              ...output.holding
                .filter((h) => !rows.some((r) => r.bay.name === h.bay.name))
                .slice(0, 5)
                .map((h) => row(h, h.bay.name, 'yes')),
            ]}
          />
          <ul className="plainlist trylist">
            {[...new Map([...output.holding.slice(0, 3), ...rows].map((a) => [a.bay.name, a])).values()].map(
              (a) => (
                <Option key={a.bay.name} answer={a} own={own} at={`deck.bays.${bay}`} disabled={readOnly} />
              ),
            )}
          </ul>
        </>
      )}
    </section>
  )
}

function row(a: DeckAnswer, name: string, holds: string): string[] {
  return [
    name,
    plain(a.massPerArea, 1),
    plain(a.mass, 2),
    plain(1e3 * a.deflection, 1),
    plain(a.margin, 2),
    partWord[a.governs.weakest],
    holds,
  ]
}

/** A build of the same kind is tried at once; another kind is changed on the Craft page, as it has other values. */
function Option({
  answer,
  own,
  at,
  disabled,
}: {
  answer: DeckAnswer
  own: DeckAnswer
  at: string
  disabled: boolean
}) {
  const units = useApp((s) => s.units)
  const craft = useApp((s) => s.craft)
  const values = valuesOf(own.bay, answer.bay)
  if (!values)
    return (
      <li>
        <a
          href={`#/craft/${encodeURIComponent(at)}`}
          aria-label={`Change the kind of bay to build ${answer.bay.name}`}
        >
          Change kind
        </a>
        <span>{answer.bay.name}</span>
      </li>
    )
  const tryIt = () => {
    for (const [key, value] of values) {
      const path = `${at}.${key}`
      if (typeof value === 'string') app.tryValue(path, value, value)
      else {
        const input = craft && inputAt(craft, path, units)
        if (input)
          app.tryValue(path, value, `${shownNumber(value, input.kind, input.unit)} ${input.unit}`.trim())
      }
    }
  }
  return (
    <li>
      <Button aria-label={`Try ${answer.bay.name}`} isDisabled={disabled} onPress={tryIt}>
        Try
      </Button>
      <span>{answer.bay.name}</span>
    </li>
  )
}
