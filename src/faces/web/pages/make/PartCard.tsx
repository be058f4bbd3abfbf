import { useState } from 'react'
import { Button } from 'react-aria-components/Button'
import { inHours, inKg } from '../../../../base/answers/amounts.ts'
import type { MadePart } from '../../../../base/answers/madePart.ts'
import { say } from '../../../../base/answers/sentence.ts'
import { type PaperName, papers } from '../../../../drawing/papers.ts'
import { typedScale } from '../../../../drawing/printScale.ts'
import { handsOn, type PartState } from '../../../../whole/make/partsOfCraft.ts'
import { type PatternFormat, patternFile } from '../../../../whole/make/patternFiles.ts'
import { Says } from '../../parts/Says.tsx'
import { app } from '../../state/app.ts'
import type { Craft } from '../../state/craftFile.ts'
import { useApp } from '../../state/hooks.ts'
import { addToLog } from '../../state/logs.ts'
import { downloadBytes } from '../../state/openedFiles.ts'

const formats: readonly PatternFormat[] = ['pdf', 'svg', 'dxf']

interface Props {
  part: MadePart
  state: PartState
  craft: Craft
}

/** What a part is, weighs and takes, its files, and the button that says it is made. */
export function PartCard({ part, state, craft }: Props) {
  const craftId = useApp((s) => s.work?.id)
  const { low, high } = handsOn([part])
  const done = async () => {
    if (!craftId) return
    const entry = { kind: 'made' as const, says: part.title, part: part.id, madeFrom: part.madeFrom }
    try {
      await addToLog(craftId, { at: new Date().toISOString().slice(0, 10), ...entry }, craft.name)
    } catch (error) {
      app.say(`It could not be noted (${(error as Error).message}).`)
    }
  }
  return (
    <section className="panel partcard">
      <h2>{part.title}</h2>
      <p>
        <Says says={part.says} />
      </p>
      <p>
        <Says
          says={say`${inHours(low)} to ${inHours(high)} of work by hand${part.mass === undefined ? '' : say`, ${inKg(part.mass)}`}.`}
        />
      </p>
      {part.findings.map((f) => (
        <p key={f.id} {...(f.standing === 'good' ? {} : { className: 'fault' })}>
          <Says says={f.says} />
        </p>
      ))}
      {part.flats && <FlatFilesRow part={part} />}
      <p className="row">
        <Button isDisabled={state === 'made'} onPress={() => void done()}>
          {state === 'made' ? 'Made' : state === 'changed since made' ? 'Made anew' : 'Mark as made'}
        </Button>
        {state === 'changed since made' && <span>The craft changed since it was made.</span>}
      </p>
    </section>
  )
}

/** Its patterns as files, for the paper there is and the printer as it prints. */
function FlatFilesRow({ part }: { part: MadePart }) {
  const units = useApp((s) => s.units)
  const [paper, setPaper] = useState<PaperName>('A4')
  const [square, setSquare] = useState('')
  const [fault, setFault] = useState('')
  const write = async (format: PatternFormat) => {
    setFault('')
    try {
      const scale = square.trim() === '' ? undefined : typedScale(square)
      const bytes = await patternFile(part, format, { paper, system: units, ...(scale ? { scale } : {}) })
      if (bytes) downloadBytes(`${part.id}.${format}`, bytes)
    } catch (error) {
      setFault((error as Error).message)
    }
  }
  return (
    <>
      <p className="row">
        {formats.map((f) => (
          <Button key={f} {...(f === 'pdf' ? { className: 'main' } : {})} onPress={() => void write(f)}>
            {f === 'pdf' ? 'Pages (PDF)' : f.toUpperCase()}
          </Button>
        ))}
      </p>
      <p className="row">
        <label>
          Paper{' '}
          <select value={paper} onChange={(e) => setPaper(e.target.value as PaperName)}>
            {Object.keys(papers).map((p) => (
              <option key={p}>{p}</option>
            ))}
          </select>
        </label>
        <label>
          Printed square, mm{' '}
          <input
            size={7}
            inputMode="decimal"
            placeholder="100, 100"
            value={square}
            onChange={(e) => setSquare(e.target.value)}
          />
        </label>
      </p>
      {fault && (
        <p role="alert" className="fault">
          {fault}
        </p>
      )}
    </>
  )
}
