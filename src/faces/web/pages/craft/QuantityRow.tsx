import { useId } from 'react'
import { stepFromSi } from '../../../../base/units/convert.ts'
import { isQuantityProblem, parseQuantity } from '../../../../base/units/parse.ts'
import { inputId } from '../../frame/route.ts'
import { ChoiceField } from '../../parts/ChoiceField.tsx'
import { DraftInput } from '../../parts/DraftInput.tsx'
import { Provenance } from '../../parts/Provenance.tsx'
import { QuantityField } from '../../parts/QuantityField.tsx'
import { app } from '../../state/app.ts'
import { inputAt } from '../../state/craftFile.ts'
import { useApp } from '../../state/hooks.ts'
import { tidyNumber } from '../../state/shownValues.ts'
import { joinWritten, splitWritten } from './written.ts'

interface Props {
  path: string
  label?: string
  /** the number alone, for the parts of a place */
  brief?: boolean
}

const sources = ['measured', 'maker', 'guess'] as const

/** One number of the file: its value, how far it may be off, and where it comes from. */
export function QuantityRow({ path, label, brief = false }: Props) {
  const craft = useApp((s) => s.craft)
  const units = useApp((s) => s.units)
  const readOnly = useApp((s) => s.role === 'follower')
  const input = craft && inputAt(craft, path, units)
  if (!input) return null
  const written = splitWritten(input.text ?? '')
  const write = (part: Partial<typeof written>) => app.write(path, joinWritten({ ...written, ...part }))
  const given = input.text !== undefined
  const name = label ?? input.label
  return (
    <div
      className="qrow"
      id={inputId(path)}
      data-source={given ? input.source : 'assumed'}
      data-brief={brief || undefined}
    >
      <QuantityField
        kept
        label={name}
        gloss={brief ? undefined : input.gloss}
        kind={input.kind}
        unit={input.unit}
        value={typeof input.value === 'number' ? input.value : undefined}
        min={input.min}
        max={input.max}
        readOnly={readOnly}
        placeholder="not given"
        onCommit={(_, text) => write({ value: text })}
      />
      {!brief && given && (
        <>
          <PlusMinus
            usual={tidyNumber(stepFromSi((input.high - input.low) / 2, input.kind, input.unit), 2)}
            name={name}
            value={written.spread}
            readOnly={readOnly}
            fault={(spread) => {
              const read = parseQuantity(joinWritten({ ...written, spread }), input.kind, input.unit)
              return isQuantityProblem(read) ? `It ${read.problem}.` : undefined
            }}
            onCommit={(spread) => write({ spread })}
          />
          <ChoiceField
            label={`Source of ${name}`}
            hushLabel
            value={written.source || input.source}
            choices={sources}
            disabled={readOnly}
            onChange={(source) => write({ source })}
          />
        </>
      )}
      {!brief && !given && input.value !== undefined && (
        <p className="assumed">
          <Provenance input={input} /> {input.why && <span className="quiet">{input.why}</span>}
        </p>
      )}
    </div>
  )
}

interface PlusMinusProps {
  name: string
  /** what is taken when nothing is written */
  usual: string
  value: string
  readOnly: boolean
  fault: (spread: string) => string | undefined
  onCommit: (text: string) => string | undefined
}

/** How far off it may be, as written after the ±. */
function PlusMinus({ name, usual, ...rest }: PlusMinusProps) {
  const id = useId()
  return (
    <span className="plusminus">
      <label htmlFor={id}>
        ±<span className="hush">, {name}</span>
      </label>
      <DraftInput kept id={id} size={6} placeholder={usual} {...rest} />
    </span>
  )
}
