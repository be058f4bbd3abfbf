import { useId } from 'react'
import { Button } from 'react-aria-components/Button'
import { clockText } from '../../../../base/answers/clockText.ts'
import type { HandMark } from '../../../../trades/sound/byHand.ts'
import type { Hearing, Track } from '../../../../trades/sound/hearingTypes.ts'
import type { LockedPoint } from '../../../../trades/sound/listener.ts'
import { DraftInput } from '../../parts/DraftInput.tsx'
import { player } from './player.ts'
import { Stretches } from './Stretches.tsx'

interface Props {
  hearing: Hearing
  locks: readonly LockedPoint[]
  marks: readonly HandMark[]
  /** most engines that are followed */
  engines: 1 | 2
  busy: boolean
  onLocks: (locks: readonly LockedPoint[]) => void
  /** other stretches were judged; the engines are followed again at once */
  onMarks: (marks: readonly HandMark[]) => void
  onAgain: () => void
}

/** The points laid by hand, as a list: added at the cursor, typed, taken away, and heard again with. */
export function Locks({ hearing, locks, marks, engines, busy, onLocks, onMarks, onAgain }: Props) {
  const id = useId()
  const labels: ('A' | 'B')[] = engines === 1 ? ['A'] : ['A', 'B']
  const add = (label: 'A' | 'B', time: number) =>
    onLocks([...locks, { label, time, rpm: Math.round(speedAt(hearing, label, time)) }])
  return (
    <section className="locks">
      <p className="quiet">
        Lock a point where you know the speed, or 0 where the engine was silent; the rest is followed again
        through your points. Between two points less than a second apart the line goes straight.
      </p>
      <AddButtons labels={labels} onAdd={add} />
      {locks.length > 0 && (
        <ul className="plainlist">
          {locks.map((l, i) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: a point keeps its place in the list
            <li key={i} className="row">
              <span>
                Engine {l.label} at {clockText(l.time)}
              </span>
              <label className="hush" htmlFor={`${id}${i}`}>
                Speed of engine {l.label} at {clockText(l.time)}
              </label>
              <span className="row">
                <DraftInput
                  id={`${id}${i}`}
                  value={String(l.rpm)}
                  size={6}
                  fault={(text) =>
                    /^\d{1,5}$/.test(text) ? undefined : 'a whole number of rpm, 0 for silent'
                  }
                  onCommit={(text) => {
                    onLocks(locks.map((o, k) => (k === i ? { ...o, rpm: Number(text) } : o)))
                    return ''
                  }}
                />
                rpm
              </span>
              <Button
                className="plain"
                aria-label={`Take away the point of engine ${l.label} at ${clockText(l.time)}`}
                onPress={() => onLocks(locks.filter((_, k) => k !== i))}
              >
                Take away
              </Button>
            </li>
          ))}
        </ul>
      )}
      <div className="row">
        <Button isDisabled={busy} onPress={onAgain}>
          Follow the engines again
        </Button>
        {locks.length > 0 && (
          <Button className="plain" onPress={() => onLocks([])}>
            Take all points away
          </Button>
        )}
      </div>
      <Stretches hearing={hearing} marks={marks} busy={busy} onMarks={onMarks} />
    </section>
  )
}

interface AddProps {
  labels: readonly ('A' | 'B')[]
  onAdd: (label: 'A' | 'B', time: number) => void
}

function AddButtons({ labels, onAdd }: AddProps) {
  const { time } = player.use()
  const at = Math.round(time * 50) / 50
  return (
    <div className="row">
      {labels.map((label) => (
        <Button key={label} onPress={() => onAdd(label, at)}>
          Lock {label} at the cursor, {clockText(at)}
        </Button>
      ))}
    </div>
  )
}

/** Speed of an engine at a moment, rev/min; of the nearest moment it was heard; of the other engine when it never was. */
function speedAt(h: Hearing, label: 'A' | 'B', time: number): number {
  const track: Track | undefined = h.tracks.find((t) => t.label === label) ?? h.tracks[0]
  if (!track) return 0
  const i = Math.min(h.time.length - 1, Math.max(0, Math.round(time / h.step)))
  for (let d = 0; d < track.rpm.length; d++) {
    const near = track.rpm[i - d] || track.rpm[i + d]
    if (near) return near
  }
  return 0
}
