import { useId } from 'react'
import { boxesOf } from '../../../../../whole/plan/planCard.ts'
import type { PlanStep } from '../../../../../whole/plan/runPlan.ts'
import { Says } from '../../../parts/Says.tsx'
import type { RunCard } from './useRunCard.ts'

/** One step: the order, what to mind and read, boxes for the readings, what each cause would sound like. */
export function StepCard({ step, card }: { step: PlanStep; card: RunCard }) {
  const id = useId()
  return (
    <li className="stepcard">
      <p>
        <strong>
          <Says says={step.act} />
        </strong>
      </p>
      {step.cautions.map((c) => (
        <p key={c} className="caution">
          {c}
        </p>
      ))}
      <p>Read: {step.read}.</p>
      <div className="fields">
        {boxesOf(step).map((label) => {
          const key = `${step.id} ${label}`
          return (
            <div className="blank" key={key}>
              <label htmlFor={`${id}${label}`}>{label}</label>
              <input
                id={`${id}${label}`}
                className="plainfield"
                inputMode={label.startsWith('scale') ? 'decimal' : 'text'}
                value={card.held[key] ?? ''}
                maxLength={80}
                size={8}
                autoComplete="off"
                onChange={(event) => card.put(key, event.target.value)}
              />
            </div>
          )
        })}
      </div>
      <details>
        <summary>What it should sound like</summary>
        <ul>
          {step.expected.map((e) => (
            <li key={e.suspect}>
              <Says says={e.says} />
            </li>
          ))}
        </ul>
      </details>
    </li>
  )
}
