import { useState } from 'react'
import { Button } from 'react-aria-components/Button'
import type { Spec } from '../../../craft/fields.ts'
import { isQuantityProblem, parseQuantity } from '../../../units/parse.ts'
import { inputId } from '../../frame/route.ts'
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
          <label key={blank.path} className="blank">
            {blank.spec.label ?? labelOf(blank.path)}
            {blank.spec.type === 'choice' ? (
              <select
                value={given[blank.path] ?? firstWord(blank.spec)}
                onChange={(event) => setGiven({ ...given, [blank.path]: event.target.value })}
              >
                {blank.spec.words.map((w) => (
                  <option key={w}>{w}</option>
                ))}
              </select>
            ) : (
              <input
                className="plainfield"
                value={given[blank.path] ?? ''}
                placeholder={
                  blank.spec.type === 'quantity' ? shownUnit(blank.spec.kind, units, blank.spec.unit) : ''
                }
                aria-invalid={faults[blank.path] !== undefined}
                autoComplete="off"
                onChange={(event) => setGiven({ ...given, [blank.path]: event.target.value })}
              />
            )}
            {faults[blank.path] && <span className="blankfault">{faults[blank.path]}</span>}
          </label>
        ))}
      </div>
      <Button onPress={add}>Add</Button>
    </details>
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
