import { useId, useState } from 'react'
import { Button } from 'react-aria-components/Button'
import { ChoiceField } from '../../parts/ChoiceField.tsx'
import { labelOf, shownUnit } from '../../state/craftFile.ts'
import { useApp } from '../../state/hooks.ts'
import { type Blank, firstWord, readBlank } from './blanks.ts'

interface Props {
  blanks: readonly Blank[]
  /** on the button */
  action: string
  /** paths and texts, each of them sound; answers why they were not written, '' when they were */
  onGive: (values: [string, string][]) => string
}

/** Asks for all that something must have and hands it over at once, so that the file reads at every moment. */
export function AskFor({ blanks, action, onGive }: Props) {
  const units = useApp((s) => s.units)
  const [given, setGiven] = useState<Record<string, string>>({})
  const [faults, setFaults] = useState<Record<string, string>>({})
  const [refusal, setRefusal] = useState('')
  const give = () => {
    const wrong: Record<string, string> = {}
    const values = blanks.map((blank): [string, string] => {
      const read = readBlank(blank, (given[blank.path] ?? firstWord(blank.spec)).trim(), units)
      if ('fault' in read) wrong[blank.path] = read.fault
      return [blank.path, 'text' in read ? read.text : '']
    })
    setFaults(wrong)
    if (Object.keys(wrong).length > 0) return setRefusal('')
    const why = onGive(values)
    setRefusal(why)
    if (why === '') setGiven({})
  }
  return (
    <>
      <div className="fields">
        {blanks.map((blank) => (
          <BlankField
            key={blank.path}
            blank={blank}
            value={given[blank.path] ?? firstWord(blank.spec)}
            fault={faults[blank.path]}
            onChange={(text) => setGiven({ ...given, [blank.path]: text })}
          />
        ))}
      </div>
      <p>
        <Button onPress={give}>{action}</Button> <span className="blankfault">{refusal}</span>
      </p>
    </>
  )
}

interface BlankProps {
  blank: Blank
  value: string
  fault: string | undefined
  onChange: (text: string) => void
}

/** One value still to be given. */
function BlankField({ blank, value, fault, onChange }: BlankProps) {
  const id = useId()
  const units = useApp((s) => s.units)
  const { spec, path } = blank
  const label = labelIn(blank)
  if (spec.type === 'choice')
    return <ChoiceField label={label} value={value} choices={spec.words} onChange={onChange} />
  return (
    <div className="blank">
      <label htmlFor={id}>{label}</label>
      <input
        id={id}
        name={path}
        className="plainfield"
        value={value}
        placeholder={spec.type === 'quantity' ? shownUnit(spec.kind, units, spec.unit) : ''}
        aria-invalid={fault !== undefined}
        aria-describedby={fault === undefined ? undefined : `${id}-fault`}
        autoComplete="off"
        onChange={(event) => onChange(event.target.value)}
      />
      {fault && (
        <span className="blankfault" id={`${id}-fault`}>
          {fault}
        </span>
      )}
    </div>
  )
}

/** The parts of a place say what place they are of. */
function labelIn({ spec, path }: Blank): string {
  const part = /^(.*)\.\d$/.exec(path)
  return part ? `${labelOf(part[1]!)}, ${spec.label ?? ''}` : labelOf(path)
}
