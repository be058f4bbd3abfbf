import { Button } from 'react-aria-components/Button'
import { clockText } from '../../../../base/answers/clockText.ts'
import { doubtOf, type HeardEngine, isUnsure } from '../../../../trades/sound/heardAnswer.ts'
import type { Hearing } from '../../../../trades/sound/hearingTypes.ts'
import { Says } from '../../parts/Says.tsx'
import { player } from './player.ts'

/** How much happened, in a few words. */
export function eventsSay({ events }: Hearing, heard: readonly HeardEngine[]): string {
  if (heard.length === 0) return 'no engine was heard'
  if (events.length === 0) return 'nothing but steady running'
  const first = events.slice(0, 2).map((e) => `${e.kind} at ${clockText(e.time)}`)
  return `${first.join(', ')}${events.length > 2 ? ` and ${events.length - 2} more` : ''}`
}

/** What happened, in order; each moment can be jumped to. */
export function Events({ hearing, heard: engines }: { hearing: Hearing; heard: readonly HeardEngine[] }) {
  const { events, tracks } = hearing
  const heard = engines.length > 0
  return (
    <section className="events">
      {events.length > 0 && doubtOf(hearing, engines) && <p>Only if it was an engine:</p>}
      {events.length === 0 ? (
        <p>
          {heard
            ? 'Nothing but steady running: no start, stop, racing, bogging, fall of speed or misfire was heard.'
            : 'No engine was heard, so there is nothing to tell. If one ran, lock a point where you know its speed and follow the engines again, or record closer.'}
        </p>
      ) : (
        <ol className="plainlist">
          {events.map((e) => (
            <li key={`${e.kind}${e.time}${e.engine}`}>
              <Button
                aria-label={`Go to ${clockText(e.time)}, ${e.kind}`}
                onPress={() => player.seek(Math.max(0, e.time - 0.5))}
              >
                {clockText(e.time)}
              </Button>
              <span>
                <strong>{e.kind}</strong>
                {tracks.length > 1 && (
                  <span className="quiet"> {e.engine === 'both' ? 'both' : `engine ${e.engine}`}</span>
                )}
                : <Says says={e.says} />
                {isUnsure(e) && <span className="quiet"> (unsure)</span>}
                {e.excludes && <span className="quiet">; not {e.excludes}</span>}
              </span>
            </li>
          ))}
        </ol>
      )}
      {hearing.octaves.map((o) => (
        <p key={o.from}>
          From {clockText(o.from)} to {clockText(o.to)} the speed may be {o.factor > 1 ? 'twice' : 'half'}{' '}
          what is shown. Did it burble, firing every second turn?
        </p>
      ))}
      {hearing.labelsUncertainAfter.map((t) => (
        <p key={t}>
          After {clockText(t)} it is unsure which engine is A and which is B: their lines met there.
        </p>
      ))}
    </section>
  )
}
