import type { LivePoint } from '../../../../trades/sound/listener.ts'

type Label = 'A' | 'B'

/** s a speed must be held to count: a burst as the hand slips is no speed of the craft */
export const HELD = 1

interface Line {
  /** the speeds of the last second: time, s, and rev/min */
  recent: { time: number; rpm: number }[]
  highest?: number
}

/** The highest speed that each engine held for a second so far, rev/min. */
export type Highest = Partial<Record<Label, Line>>

/** Goes through live points in order; an engine that is not heard for a while begins its second anew. */
export function holdHighest(all: Highest, point: LivePoint): void {
  for (const label of ['A', 'B'] as const) {
    const engine = point.engines.find((e) => e.label === label)
    const line = (all[label] ??= { recent: [] })
    if (!engine) {
      line.recent = []
      continue
    }
    line.recent.push({ time: point.time, rpm: engine.rpm })
    const since = point.time - HELD
    // the last point before the second keeps it whole
    while (line.recent.length > 1 && line.recent[1]!.time <= since) line.recent.shift()
    if (line.recent[0]!.time > since + 1e-9) continue
    const held = Math.min(...line.recent.map((r) => r.rpm))
    if (line.highest === undefined || held > line.highest) line.highest = held
  }
}
