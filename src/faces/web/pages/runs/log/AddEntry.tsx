import { useId, useState } from 'react'
import { Button } from 'react-aria-components/Button'
import { displayUnit } from '../../../../../base/units/format.ts'
import { type LogEntry, type LogKind, logKinds } from '../../../../../whole/log/logTypes.ts'
import { type ReadingKind, readingKinds, readingOf } from '../../../../../whole/log/readings.ts'
import { ChoiceField } from '../../../parts/ChoiceField.tsx'
import { app } from '../../../state/app.ts'
import { useApp } from '../../../state/hooks.ts'
import { addToLog } from '../../../state/logs.ts'
import type { UnitSystem } from '../../../state/store.ts'

const today = () => new Date().toISOString().slice(0, 10)

/** the unit a builder writes behind a bare number */
const unitOf = (reading: ReadingKind, units: UnitSystem): string =>
  reading.kind === 'force' ? (units === 'inch' ? 'lb' : 'kg') : displayUnit(reading.kind, units, reading.unit)

/** Writes one thing down: what it was, when, and for a run its numbers. */
export function AddEntry({ craftId, craftName }: { craftId: string; craftName: string }) {
  const id = useId()
  const units = useApp((s) => s.units)
  const [kind, setKind] = useState<LogKind>('run')
  const [at, setAt] = useState(today)
  const [says, setSays] = useState('')
  const [numbers, setNumbers] = useState<Readonly<Record<string, string>>>({})
  const [fault, setFault] = useState('')
  const write = async () => {
    const readings: Record<string, string> = {}
    for (const of of kind === 'run' ? readingKinds : []) {
      const typed = numbers[of.name]?.trim()
      if (!typed) continue
      const text = /^[\d.,]+$/.test(typed) ? `${typed} ${unitOf(of, units)}` : typed
      const read = readingOf(of.name, text)
      if (typeof read === 'string') return setFault(`${of.name} ${read}`)
      readings[of.name] = text
    }
    if (says.trim() === '' && Object.keys(readings).length === 0)
      return setFault('Say in a few words what was done or found.')
    const entry: LogEntry = {
      at: at || today(),
      kind,
      says: says.trim(),
      ...(Object.keys(readings).length > 0 ? { readings } : {}),
    }
    try {
      await addToLog(craftId, entry, craftName)
      setSays('')
      setNumbers({})
      setFault('')
      app.say('Written into the log.')
    } catch (error) {
      setFault(`It could not be kept (${(error as Error).message}).`)
    }
  }
  return (
    <div className="addentry">
      <div className="fields">
        <ChoiceField
          label="What it was"
          value={kind}
          choices={logKinds}
          onChange={(word) => setKind(word as LogKind)}
        />
        <div className="blank">
          <label htmlFor={`${id}at`}>When</label>
          <input
            id={`${id}at`}
            className="plainfield"
            type="date"
            value={at}
            onChange={(event) => setAt(event.target.value)}
          />
        </div>
        <div className="blank">
          <label htmlFor={`${id}says`}>In your own words</label>
          <input
            id={`${id}says`}
            className="plainfield"
            value={says}
            maxLength={2000}
            autoComplete="off"
            onChange={(event) => setSays(event.target.value)}
          />
        </div>
        {kind === 'run' &&
          readingKinds.map((of) => (
            <div className="blank" key={of.name}>
              <label htmlFor={`${id}${of.name}`}>
                {of.name}, {unitOf(of, units)}
              </label>
              <input
                id={`${id}${of.name}`}
                className="plainfield"
                inputMode="decimal"
                value={numbers[of.name] ?? ''}
                maxLength={40}
                size={8}
                autoComplete="off"
                onChange={(event) => setNumbers({ ...numbers, [of.name]: event.target.value })}
              />
            </div>
          ))}
      </div>
      <p>
        <Button onPress={() => void write()}>Write it down</Button>{' '}
        <span className="blankfault" role="status">
          {fault}
        </span>
      </p>
    </div>
  )
}
