import { useState } from 'react'
import { Button } from 'react-aria-components/Button'
import { clockText } from '../../../../base/answers/clockText.ts'
import { type HandMark, markStretch, stretchAround } from '../../../../trades/sound/byHand.ts'
import type { Hearing } from '../../../../trades/sound/hearingTypes.ts'
import { player } from './player.ts'

interface Props {
  hearing: Hearing
  marks: readonly HandMark[]
  busy: boolean
  onMarks: (marks: readonly HandMark[]) => void
}

const says: Record<HandMark['kind'], string> = {
  voice: 'is a voice, not an engine',
  twice: 'turns twice as fast',
  half: 'turns half as fast',
}

/** Judges a stretch of a line: a voice, or an octave off. From and to are taken at the cursor, or the whole stretch around it. */
export function Stretches({ hearing, marks, busy, onMarks }: Props) {
  const { time } = player.use()
  const [from, setFrom] = useState<number>()
  const [to, setTo] = useState<number>()
  const [fault, setFault] = useState('')
  const at = Math.round(time * 50) / 50
  const mark = (kind: HandMark['kind'], label: 'A' | 'B') => {
    const around = stretchAround(hearing, label, time)
    const begin = from ?? around?.from
    const end = to ?? around?.to
    const made =
      begin !== undefined && end !== undefined && end > begin
        ? markStretch(hearing, kind, label, begin, end)
        : undefined
    if (!made)
      return setFault(
        `The line of engine ${label} is silent there: put the cursor on it, or take the two ends of the stretch.`,
      )
    setFault('')
    setFrom(undefined)
    setTo(undefined)
    onMarks([...marks, made])
  }
  const where =
    from === undefined && to === undefined
      ? `around the cursor, ${clockText(at)}`
      : `from ${from === undefined ? '…' : clockText(from)} to ${to === undefined ? '…' : clockText(to)}`
  return (
    <div className="stretches">
      <h3>A whole stretch</h3>
      <p className="quiet">
        Somebody spoke and it was taken for an engine, or a line stands at twice or half the true speed: put
        the cursor on the line, or take both ends of the stretch, and say what it is.
      </p>
      <div className="row">
        <Button onPress={() => setFrom(at)}>Begins at the cursor</Button>
        <Button onPress={() => setTo(at)}>Ends at the cursor</Button>
        <span>The stretch {where}</span>
      </div>
      {hearing.tracks.map((t) => (
        <div className="row" key={t.label}>
          <span>Line {t.label}</span>
          {(['voice', 'twice', 'half'] as const).map((kind) => (
            <Button
              key={kind}
              isDisabled={busy}
              aria-label={`Line ${t.label} ${says[kind]}`}
              onPress={() => mark(kind, t.label)}
            >
              {kind === 'voice' ? 'is a voice' : kind === 'twice' ? '× 2' : '÷ 2'}
            </Button>
          ))}
        </div>
      ))}
      {fault && <p role="status">{fault}</p>}
      {marks.length > 0 && (
        <ul className="plainlist">
          {marks.map((m) => (
            <li className="row" key={`${m.kind}${m.label}${m.from}`}>
              <span>
                Line {m.label} {says[m.kind]}, {clockText(m.from)} to {clockText(m.to)}
              </span>
              <Button
                className="plain"
                isDisabled={busy}
                aria-label={`Take away: line ${m.label} ${says[m.kind]}, from ${clockText(m.from)}`}
                onPress={() => onMarks(marks.filter((o) => o !== m))}
              >
                Take away
              </Button>
            </li>
          ))}
        </ul>
      )}
    </div>
  )
}
