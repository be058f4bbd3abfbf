/** Where along a line of pitches a design does best, and which pitches do about as well: on the craft as written, or over all draws. */
import type { Design } from './design.ts'
import { alongLine, none, type OnDraws } from './designDraws.ts'
import { bestOf, curveOf, type Drawn, type Line, meanMeritOf, pitched, topOf } from './designSearch.ts'
import type { PitchBand } from './designTypes.ts'
import { rightWithin } from './pitchScan.ts'

/** The best pitch of a line, with the pitches that do as well. */
export interface Place {
  design: Design
  merit: number
  band: PitchBand
  at: (pitch: number) => OnDraws
}

export function placeOfLine(line: Line): Place {
  const { pitch, merit } = bestOf(line)
  const curve = curveOf(line.pitches, line.tried, (t) => t.merit)
  const design = pitched(line.design, pitch)
  return {
    design,
    merit,
    band: { design, ...bandOf(line.pitches, curve, pitch), within: rightWithin },
    at: () => none,
  }
}

export function placesOf(drawn: Drawn): Place[] {
  return drawn.lines.map((line, i) => {
    const mean = meanMeritOf(line)
    const { pitch, merit } = topOf(line.pitches, mean)
    const band = bandOf(line.pitches, mean, pitch)
    const design = pitched(line.design, pitch)
    const ends = drawn.ends.map((e) => ({
      power: e.power,
      merit: curveOf(line.pitches, e.tried[i]!, (t) => t.merit),
    }))
    const within = Math.max(rightWithin, ...ends.map((e) => lostWithin(line.pitches, e.merit, band)))
    const [a, b] = ends.map((e) => e.power) as [number, number]
    const doubtful = Math.abs(b / a - 1) > 0.005
    return {
      design,
      merit,
      band: { design, ...band, within, ...(doubtful ? { power: { low: a, high: b } } : {}) },
      at: (p: number) => alongLine(line, p),
    }
  })
}

function bandOf(pitches: readonly number[], merit: (pitch: number) => number, best: number) {
  const floor = (1 - rightWithin) * merit(best)
  const step = 1.002
  let low = best
  let high = best
  while (low / step > pitches[0]! && merit(low / step) >= floor) low /= step
  while (high * step < pitches.at(-1)! && merit(high * step) >= floor) high *= step
  return { low, high }
}

/** Most that a pitch of the band loses against the best pitch of its line. */
function lostWithin(
  pitches: readonly number[],
  merit: (pitch: number) => number,
  { low, high }: { low: number; high: number },
): number {
  const most = topOf(pitches, merit).merit
  if (!(most > 0)) return 1
  let lost = 0
  for (let k = 0; k <= 8; k++) lost = Math.max(lost, 1 - merit(low * (high / low) ** (k / 8)) / most)
  return lost
}

/** Merit on the craft as written, read off the line the design lies on or, between nozzles or ratios, the nearest. */
export function fittedMerit(lines: readonly Line[], design: Design): number {
  const far = (l: Line) =>
    Math.abs(Math.log(l.design.nozzle / design.nozzle)) +
    Math.abs(Math.log(l.design.ratio / design.ratio)) +
    Math.abs(Math.log(l.design.bore / design.bore)) +
    (l.design.blades === design.blades ? 0 : 10)
  const near = lines.reduce((a, b) => (far(b) < far(a) ? b : a))
  return curveOf(near.pitches, near.tried, (t) => t.merit)(design.pitch)
}
