/** What is put right by hand, as points the tracks must pass through. */
import type { Hearing } from './hearingTypes.ts'
import type { LockedPoint } from './listener.ts'

/** A stretch of one line that the user has judged. */
export interface HandMark {
  /** 'voice' = not an engine; the others move the line an octave */
  kind: 'voice' | 'twice' | 'half'
  label: 'A' | 'B'
  /** s */
  from: number
  to: number
  points: readonly LockedPoint[]
}

/** s between the points of a mark: the line is taken straight between points less than 1 s apart */
const APART = 0.5

/**
 * Marks the stretch `from` … `to` s of a line. The octave marks take the speeds of `h` as they are now and hold for good,
 * so following again does not move the line a second time. Undefined when the line is nowhere heard in the stretch.
 */
export function markStretch(
  h: Hearing,
  kind: HandMark['kind'],
  label: 'A' | 'B',
  from: number,
  to: number,
): HandMark | undefined {
  if (!(from >= 0 && to > from)) throw new RangeError(`from, to: ${from} to ${to} s; 0 or more, and rising`)
  const track = h.tracks.find((t) => t.label === label)
  if (!track) return undefined
  const factor = kind === 'twice' ? 2 : kind === 'half' ? 0.5 : 0
  const points: LockedPoint[] = []
  let heard = false
  const steps = Math.max(1, Math.ceil((to - from) / APART))
  for (let k = 0; k <= steps; k++) {
    const time = Math.min(h.duration, from + ((to - from) * k) / steps)
    const rpm = track.rpm[Math.min(track.rpm.length - 1, Math.round(time / h.step))] ?? 0
    if (rpm > 0) heard = true
    // an octave moves only what is there
    if (factor === 0 || rpm > 0) points.push({ label, time, rpm: Math.round(factor * rpm) })
  }
  return heard && points.length > 0 ? { kind, label, from, to, points } : undefined
}

/** The stretch around `time` s in which a line sounds without a break; undefined where it is silent. */
export function stretchAround(
  h: Hearing,
  label: 'A' | 'B',
  time: number,
): { from: number; to: number } | undefined {
  const rpm = h.tracks.find((t) => t.label === label)?.rpm
  if (!rpm || rpm.length === 0) return undefined
  const at = Math.min(rpm.length - 1, Math.max(0, Math.round(time / h.step)))
  if (rpm[at]! <= 0) return undefined
  // a jump of an octave ends the stretch too
  const goesOn = (i: number, k: number) => rpm[k]! > 0 && Math.abs(Math.log(rpm[k]! / rpm[i]!)) < 0.45
  let from = at
  let to = at
  while (from > 0 && goesOn(from, from - 1)) from--
  while (to < rpm.length - 1 && goesOn(to, to + 1)) to++
  return { from: from * h.step, to: to * h.step }
}

/** ln of the speed ratio within which a line let go counts as moved by exactly an octave */
const NEAR_OCTAVE = 0.09

/** What dragging a line from `was` to `to` rev/min means: an octave up, an octave down, or a point of its own. */
export function dragMeans(was: number, to: number): 'twice' | 'half' | 'point' {
  if (!(was > 0 && to > 0)) return 'point'
  const r = Math.log(to / was)
  if (Math.abs(r - Math.LN2) < NEAR_OCTAVE) return 'twice'
  if (Math.abs(r + Math.LN2) < NEAR_OCTAVE) return 'half'
  return 'point'
}

/** All points that hold: those laid singly go before those of a stretch of the same line within half a second. */
export function allLocks(locks: readonly LockedPoint[], marks: readonly HandMark[]): readonly LockedPoint[] {
  const free = (p: LockedPoint) =>
    locks.every((l) => l.label !== p.label || Math.abs(l.time - p.time) >= APART)
  return [...locks, ...marks.flatMap((m) => m.points.filter(free))]
}
