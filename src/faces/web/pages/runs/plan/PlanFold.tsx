import { Button } from 'react-aria-components/Button'
import { pdfOf } from '../../../../../drawing/pdf.ts'
import type { RunRanking } from '../../../../../whole/faults/rankingTypes.ts'
import { planCard, relative } from '../../../../../whole/plan/planCard.ts'
import { Says } from '../../../parts/Says.tsx'
import type { Craft } from '../../../state/craftFile.ts'
import { useApp } from '../../../state/hooks.ts'
import { saveFile } from '../../../state/openedFiles.ts'
import { StepCard } from './StepCard.tsx'
import { usePlan } from './usePlan.ts'
import { useRunCard } from './useRunCard.ts'

interface Props {
  craft: Craft
  log: string
  ranking: RunRanking | undefined
}

/** The plan of the next run: steps with what each should sound like, to be printed or filled in on the bank with one hand. */
export function PlanFold({ craft, log, ranking }: Props) {
  const units = useApp((s) => s.units)
  const craftId = useApp((s) => s.work?.id)
  const planned = usePlan(craft, log, ranking)
  const card = useRunCard(craftId, craft.name)
  if (!planned) return <p className="quiet">The plan is being worked out; it waits for how the craft goes.</p>
  const { plan, next } = planned
  const print = async () => {
    const bytes = await pdfOf(planCard(plan, craft.name, units), 'Run card')
    await saveFile('run-card.pdf', bytes as Uint8Array<ArrayBuffer>)
  }
  return (
    <section className="runplan">
      <p>
        <Says says={plan.says} />
      </p>
      <p className="quiet">{relative}</p>
      <ol className="steps">
        {plan.steps.map((step) => (
          <StepCard key={step.id} step={step} card={card} />
        ))}
      </ol>
      {plan.steps.length > 0 && (
        <div className="row">
          <Button onPress={() => void card.write(plan)}>Write this run into the log</Button>
          <Button className="plain" onPress={() => void print()}>
            Run card to print
          </Button>
          <Button className="plain" onPress={card.clear}>
            Empty the card
          </Button>
        </div>
      )}
      <details>
        <summary>Phone, rope, checklist, what to take along</summary>
        <ul>
          {plan.phone.map((s, i) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: the list never changes its order
            <li key={i}>
              <Says says={s} />
            </li>
          ))}
        </ul>
        <ul className="plainlist">
          {[...plan.checklist, ...plan.kit].map((s, i) => {
            const id = `tick ${i}`
            return (
              <li key={id}>
                <label>
                  <input
                    type="checkbox"
                    checked={card.held[id] === 'yes'}
                    onChange={(event) => card.put(id, event.target.checked ? 'yes' : '')}
                  />{' '}
                  <Says says={s} />
                </label>
              </li>
            )
          })}
        </ul>
      </details>
      <h3>The next change</h3>
      <p>
        <Says says={next.says} />
      </p>
      {next.change && (
        <p>
          <Says says={next.change.show} />
        </p>
      )}
    </section>
  )
}
