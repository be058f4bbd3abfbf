import { useEffect, useRef, useState } from 'react'
import { FieldError } from 'react-aria-components/FieldError'
import { Input, Label, Text, TextField } from 'react-aria-components/TextField'
import { fromSi, toSi } from '../../../base/units/convert.ts'
import type { Kind } from '../../../base/units/kinds.ts'
import { isQuantityProblem, parseQuantity } from '../../../base/units/parse.ts'
import { shownNumber, stepOf, withUnit, writtenNumber } from '../state/shownValues.ts'
import { longest } from './DraftInput.tsx'

interface Props {
  label: string
  /** for a screen reader only, when the label stands elsewhere */
  hushLabel?: boolean
  gloss?: string | undefined
  kind: Kind
  /** unit shown and meant by a bare number */
  unit: string
  /** SI; absent when the file has none */
  value: number | undefined
  /** SI, inclusive */
  min?: number | undefined
  max?: number | undefined
  placeholder?: string | undefined
  readOnly?: boolean
  /** goes into the craft file as it is typed: waits no longer than a moment */
  kept?: boolean
  /** Enter in a field whose value is taken already */
  onEnter?: () => void
  /** SI value and the text as it would stand in the file, unit included; answers why it was not taken, if so */
  onCommit: (value: number, text: string) => string | undefined
}

/** milliseconds of quiet after which a typed value counts without Enter */
const quiet = 600

/** arrow and Page keys, in steps */
const steps: Record<string, number> = { ArrowUp: 1, ArrowDown: -1, PageUp: 10, PageDown: -10 }

/** A quantity as free text: `1 1/4 in`, `32`, `0.8 bar`; arrow keys step it, Page keys ten times as far. */
export function QuantityField(props: Props) {
  const {
    label,
    hushLabel,
    gloss,
    kind,
    unit,
    value,
    min = -Infinity,
    max = Infinity,
    readOnly = false,
  } = props
  const [draft, setDraft] = useState<string>()
  const [refused, setRefused] = useState<{ text: string; why: string }>()
  const timer = useRef<ReturnType<typeof setTimeout>>(undefined)
  const newest = useRef('')
  useEffect(() => () => clearTimeout(timer.current), [])

  const shown = value === undefined ? '' : shownNumber(value, kind, unit)
  const read = (text: string) => {
    const quantity = parseQuantity(withUnit(text, unit), kind, unit)
    if (isQuantityProblem(quantity))
      return `“${text.trim()}” ${quantity.problem}. Expected ${quantity.expected}.`
    if (quantity.value < min || quantity.value > max) {
      const ends = [min, max].map((end) =>
        Number.isFinite(end) && Math.abs(end) < 1e300 ? shownNumber(end, kind, unit) : '…',
      )
      return `${text.trim()} is outside ${ends[0]} to ${ends[1]} ${unit}.`
    }
    return quantity.value
  }
  const result = draft === undefined || draft.trim() === '' ? undefined : read(draft)
  const refusal = refused && refused.text === draft ? refused.why : undefined
  const error = typeof result === 'string' ? result : refusal

  const commit = (text: string) => {
    clearTimeout(timer.current)
    timer.current = undefined
    const si = text.trim() === '' || text.trim() === shown ? undefined : read(text)
    if (typeof si !== 'number' || si === value) return typeof si !== 'string'
    const why = props.onCommit(si, withUnit(text, unit).trim())
    if (why) setRefused({ text, why })
    return !why
  }
  const type = (text: string) => {
    setDraft(text)
    newest.current = text
    if (!props.kept) clearTimeout(timer.current)
    if (!props.kept || timer.current === undefined)
      timer.current = setTimeout(() => commit(newest.current), props.kept ? longest : quiet)
  }
  const step = (by: number) => {
    const from = typeof result === 'number' ? result : value
    if (from === undefined) return
    const at = fromSi(from, kind, unit)
    const size = stepOf(at, kind, unit)
    const next = toSi(Math.round((at + by * size) / size) * size, kind, unit)
    const clamped = Math.min(max, Math.max(min, next))
    clearTimeout(timer.current)
    timer.current = undefined
    const text = `${writtenNumber(clamped, kind, unit)} ${unit}`.trim()
    const why = props.onCommit(clamped, text)
    setDraft(why ? text : undefined)
    if (why) setRefused({ text, why })
  }
  const leave = (text: string) => commit(text) && setDraft(undefined)
  /** true when the key was ours and must not move the caret or the page */
  const press = (key: string): boolean => {
    const by = steps[key]
    if (by !== undefined) step(by)
    else if (key === 'Enter') {
      // once it is taken, Enter goes on to what is next
      if (draft !== undefined && draft.trim() !== shown) leave(draft)
      else if (props.onEnter) {
        props.onEnter()
        // else the key that goes to a button would press it too
        return true
      }
    } else if (key === 'Escape') {
      clearTimeout(timer.current)
      timer.current = undefined
      setDraft(undefined)
    }
    return by !== undefined
  }

  return (
    <TextField
      className="quantity"
      value={draft ?? shown}
      onChange={type}
      isInvalid={error !== undefined}
      isReadOnly={readOnly}
      onBlur={() => draft !== undefined && leave(draft)}
      onKeyDown={(event) => {
        if (readOnly || event.altKey || event.ctrlKey || event.metaKey) return
        if (press(event.key)) event.preventDefault()
      }}
    >
      <Label className={hushLabel ? 'hush' : ''}>{label}</Label>
      <span className="entry">
        <Input inputMode="text" autoComplete="off" spellCheck={false} placeholder={props.placeholder ?? ''} />
        {unit && <span className="unit">{unit}</span>}
      </span>
      {gloss && (
        <Text slot="description" className="quiet">
          {gloss}
        </Text>
      )}
      <FieldError>{error}</FieldError>
    </TextField>
  )
}
