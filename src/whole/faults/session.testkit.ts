/** Hearings made by hand for tests: stretches of speed with the events a hearing would tell. */
import type { Hearing, Track } from '../../trades/sound/hearingTypes.ts'
import type { RunEvent } from '../../trades/sound/shaftEvents.ts'

/** Speeds in rev/min over s, one list a label; a speed of 0 is silence. */
export interface Stretch {
  to: number
  a: number
  b?: number
}

export const event = (kind: string, time: number, more: Partial<RunEvent> = {}): RunEvent => ({
  kind: kind as RunEvent['kind'],
  time,
  lasts: 0,
  engine: 'A',
  says: kind,
  confidence: 0.85,
  ...more,
})

/** A hearing of stretches one after another, speeds wavering by a third of a per cent. */
export function heardStretches(stretches: readonly Stretch[], events: readonly RunEvent[] = []): Hearing {
  const step = 0.025
  const duration = stretches.at(-1)!.to
  const n = Math.round(duration / step)
  const two = stretches.some((s) => (s.b ?? 0) > 0)
  const track = (label: 'A' | 'B', pick: (s: Stretch) => number): Track => {
    const rpm = Float32Array.from({ length: n }, (_, i) => {
      const s = stretches.find((x) => i * step < x.to) ?? stretches.at(-1)!
      return pick(s) * (1 + 0.003 * Math.sin(i))
    })
    return {
      label,
      rpm,
      firing: rpm.map((r) => r / 60),
      confidence: rpm.map((r) => (r > 0 ? 0.85 : 0)),
      change: rpm.map(() => 0),
    }
  }
  const tracks = [track('A', (s) => s.a), ...(two ? [track('B', (s) => s.b ?? 0)] : [])]
  return {
    duration,
    step,
    time: Float32Array.from({ length: n }, (_, i) => i * step),
    tracks,
    count: new Uint8Array(n),
    events: [...events],
    quality: [],
    verdict: { code: two ? 'two' : 'one', says: '', coupling: two ? 'independent' : 'one line' },
    octaves: [],
    labelsUncertainAfter: [],
    spectrogram: { timeStep: 1, hertzStep: 1, columns: 0, rows: 0, level: new Uint8Array(0) },
    flags: [],
    cancelled: false,
  }
}
