/**
 * Which speeds of an engine to simulate: from idle to the redline, so that no load line meets it outside its curve, closer round
 * the speed its pipe is tuned for (G. P. Blair, Design and Simulation of Two-Stroke Engines (1996), tuned length, see tuning.ts).
 * A redline left out is taken from the mean piston speed that engines of its kind stand: about 12 to 15 m/s for utility engines, 16 to
 * 20 for motorcycles, 20 to 25 for racing (Blair 1996; C. F. Taylor, The Internal-Combustion Engine in Theory and Practice (1968)), from memory.
 */
import type { Segment } from '../../physics/gas/ductMesh.ts'
import type { TwoStrokeSpec } from './engineSpec.ts'
import { meanPistonSpeed } from './geometry.ts'

/** mean piston speed at a redline that nobody gave, m/s, by what the engine was built for */
export const pistonSpeedAtRedline = { utility: 15, sport: 18, race: 21 } as const

/** mean piston speed beyond which nothing is simulated, m/s: just inside what a run is refused for */
const mostPistonSpeed = 25.5

/** Redline, rev/s, of an engine whose file gives none; stroke m. */
export function usualRedline(stroke: number, tune: keyof typeof pistonSpeedAtRedline): number {
  return pistonSpeedAtRedline[tune] / (2 * stroke)
}

/** Length from piston face to the end of the last narrowing cone, m: the tuned length; undefined for a plain pipe. */
export function tunedLength(pipe: readonly Segment[]): number | undefined {
  let at = 0
  let end: number | undefined
  for (const s of pipe) {
    at += s.length
    if (s.d1 < 0.97 * s.d0) end = at
  }
  return end
}

/** Speed the pipe is tuned for by the handbook, rev/min; undefined for a plain pipe. */
export function tunedSpeed(s: TwoStrokeSpec): number | undefined {
  const length = tunedLength(s.pipe)
  const open = (2 * (Math.PI - s.exhaust.opens) * 180) / Math.PI
  return length === undefined ? undefined : (83.3e-3 * 560 * open) / length
}

export interface SpeedSpan {
  /** rev/s */
  idle: number
  redline: number
}

/** shares of the tuned speed that are looked at closely */
const close = { from: 0.64, to: 1.16 }

/**
 * Speeds to simulate, rev/min, rising, idle and redline among them: some fifteen, or about nine for a first coarse look.
 * A redline below idle counts as half above it.
 */
export function speedsToRun(s: TwoStrokeSpec, span: SpeedSpan, coarse = false): number[] {
  const low = 60 * span.idle
  const high = Math.min(
    Math.max(60 * span.redline, 1.5 * low),
    mostPistonSpeed / meanPistonSpeed(s.crank.stroke, 1),
  )
  const peak = tunedSpeed(s)
  const from = peak === undefined ? low : Math.max(low, close.from * peak)
  const to = peak === undefined ? high : Math.min(high, close.to * peak)
  // a pipe tuned for a speed that the engine never sees is as good as plain
  const tuned = peak !== undefined && to > 1.15 * from
  const stretches: [from: number, to: number, steps: number][] = tuned
    ? [
        [low, from, coarse ? 2 : 4],
        [from, to, coarse ? 5 : 9],
        [to, high, 1],
      ]
    : [[low, high, coarse ? 7 : 12]]
  const rpms = stretches.flatMap(([a, b, most]) => {
    // no closer than half the usual step
    const steps = Math.max(1, Math.min(most, Math.floor((b - a) / (coarse ? 350 : 200))))
    return b - a < 100 ? [a] : Array.from({ length: steps + 1 }, (_, k) => a + ((b - a) * k) / steps)
  })
  return [...new Set([...rpms, high].map((n) => Math.round(n / 10) * 10))].sort((a, b) => a - b)
}
