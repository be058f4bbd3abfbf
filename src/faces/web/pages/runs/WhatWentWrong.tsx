import { useCallback, useId } from 'react'
import { Button } from 'react-aria-components/Button'
import { inMinutes, inPercent } from '../../../../base/answers/amounts.ts'
import { joined, type Sentence, say, whole } from '../../../../base/answers/sentence.ts'
import { besideStoryFigure } from '../../../../whole/faults/heardBeside.ts'
import type { NextCheck, RankedCause, RunRanking } from '../../../../whole/faults/rankingTypes.ts'
import { Cautions } from '../../parts/Cautions.tsx'
import { DraftInput } from '../../parts/DraftInput.tsx'
import { Figure } from '../../parts/Figure.tsx'
import { Fold } from '../../parts/Fold.tsx'
import { JobProgress } from '../../parts/JobProgress.tsx'
import { Says } from '../../parts/Says.tsx'
import { bench } from './bench.ts'
import type { Told } from './told.ts'
import type { Weighed } from './useRanking.ts'

/** causes and open questions in sight */
const few = 3

/** The likeliest cause in a few words. */
export function wrongSays({ ranking, stale }: Weighed): Sentence {
  if (!ranking || stale) return 'being weighed…'
  const [first] = ranking.causes
  if (!first) return 'none of what is known here'
  return ranking.decided ? say`${first.says} (${inPercent(first.share)})` : 'not decided; see the next check'
}

interface Props {
  weighed: Weighed
  told: Told
}

/** Causes with their odds, the next check with its outcomes, and what the run cannot say. */
export function WhatWentWrong({ weighed: { ranking, stale, work }, told }: Props) {
  const under = work && <JobProgress says={work.says} part={work.part} />
  if (!ranking) return under ?? <p className="quiet">Causes are being weighed.</p>
  const { causes, none, stopped, doubts, cannotSay } = ranking
  const next = ranking.checks.find((c) => told.answered.every((a) => a.check !== c.id))
  return (
    <section className="wrong" aria-busy={stale}>
      <p className="quiet" role="status">
        {stale ? 'From before your last answer; being weighed again…' : ''}
      </p>
      {doubts.map((d) => (
        <p key={d.id} role="alert">
          <Says says={d.says} /> {d.act && <Says says={d.act} />}
        </p>
      ))}
      {stale && under}
      {stopped && (
        <p>
          <Says
            says={say`The ${stopped.engine} engine stopped firing (${inPercent(stopped.share)}; one of them did: ${inPercent(stopped.any)}).`}
          />
        </p>
      )}
      <ol className="plainlist causes" aria-label="Causes">
        {causes.slice(0, few).map((c) => (
          <Cause key={c.id} cause={c} told={told} />
        ))}
      </ol>
      <p className="quiet">
        <Says says={say`None of these: ${inPercent(none)}.`} />
      </p>
      {ranking.beside.length > 0 && (
        <Fold id="beside-story" title="Heard beside the likeliest story" says="speeds of each stretch">
          <BesideStory beside={ranking.beside} />
        </Fold>
      )}
      {next && <Check check={next} told={told} />}
      <Answered told={told} />
      {cannotSay.length > 0 && (
        <>
          <h3>What this run cannot say</h3>
          <ul className="plainlist">
            {cannotSay.slice(0, few).map((f) => (
              <li key={f.id}>
                <Says says={f.says} /> {f.act && <Says says={f.act} />}
              </li>
            ))}
          </ul>
        </>
      )}
    </section>
  )
}

function BesideStory({ beside }: { beside: RunRanking['beside'] }) {
  const draw = useCallback((width: number) => besideStoryFigure(beside, width), [beside])
  return (
    <Figure
      draw={draw}
      name="heard beside the likeliest story"
      caption="Dashed: what the likeliest story asks for."
    />
  )
}

function Cause({ cause, told }: { cause: RankedCause; told: Told }) {
  const line = (list: readonly Sentence[]) => <Says says={whole(joined(list, '; '))} />
  return (
    <li>
      <details>
        <summary>
          <strong>
            <Says says={say`${inPercent(cause.share)}`} />
          </strong>{' '}
          <Says says={cause.says} />
        </summary>
        {cause.for.length > 0 && <p>For: {line(cause.for)}</p>}
        {cause.against.length > 0 && <p>Against: {line(cause.against)}</p>}
        <p>If so: {cause.mend}.</p>
        <Weight cause={cause} told={told} />
      </details>
    </li>
  )
}

/** How likely a cause is held beforehand, in the builder's own number where one is given. */
function Weight({ cause: { id, weight }, told }: { cause: RankedCause; told: Told }) {
  const field = useId()
  const { [id]: own, ...others } = told.weights
  return (
    <p className="row">
      <label htmlFor={field}>Weight beforehand</label>
      <DraftInput
        id={field}
        size={6}
        value={String(Number(weight.toPrecision(3)))}
        fault={(typed) => (weightOf(typed) === undefined ? 'A number from 0 to 1000' : undefined)}
        onCommit={(typed) => {
          bench.tell({ weights: { ...others, [id]: weightOf(typed)! } })
          return ''
        }}
      />
      {own !== undefined && (
        <Button className="plain" onPress={() => bench.tell({ weights: others })}>
          As usual again
        </Button>
      )}
    </p>
  )
}

/** A weight as typed; undefined where it is none. */
function weightOf(typed: string): number | undefined {
  const weight = typed === '' ? Number.NaN : Number(typed)
  return weight >= 0 && weight <= 1000 ? weight : undefined
}

function Check({ check, told }: { check: NextCheck; told: Told }) {
  const answer = (outcome: string) =>
    bench.tell({
      answered: [...told.answered.filter((a) => a.check !== check.id), { check: check.id, outcome }],
    })
  return (
    <div className="nextcheck">
      <h3>Next check</h3>
      <p>
        <Says says={say`${check.act} It takes ${inMinutes(60 * check.minutes)}.`} />
      </p>
      <Cautions says={check.cautions} />
      <fieldset className="row" aria-label="What it found">
        {check.outcomes.map((o) => (
          <Button key={o.id} onPress={() => answer(o.id)}>
            {o.id}
          </Button>
        ))}
      </fieldset>
    </div>
  )
}

/** Checks answered so far; each can be taken back. */
function Answered({ told }: { told: Told }) {
  if (told.answered.length === 0) return null
  return (
    <p className="row">
      {told.answered.map((a) => (
        <Button
          key={a.check}
          className="plain"
          aria-label={`Take back ${a.check}: ${a.outcome}`}
          onPress={() => bench.tell({ answered: told.answered.filter((x) => x.check !== a.check) })}
        >
          {a.check}: {a.outcome} ×
        </Button>
      ))}
    </p>
  )
}
