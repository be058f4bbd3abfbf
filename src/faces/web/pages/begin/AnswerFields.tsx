import { useEffect, useRef, useState } from 'react'
import { Button } from 'react-aria-components/Button'
import { inMm } from '../../../../base/answers/amounts.ts'
import { say } from '../../../../base/answers/sentence.ts'
import { pitchAt } from '../../../../trades/jet/ideal.ts'
import { QuantityField } from '../../parts/QuantityField.tsx'
import { Says } from '../../parts/Says.tsx'
import { app } from '../../state/app.ts'
import { type Craft, inputAt, shownUnit } from '../../state/craftFile.ts'
import { useApp } from '../../state/hooks.ts'
import { writtenNumber } from '../../state/shownValues.ts'
import type { Asked, BeginQuestion } from './questions.ts'

const degree = Math.PI / 180

/** how sure the answer is: that decides its range */
type Sure = 'measured' | 'guess'

interface Props {
  craft: Craft
  question: BeginQuestion
  onDone: () => void
}

/** The answer to one question: a number as read, how sure it is, or that it is not known. */
export function AnswerFields({ craft, question, onDone }: Props) {
  const [typed, setTyped] = useState<ReadonlyMap<string, string>>(new Map())
  const [sure, setSure] = useState<Sure>('measured')
  const [byAngle, setByAngle] = useState(false)
  const form = useRef<HTMLFormElement>(null)
  // each question is answered by typing at once
  useEffect(() => form.current?.querySelector('input')?.focus(), [])
  const put = (path: string, text: string) => setTyped((all) => new Map(all).set(path, text))
  const answer = () => {
    const values = question.fields.flatMap(({ path, also = [] }) => {
      const text = typed.get(path)
      return text === undefined ? [] : [path, ...also].map((p) => [p, `${text} (${sure})`] as const)
    })
    if (values.length === 0 || app.writeAll(values) === '') onDone()
  }
  return (
    <form
      ref={form}
      onSubmit={(event) => {
        event.preventDefault()
        answer()
      }}
    >
      {question.byAngle && byAngle ? (
        <ByAngle onPitch={(text) => put(question.fields[0]!.path, text)} />
      ) : (
        question.fields.map((field) => <Field key={field.path} craft={craft} field={field} onText={put} />)
      )}
      {question.byAngle && (
        <Button className="inline" onPress={() => setByAngle(!byAngle)}>
          {byAngle ? 'I know the pitch' : 'I have an angle read by protractor'}
        </Button>
      )}
      <fieldset className="sure">
        <legend className="hush">How sure</legend>
        {(['measured', 'guess'] as const).map((s) => (
          <label key={s}>
            <input type="radio" name="sure" checked={sure === s} onChange={() => setSure(s)} />
            {s === 'measured' ? 'I measured it' : 'about'}
          </label>
        ))}
      </fieldset>
      <p className="row">
        <button type="submit" className="main" disabled={typed.size === 0}>
          That is it
        </button>
        <Button onPress={onDone}>I don’t know</Button>
      </p>
    </form>
  )
}

interface FieldProps {
  craft: Craft
  field: Asked
  onText: (path: string, text: string) => void
}

/** One number of the craft file, empty until it is answered: what stands so far is said below. */
function Field({ craft, field, onText }: FieldProps) {
  const units = useApp((s) => s.units)
  const [value, setValue] = useState<number>()
  const input = inputAt(craft, field.path, units)
  if (!input) return null
  return (
    <QuantityField
      label={input.label}
      kind={input.kind}
      unit={input.unit}
      value={value}
      min={input.min}
      max={input.max}
      gloss={input.text === undefined ? input.gloss : `${input.gloss} So far: ${input.text}`}
      onCommit={(si, text) => {
        setValue(si)
        onText(field.path, text)
        return undefined
      }}
    />
  )
}

/** An angle by protractor and the radius it was read at, turned into the pitch. */
function ByAngle({ onPitch }: { onPitch: (text: string) => void }) {
  const units = useApp((s) => s.units)
  const unit = shownUnit('length', units, 'mm')
  const [angle, setAngle] = useState<number>()
  const [radius, setRadius] = useState<number>()
  const tell = (r: number | undefined, a: number | undefined) => {
    if (r === undefined || a === undefined) return
    const pitch = pitchAt(r, a)
    onPitch(`${writtenNumber(pitch, 'length', unit)} ${unit}`)
  }
  const pitch = angle !== undefined && radius !== undefined ? pitchAt(radius, angle) : undefined
  return (
    <>
      <QuantityField
        label="Angle of the blade’s face to the plane it turns in"
        kind="angle"
        unit="deg"
        value={angle}
        min={5 * degree}
        max={75 * degree}
        onCommit={(a) => {
          setAngle(a)
          tell(radius, a)
          return undefined
        }}
      />
      <QuantityField
        label="How far from the shaft’s middle"
        kind="length"
        unit={unit}
        value={radius}
        min={0.01}
        max={0.3}
        onCommit={(r) => {
          setRadius(r)
          tell(r, angle)
          return undefined
        }}
      />
      {pitch !== undefined && (
        <p role="status">
          <Says says={say`That is ${inMm(pitch)} of pitch.`} />
        </p>
      )}
    </>
  )
}
