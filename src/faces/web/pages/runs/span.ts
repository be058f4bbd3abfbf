/** The part of a recording that the picture shows, s. */
export interface Span {
  from: number
  to: number
}

/** s that are shown at least */
const LEAST = 4
/** part of the shown stretch from which the next one begins when the cursor runs out of it */
const LEAD = 0.05

/** A stretch of that length within 0 … `duration` s, as near to the wanted start as it goes. */
function placed(from: number, length: number, duration: number): Span {
  const begin = Math.max(0, Math.min(from, duration - length))
  return { from: begin, to: Math.min(duration, begin + length) }
}

/** True when there is more to a recording than the least that is shown. */
export const canGoCloser = (s: Span) => s.to - s.from > LEAST * 1.01

/** Shows a third of the stretch, or three times as much, with the moment `at` where it stood; the whole at most. */
export function scaled(s: Span, at: number, closer: boolean, duration: number): Span {
  const length = s.to - s.from
  const next = Math.min(duration, Math.max(LEAST, closer ? length / 3 : 3 * length))
  const part = length > 0 ? Math.min(1, Math.max(0, (at - s.from) / length)) : 0.5
  return placed(at - part * next, next, duration)
}

/** The stretch three quarters of its length earlier (-1) or later (1). */
export const shifted = (s: Span, way: -1 | 1, duration: number): Span =>
  placed(s.from + way * 0.75 * (s.to - s.from), s.to - s.from, duration)

/** The stretch that holds the moment `at`: the same one as long as it does. */
export function following(s: Span, at: number, duration: number): Span {
  if (at >= s.from && at <= s.to) return s
  const length = s.to - s.from
  return placed(at - LEAD * length, length, duration)
}
