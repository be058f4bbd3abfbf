import { type FormEvent, useId, useState } from 'react'
import { Button } from 'react-aria-components/Button'
import { type BookBox, boxWords } from '../../../../../book/bookBoxes.ts'
import { readBack } from '../../../../../book/readBack.ts'
import { app } from '../../../state/app.ts'
import { useApp } from '../../../state/hooks.ts'
import { addToLog } from '../../../state/logs.ts'

const today = () => new Date().toISOString().slice(0, 10)

/** Every box of a book by its number: values go into the craft file as measured, numbers of a run into the log, all in one step. */
export function ReadingsForm({ boxes }: { boxes: readonly BookBox[] }) {
  const id = useId()
  const craftId = useApp((s) => s.work?.id)
  const name = useApp((s) => s.craft?.name ?? '')
  const readOnly = useApp((s) => s.role === 'follower')
  const [typed, setTyped] = useState<Readonly<Record<number, string>>>({})
  const [faults, setFaults] = useState<ReadonlyMap<number, string>>(new Map())
  const write = async (event: FormEvent) => {
    event.preventDefault()
    const read = readBack(boxes, typed)
    setFaults(new Map(read.faults.map((f) => [f.n, f.says])))
    if (read.faults.length > 0) {
      document.getElementById(`${id}${read.faults[0]!.n}`)?.focus()
      return
    }
    const count = read.values.length + Object.keys(read.readings).length
    if (count === 0) return
    try {
      if (craftId && Object.keys(read.readings).length > 0)
        await addToLog(
          craftId,
          { at: today(), kind: 'run', says: 'typed back from the book', readings: read.readings },
          name,
        )
      if (read.values.length > 0) app.writeAll(read.values.map((v) => [v.path, v.text] as const))
      setTyped({})
      app.say(`${count} readings were written.`)
    } catch (error) {
      setFaults(new Map([[0, `It could not be kept: ${(error as Error).message}`]]))
    }
  }
  return (
    <form className="readings" onSubmit={(event) => void write(event)}>
      <div className="fields">
        {boxes.map((box) => (
          <div className="blank" key={box.n}>
            <label htmlFor={`${id}${box.n}`}>{boxWords(box)}</label>
            <input
              id={`${id}${box.n}`}
              className="plainfield"
              inputMode="text"
              autoComplete="off"
              readOnly={readOnly}
              value={typed[box.n] ?? ''}
              aria-invalid={faults.has(box.n) || undefined}
              aria-describedby={faults.has(box.n) ? `${id}${box.n}fault` : undefined}
              onChange={(event) => setTyped({ ...typed, [box.n]: event.target.value })}
            />
            {faults.has(box.n) && (
              <p className="fault" id={`${id}${box.n}fault`}>
                {faults.get(box.n)}
              </p>
            )}
          </div>
        ))}
      </div>
      {faults.has(0) && (
        <p role="alert" className="fault">
          {faults.get(0)}
        </p>
      )}
      <Button type="submit" isDisabled={readOnly}>
        Write into craft and log
      </Button>
    </form>
  )
}
