import type { ReactNode } from 'react'
import { MeasureNote } from '../../parts/MeasureNote.tsx'
import { measures } from './runsWords.ts'

interface Props {
  fault: { name: string; says: readonly string[] } | undefined
  flags: readonly { code: string; text: string }[]
  invented: boolean
  /** what can be laid on the bench, and taken from it */
  children: ReactNode
}

/** What lies on the bench, how it came there, and what else could. */
export function Bench({ fault, flags, invented, children }: Props) {
  return (
    <>
      <div className="row">{children}</div>
      {invented && (
        <p className="invented">Invented: this sound was made up from the craft file; nobody recorded it.</p>
      )}
      {fault && (
        <p role="alert" className="fault">
          <strong>{fault.name}</strong>: {fault.says.join(' ')}
        </p>
      )}
      {flags.length > 0 && (
        <ul className="plainlist flags">
          {flags.map((f) => (
            <li key={f.code}>{f.text}</li>
          ))}
        </ul>
      )}
    </>
  )
}

/** What to record before there is any run on the bench. */
export function ToRecord() {
  return (
    <section className="panel">
      <h2>What to record</h2>
      {measures.map((m) => (
        <MeasureNote key={m.what} measure={m} />
      ))}
      <p className="quiet">Nothing leaves this machine.</p>
    </section>
  )
}
