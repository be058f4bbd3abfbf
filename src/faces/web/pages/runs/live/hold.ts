import type { LivePoint } from '../../../../../trades/sound/listener.ts'

/** confidence below which a speed is not shown */
const SHOWN = 0.35
/** s a line must have lasted before it is shown: a shout is over sooner */
const LASTS = 1
/** s a line may be lost in between */
const GAP = 0.4

type Label = 'A' | 'B'

/** Since when each line has been heard, and when last, s. */
export type Held = Partial<Record<Label, { since: number; last: number }>>

/** Goes through live points in order and leaves in each only the engines that have lasted; `held` is kept up to date. */
export function lasting<P extends LivePoint>(held: Held, point: P): P {
  const engines = point.engines.filter((e) => {
    if (e.confidence <= SHOWN) return false
    const before = held[e.label]
    const goesOn = before !== undefined && point.time - before.last <= GAP
    const since = goesOn ? before.since : point.time
    held[e.label] = { since, last: point.time }
    return point.time - since >= LASTS
  })
  return { ...point, engines }
}
