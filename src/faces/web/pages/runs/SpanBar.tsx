import { useEffect } from 'react'
import { Button } from 'react-aria-components/Button'
import { clockText } from '../../../../base/answers/clockText.ts'
import { player } from './player.ts'
import { canGoCloser, following, type Span, scaled, shifted } from './span.ts'

interface Props {
  span: Span
  duration: number
  onSpan: (change: (span: Span) => Span) => void
}

/** Which part of the recording the picture shows: closer about the cursor, along, and after the cursor when it plays on. */
export function SpanBar({ span, duration, onSpan }: Props) {
  const { time } = player.use()
  useEffect(() => onSpan((s) => following(s, time, duration)), [time, duration, onSpan])
  const whole = span.to - span.from > 0.999 * duration
  /** the cursor goes along, so that it stays in sight */
  const along = (way: -1 | 1) => {
    const next = shifted(span, way, duration)
    player.seek(Math.min(duration, Math.max(0, time + next.from - span.from)))
    onSpan(() => next)
  }
  return (
    <div className="row spanbar">
      <span className="quiet">
        Shown: {whole ? 'the whole' : `${clockText(span.from)} to ${clockText(span.to)}`}
      </span>
      <Button isDisabled={!canGoCloser(span)} onPress={() => onSpan((s) => scaled(s, time, true, duration))}>
        Closer at the cursor
      </Button>
      <Button isDisabled={whole} onPress={() => onSpan((s) => scaled(s, time, false, duration))}>
        Wider
      </Button>
      <Button isDisabled={span.from <= 0} onPress={() => along(-1)}>
        Earlier
      </Button>
      <Button isDisabled={span.to >= duration} onPress={() => along(1)}>
        Later
      </Button>
    </div>
  )
}
