import { useState } from 'react'
import type { Port, Reckoner } from '../../../../base/answers/reckoner.ts'
import { rangeOf, reckonTexts } from '../../../../base/answers/reckonTexts.ts'
import { displayUnit, formatQuantity } from '../../../../base/units/format.ts'
import { Cautions } from '../../parts/Cautions.tsx'
import { ChoiceField } from '../../parts/ChoiceField.tsx'
import { QuantityField } from '../../parts/QuantityField.tsx'
import { SourcesFoot } from '../../parts/SourcesFoot.tsx'
import { useApp } from '../../state/hooks.ts'

type Given = Readonly<Record<string, number | string>>

/** the units of a field that carry no name */
const unitName = (unit: string) => (unit === '1' ? '' : unit)

/** One reckoner as a form; the answer follows each value as it is given. */
export function ReckonerForm({ reckoner }: { reckoner: Reckoner }) {
  const units = useApp((s) => s.units)
  const [given, setGiven] = useState<Given>({})
  const texts = Object.fromEntries(Object.entries(given).map(([name, v]) => [name, String(v)]))
  const answer = reckonTexts(reckoner, texts)
  const missing = reckoner.inputs.filter(
    (p) => p.kind !== 'choice' && p.assumed === undefined && given[p.name] === undefined,
  )
  const give = (name: string, value: number | string) => setGiven((g) => ({ ...g, [name]: value }))
  return (
    <article className="reckoner">
      <p>{reckoner.says}</p>
      <div className="columns">
        <section aria-label="What you give">
          <h2>What you give</h2>
          {reckoner.inputs.map((port) => (
            <InputRow key={port.name} port={port} value={given[port.name]} units={units} onGive={give} />
          ))}
        </section>
        <section aria-label="The answer" aria-live="polite">
          <h2>The answer</h2>
          {missing.length > 0 ? (
            <p className="hint">
              Still needed: {missing.map((p) => p.says.replace(/\.$/, '').toLowerCase()).join('; ')}.
            </p>
          ) : answer.ok ? (
            <dl className="answers">
              {reckoner.outputs.map((port) => (
                <div key={port.name}>
                  <dt>{port.says}</dt>
                  <dd>
                    {formatQuantity(
                      answer.outputs[port.name]!,
                      port.kind,
                      displayUnit(port.kind, units, port.unit),
                      4,
                    )}
                  </dd>
                </div>
              ))}
            </dl>
          ) : (
            <ul className="wrong" role="alert">
              {answer.problems.map((p) => (
                <li key={p.input + p.says}>
                  {p.input === reckoner.id ? '' : `${p.input}: `}
                  {p.says}
                </li>
              ))}
            </ul>
          )}
        </section>
      </div>
      <Cautions says={reckoner.cautions ?? []} />
      <SourcesFoot
        how={[
          `On the command line: ./wakewright reckon ${reckoner.id} ${reckoner.inputs.map((p) => `${p.name}=…`).join(' ')}`,
        ]}
        sources={reckoner.sources}
      />
    </article>
  )
}

interface RowProps {
  port: Port
  value: number | string | undefined
  units: 'metric' | 'inch'
  onGive: (name: string, value: number | string) => void
}

function InputRow({ port, value, units, onGive }: RowProps) {
  if (port.kind === 'choice')
    return (
      <div className="given">
        <ChoiceField
          label={port.says.replace(/\.$/, '')}
          value={typeof value === 'string' ? value : (port.choices?.[0] ?? '')}
          choices={port.choices ?? []}
          onChange={(word) => onGive(port.name, word)}
        />
      </div>
    )
  const unit = displayUnit(port.kind, units, port.unit)
  const assumed = value === undefined && port.assumed !== undefined
  return (
    <div className="given">
      <QuantityField
        label={port.says.replace(/\.$/, '')}
        kind={port.kind}
        unit={unitName(unit)}
        value={typeof value === 'number' ? value : port.assumed}
        min={port.min}
        max={port.max}
        gloss={`${assumed ? 'Assumed. ' : ''}${rangeOf(port) === 'any' ? '' : `Takes ${rangeOf(port)}.`}`}
        onCommit={(si) => {
          onGive(port.name, si)
          return undefined
        }}
      />
    </div>
  )
}
