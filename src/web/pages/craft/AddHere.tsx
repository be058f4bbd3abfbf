import { useId, useState } from 'react'
import { Button } from 'react-aria-components/Button'
import type { Spec } from '../../../craft/fields.ts'
import { isQuantityProblem, parseQuantity } from '../../../units/parse.ts'
import { inputId } from '../../frame/route.ts'
import { ChoiceField } from '../../parts/ChoiceField.tsx'
import { app } from '../../state/app.ts'
import { labelOf, shownUnit } from '../../state/craftFile.ts'
import { useApp } from '../../state/hooks.ts'
import { withUnit } from '../../state/shown.ts'

interface Props {
  spec: Spec
  /** where it goes; for a new item of a list, the list's path and the next number */
  path: string
  /** "Add a weight" for items, the field's own name else */
  word?: string
}

interface Blank {
  path: string
  spec: Spec
}

/** Something the file does not have yet: asks for what it must have, and writes it all at once, so the file always reads. */
export function AddHere({ spec, path, word }: Props) {
  const units = useApp((s) => s.units)
  const readOnly = useApp((s) => s.role === 'follower')
  const [given, setGiven] = useState<Record<string, string>>({})
  const [faults, setFaults] = useState<Record<string, string>>({})
  const blanks = blanksOf(spec, path)
  const name = word ?? spec.label ?? labelOf(path)
  if (readOnly) return null

  const add = () => {
    const wrong: Record<string, string> = {}
    const texts = blanks.map((blank): [string, string] => {
      const typed = (given[blank.path] ?? firstWord(blank.spec)).trim()
      if (blank.spec.type !== 'quantity') {
        if (typed === '') wrong[blank.path] = 'needed'
        return [blank.path, typed]
      }
      const unit = shownUnit(blank.spec.kind, units, blank.spec.unit)
      const text = withUnit(typed, unit)
      const read = parseQuantity(text, blank.spec.kind, unit)
      if (isQuantityProblem(read)) wrong[blank.path] = `${read.problem}; expected ${read.expected}`
      return [blank.path, text]
    })
    setFaults(wrong)
    if (Object.keys(wrong).length === 0 && app.writeAll(texts)) setGiven({})
  }

  return (
    <details className="add" id={inputId(path)}>
      <summary>{word ?? `${name}: not given`}</summary>
      {spec.gloss && <p className="quiet">{spec.gloss}</p>}
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
      <Button onPress={add}>Add</Button>
    </details>
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
  const label = spec.label ?? labelOf(path)
  if (spec.type === 'choice')
    return <ChoiceField label={label} value={value} choices={spec.words} onChange={onChange} />
  return (
    <div className="blank">
      <label htmlFor={id}>{label}</label>
      <input
        id={id}
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

const firstWord = (spec: Spec): string => (spec.type === 'choice' ? (spec.words[0] ?? '') : '')

/** The values that something must have: its required fields, and theirs. */
function blanksOf(spec: Spec, path: string): Blank[] {
  switch (spec.type) {
    case 'group':
      return requiredOf(spec.fields, path)
    case 'point':
      return spec.axes.map((axis, i) => ({ path: `${path}.${i}`, spec: { ...spec.each, label: axis } }))
    case 'list':
      return Array.from({ length: Math.max(1, spec.minItems) }, (_, i) =>
        blanksOf(spec.item, `${path}.${i}`),
      ).flat()
    case 'variant': {
      const [word = '', first] = Object.entries(spec.variants)[0] ?? []
      const tag: Spec = { type: 'choice', words: [word], presence: 'required', label: 'Kind', gloss: '' }
      return [{ path: `${path}.${spec.tag}`, spec: tag }, ...requiredOf(first?.fields ?? {}, path)]
    }
    default:
      return [{ path, spec }]
  }
}

function requiredOf(fields: Readonly<Record<string, Spec>>, path: string): Blank[] {
  return Object.entries(fields)
    .filter(([, spec]) => spec.presence === 'required')
    .flatMap(([key, spec]) => blanksOf(spec, `${path}.${key}`))
}
