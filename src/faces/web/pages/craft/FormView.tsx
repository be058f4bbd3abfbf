import type { Spec } from '../../../../craft/fields.ts'
import { camel, craftFields } from '../../../../craft/index.ts'
import { Says } from '../../parts/Says.tsx'
import type { Craft } from '../../state/craftFile.ts'
import { countIn } from './countIn.ts'
import { SpecField } from './SpecField.tsx'

/** The craft file as a form, made from the field tables; one fold a section. */
export function FormView({ craft }: { craft: Craft }) {
  const sections = Object.entries(craftFields as Record<string, Spec>).filter(
    ([key]) => key !== 'log' && key !== 'fitted',
  )
  const simple = sections.filter(([, spec]) => spec.type !== 'group' && spec.type !== 'list')
  const folds = sections.filter(([, spec]) => spec.type === 'group' || spec.type === 'list')
  const held = craft as unknown as Record<string, unknown>
  return (
    <div className="form">
      <div className="fields">
        {simple.map(([key, spec]) => (
          <SpecField key={key} spec={spec} path={key} value={held[camel(key)]} />
        ))}
      </div>
      {folds.map(([key, spec]) => (
        <details key={key} className="fold">
          <summary>
            <span className="foldname">{spec.label ?? key}</span>{' '}
            <span className="quiet">{countIn(held[camel(key)])}</span>
          </summary>
          <p className="quiet">
            <Says says={spec.gloss} />
          </p>
          <SpecField spec={spec} path={key} value={held[camel(key)]} bare />
        </details>
      ))}
    </div>
  )
}
