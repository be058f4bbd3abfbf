import { useState } from 'react'
import { Button } from 'react-aria-components/Button'
import { inKg, inKgPerM2, inMm } from '../../../../base/answers/amounts.ts'
import { type Amount, say } from '../../../../base/answers/sentence.ts'
import { proseIn } from '../../../../base/units/prose.ts'
import type { LightestDeckAnswer } from '../../../../jobs/lightestDeckJob.ts'
import { valuesOf } from '../../../../trades/strength/deckAnswer.ts'
import type { DeckAnswer } from '../../../../trades/strength/deckBay.ts'
import { buildWords } from '../../../../trades/strength/deckFigures.ts'
import { JobProgress } from '../../parts/JobProgress.tsx'
import { Says } from '../../parts/Says.tsx'
import { TradeTables } from '../../parts/TradeParts.tsx'
import { app } from '../../state/app.ts'
import { inputAt, triedValues } from '../../state/craftFile.ts'
import { useApp } from '../../state/hooks.ts'
import { writtenNumber } from '../../state/shownValues.ts'
import { bayCells, bayHead } from './deckTable.ts'
import { Sections } from './Sections.tsx'
import type { Deck } from './useDeck.ts'
import { useLightest } from './useLightest.ts'

interface Props {
  now: Deck
  tried: Deck | undefined
  bay: number
}

const ways: readonly [string, number][] = [
  ['no more than a fiftieth of its short side', 1 / 50],
  ['stiff: a hundredth of its short side', 1 / 100],
  ['whatever it gives', 1],
]

/** Searches the lightest build that holds in one bay, and sets the best of each kind against the bay as it is. */
export function Lightest({ now, tried, bay }: Props) {
  const work = useApp((s) => s.work)
  const [give, setGive] = useState(0)
  const { output, running, part, says, error, start, cancel } = useLightest()
  const search = () =>
    start({
      text: work?.goodText ?? '',
      tried: triedValues(work?.tried ?? []),
      bay,
      deflection: ways[give]![1],
      bayAir: (tried ?? now).inputs.bayAir,
    })
  return (
    <section className="lightest">
      <p>
        Usual sheets alone, on folded hats, on foam and as a sandwich are looked over by mass, lightest first,
        for the heaviest the rider may be. The first that holds is the lightest there is among them.
      </p>
      <div className="row">
        <label>
          It may give{' '}
          <select value={give} onChange={(e) => setGive(Number(e.target.value))}>
            {ways.map(([word], i) => (
              <option key={word} value={i}>
                {word}
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
      {output && <Found output={output} now={now} tried={tried} bay={bay} />}
    </section>
  )
}

/** best of each kind, then the next lightest that hold, each build once */
function optionsOf({ compared, holding }: LightestDeckAnswer): DeckAnswer[] {
  const best = [...compared].sort((a, b) => a.massPerArea - b.massPerArea)
  const rest = holding.filter((h) => !best.some((b) => b.bay.name === h.bay.name))
  return [...best, ...rest.slice(0, 4)]
}

function Found({ output, now, tried, bay }: Props & { output: LightestDeckAnswer }) {
  const { own, holding, builds, rider, most, early } = output
  const best = holding[0]
  const options = optionsOf(output)
  const holds = (a: DeckAnswer) => a.margin >= 1 && a.deflection <= most
  return (
    <>
      <p role="status">
        <Says
          says={
            best
              ? say`${best.bay.name} is the lightest that holds: ${inKgPerM2(best.massPerArea)}, against ${inKgPerM2(own.massPerArea)} for ${buildWords(own.bay)}.`
              : early
                ? 'Nothing holds so far.'
                : `None of the ${builds} builds holds within that; the nearest of each kind are below.`
          }
        />
      </p>
      <TradeTables
        tables={[
          {
            caption: 'Options compared',
            heads: ['Build', ...bayHead, 'Holds'],
            rows: [
              row(own, `as searched from: ${buildWords(own.bay)}`, holds(own)),
              ...options.map((a) => row(a, a.bay.name, holds(a))),
            ],
          },
        ]}
      />
      <p className="quiet">
        <Says
          says={say`For a rider of ${inKg(rider, 1)}, the heaviest the file allows. Gives at most ${inMm(most, 0.1)} underfoot. Margin: what the weakest part bears over what is asked of it; from 1 up it holds.`}
        />
      </p>
      <Sections now={now} tried={tried} bay={bay} />
      <ul className="plainlist trylist">
        {options.map((a) => (
          <Option key={a.bay.name} answer={a} now={now} tried={tried} bay={bay} />
        ))}
      </ul>
    </>
  )
}

function row(a: DeckAnswer, name: string, holds: boolean): (string | Amount)[] {
  return [name, ...bayCells(a), holds ? 'yes' : 'no']
}

/** One build, tried at a press: the bay's kind and every value it needs, in one step. */
function Option({ answer, now, tried, bay }: Props & { answer: DeckAnswer }) {
  const units = useApp((s) => s.units)
  const craft = useApp((s) => s.craft)
  const readOnly = useApp((s) => s.role === 'follower')
  const own = now.answers[bay]!.bay
  const picked = tried !== undefined && sameBuild(tried.answers[bay]!.bay, answer.bay)
  const name = proseIn(answer.bay.name, units)
  const tryIt = () => {
    const values = valuesOf(own, answer.bay).flatMap(
      ([key, value]): (readonly [string, number | string, string])[] => {
        const path = `deck.bays.${bay}.${key}`
        if (typeof value === 'string') return [[path, value, value]]
        const input = craft && inputAt(craft, path, units)
        if (!input) return []
        return [[path, value, `${writtenNumber(value, input.kind, input.unit)} ${input.unit}`.trim()]]
      },
    )
    app.tryAll(values, `try ${answer.bay.name}`)
  }
  return (
    <li>
      <Button aria-label={`Try ${name}`} aria-pressed={picked} isDisabled={readOnly} onPress={tryIt}>
        {picked ? 'Tried' : 'Try'}
      </Button>
      <span>{name}</span>
    </li>
  )
}

const sameBuild = (a: DeckAnswer['bay'], b: DeckAnswer['bay']) =>
  JSON.stringify(valuesOf(a, b)) === JSON.stringify(valuesOf(a, a))
