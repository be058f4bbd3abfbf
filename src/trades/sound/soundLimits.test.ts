import { expect, test } from 'vitest'
import type { Finding } from '../../base/answers/finding.ts'
import { deafLimits } from '../../base/answers/limit.testkit.ts'
import { printed, type Sentence } from '../../base/answers/sentence.ts'
import type { Craft } from '../../craft/index.ts'
import { firingReads, verdictOf } from './conclude.ts'
import { withExpected } from './expecting.ts'
import { fallEvents } from './falls.ts'
import { between, contextOf, trackOf } from './frames.testkit.ts'
import { isMatch } from './gpx.ts'
import { isUnsure } from './heardAnswer.ts'
import type { Hearing } from './hearingTypes.ts'
import { loadEvents } from './loadEvents.ts'
import { readPull } from './pull.ts'
import { comparedSpeeds } from './residuals.ts'
import {
  oneDead,
  openedCouplings,
  type RunEvent,
  runningEvents,
  sharedFlares,
  waterHits,
} from './shaftEvents.ts'
import { onSharedShaft } from './sharedShaft.ts'
import { heardTracks, steadyTrack, toldOfRun } from './sound.testkit.ts'
import type { RunKnown } from './soundFindings.ts'
import { expectsOf } from './soundFromCraft.ts'
import { type SoundLimits, soundLimits } from './soundLimits.ts'
import { speedEvents } from './speedEvents.ts'

/** Anything a limit decides, as a finding whose id is its words: a sentence that says something else is another verdict. */
const saying = (...all: readonly (Sentence | boolean | number)[]): Finding[] =>
  all.map((says) => ({
    id: typeof says === 'string' || typeof says === 'object' ? printed(says) : String(says),
    question: 'runs',
    says: '',
    standing: 'good',
    because: [],
    sources: [],
  }))
type Judge = (limits: SoundLimits) => Finding[]

const kinds = (events: readonly RunEvent[]) => saying(...events.map((e) => `${e.kind} ${printed(e.says)}`))
type Line = (t: number) => number
const rising = (line: Line): Judge => {
  const t = trackOf(14, line)
  return (limits) => kinds(speedEvents(t, 'A', contextOf(t.rate.length, limits)))
}
const falling = (line: Line): Judge => {
  const t = trackOf(14, line)
  return (limits) => kinds(fallEvents(t, 'A', contextOf(t.rate.length, limits)))
}
const running = (line: Line, confidence = 1): Judge => {
  const t = trackOf(6, line)
  return (limits) => {
    const c = contextOf(t.rate.length, limits)
    return kinds(runningEvents(t, 'A', { ...c, confidence: c.confidence.fill(confidence) }))
  }
}
const race = (top: number, from = 6, lasts = 1, before = 100) =>
  rising(
    (t) =>
      100 +
      (before - 100) * between(t, from - 2, from - 1.9) +
      (top - before) * between(t, from, from + 0.2) -
      (top - 100) * between(t, from + lasts, from + lasts + 0.3),
  )
/** opened at 2 s, down to `low` for a moment, up again to `back` until `until` */
const bog = (low: number, back = 90, until = 9) =>
  rising(
    (t) =>
      40 +
      50 * between(t, 2, 2.4) +
      (low - 90) * between(t, 2.4, 2.7) +
      (back - low) * between(t, 2.9, 3.4) -
      (back - 50) * between(t, until, until + 0.3),
  )
const dip = (low: number, lasts: number, takes = 0.3) =>
  falling(
    (t) =>
      100 - (100 - low) * (between(t, 4, 4 + takes) - between(t, 4 + takes + lasts, 4.3 + takes + lasts)),
  )

const loading = (line: Line): Judge => {
  const t = trackOf(14, line)
  return (limits) => kinds(loadEvents(t, 'A', contextOf(t.rate.length, limits)))
}
/** pulls at `before` Hz, races to `top` in `takes` s at 6 s and stays there */
const lost = (before: number, top: number, takes = 0.3) =>
  loading((t) => before + (top - before) * between(t, 6, 6 + takes))
const swinging = (by: number, period: number, count = 6) =>
  loading(
    (t) => 45 * (1 + (t > 2 && t < 2 + count * period ? by * Math.sin((2 * Math.PI * (t - 2)) / period) : 0)),
  )
const deadShaft =
  (after: number, roots = {}): Judge =>
  (limits) =>
    onSharedShaft(
      [{ ...stop, kind: 'fall', before: 100, after, value: after }],
      { engines: 2, coupling: 'one shaft' },
      roots,
      limits,
    ).map((e) => saying(`${e.kind} ${e.confidence}`)[0]!)

const spray = (limits: SoundLimits) => {
  const t = trackOf(6, (time) => 100 - 25 * between(time, 3, 3.15))
  const c = contextOf(t.rate.length, limits)
  c.hiss.fill(1)
  c.hiss[124] = 30
  return kinds(waterHits(t, 'A', c))
}
const stop: RunEvent = { kind: 'stop', time: 3, lasts: 0, engine: 'A', says: '', confidence: 1 }
const dead: Judge = (limits) => {
  const left = trackOf(6, (t) => 100 - 8 * between(t, 3, 3.4))
  return kinds(
    oneDead(
      trackOf(6, (t) => (t < 3 ? 100 : 0)),
      left,
      [stop],
      60,
      limits,
    ),
  )
}
const flare = (engine: 'A' | 'B', time: number): RunEvent => ({ ...stop, kind: 'flare', engine, time })
const shared: Judge = (limits) => kinds(sharedFlares([flare('A', 5), flare('B', 5.3)], limits))

const words = (found: readonly Finding[]) =>
  found.flatMap((f) => [f, ...saying(f.says, ...f.because.map((b) => b.says), f.measureNext?.what ?? '')])
const told =
  (run: RunKnown): Judge =>
  (limits) =>
    words(toldOfRun(run, limits))
const sure = (confidence: number) => {
  const t = steadyTrack('A', 6000)
  t.confidence.fill(confidence)
  return heardTracks([t])
}
const snatches = steadyTrack('A', 9000)
snatches.rpm.forEach((_, i) => {
  if (i % 100 >= 40) snatches.rpm[i] = 0
})
const event: RunEvent = { ...stop, kind: 'bog', says: 'bogs', confidence: 0.4 }
const prediction = { time: [0], rpm: [6100], low: [6010], high: [6200] }
/** steady for 3 s in the first half, wandering by 2 % in the second */
const wandering = steadyTrack('A', 6000)
for (let i = 200; i < 400; i++) wandering.rpm[i] = 6000 * (1 + 0.02 * Math.sin(i / 20))
const compared =
  (hearing: Hearing, from = 0): Judge =>
  (limits) =>
    saying(
      ...comparedSpeeds(
        {
          hearing,
          prediction: from
            ? { ...prediction, time: [from, 20], rpm: [6100, 6100], low: [6010, 6010], high: [6200, 6200] }
            : prediction,
        },
        limits,
      ).map((r) => `${r.standing} ${r.from} ${r.to} ${r.low}`),
    )
const openOctave = heardTracks([steadyTrack('A', 3150)], {
  octaves: [{ label: 'A', from: 0, to: 10, factor: 2 }],
})
const one = { lines: 'one' as const, apartShare: 0.1, rationalShare: 0.4 }
const redlined = {
  engines: [{ running: true, kind: 'two-stroke', redline: { value: 150 } }],
  drive: { arrangement: 'one shaft', clutch: 'none' },
} as unknown as Craft

const judgements: readonly Judge[] = [
  running((t) => (t < 1 || t > 5.2 ? 0 : 100)),
  running((t) => (t > 1 && t < 1.9 ? 100 : 0)),
  running((t) => (t < 2 || t > 2.4 ? 100 : 0), 0.6),
  running((t) => (t < 2 ? 100 : t > 2.7 ? 102 : 0)),
  running((t) => (t < 2 ? 100 : t > 2.4 ? 120 : 0)),
  running((t) => (t < 4 ? 100 - 9 * between(t, 3.4, 3.8) : 0)),
  // sags for a little over the time that starving takes
  running((t) => (t < 4 ? 100 / (1 + 1.6 * between(t, 3.1, 4)) : 0)),
  race(135),
  race(119),
  race(230),
  race(140, 6, 0.3),
  race(140, 6, 3.5),
  race(135, 6, 1, 88),
  rising((t) => 40 + 40 * between(t, 2, 2.4)),
  bog(70),
  bog(79),
  bog(60, 88),
  bog(60, 90, 5.5),
  dip(75, 2),
  dip(83, 2),
  dip(60, 2),
  dip(70, 5),
  dip(60, 5.5),
  dip(75, 2, 0.9),
  falling((t) => 100 - 8 * between(t, 2.2, 2.4) - 20 * between(t, 4, 4.3)),
  falling((t) => (t < 2.2 ? 0 : 100 - 25 * between(t, 4, 4.3))),
  falling((t) => 100 - 30 * between(t, 4, 4.3) + 23 * between(t, 7, 7.3)),
  lost(58, 90),
  lost(90, 140, 0.62),
  loading((t) => 100 - 37 * between(t, 3, 3.4) + 90 * between(t, 6, 6.3)),
  loading((t) => 90 + 8 * between(t, 6, 6.3)),
  loading((t) => 90 + 20 * between(t, 6, 6.3) - 20 * between(t, 7.15, 7.4)),
  loading((t) => 90 + 9 * between(t, 4, 8)),
  swinging(0.045, 1.2),
  swinging(0.22, 1.2),
  swinging(0.1, 2.8, 4),
  swinging(0.1, 1.2, 3),
  loading((t) => 45 * (1 + (t > 2 ? 0.1 * Math.sin((2 * Math.PI * (t - 2)) / (1 + 0.09 * (t - 2))) : 0))),
  (limits) => {
    const kept = trackOf(8, () => 86)
    const other = trackOf(8, (t) => (t < 4 ? 0 : 92 + 50 * between(t, 4, 4.5)))
    const start = { ...stop, kind: 'start' as const, time: 4, engine: 'B' as const }
    return kinds(openedCouplings(kept, other, [start], { rpmPerHertz: 60, limits }))
  },
  deadShaft(57),
  deadShaft(88),
  deadShaft(76, { oneDead: { low: 0.6, high: 0.72 } }),
  deadShaft(76),
  spray,
  dead,
  shared,
  told({ hearing: sure(0.9) }),
  told({ hearing: sure(0.6) }),
  told({ hearing: heardTracks([snatches]) }),
  told({ hearing: heardTracks([steadyTrack('A', 6000)], { duration: 1.5 }) }),
  told({ hearing: heardTracks([steadyTrack('A', 6000)], { events: [event] }) }),
  (limits) => saying(isUnsure(event, limits)),
  (limits) => saying(verdictOf(one, 'auto', 0.4, limits).code),
  (limits) =>
    saying(
      firingReads(0, { weak: 0.05, nextCorrelation: 0 }, limits),
      firingReads(0, { weak: 0.07, nextCorrelation: 0 }, limits),
      firingReads(10, { weak: 0, nextCorrelation: -0.4 }, limits),
      firingReads(14, { weak: 0, nextCorrelation: 0 }, limits),
    ),
  compared(heardTracks([wandering])),
  compared(heardTracks([steadyTrack('A', 6000)]), 1),
  compared(sure(0.52)),
  told({ hearing: heardTracks([steadyTrack('A', 4700)]), prediction }),
  (limits) =>
    saying(
      withExpected(
        openOctave,
        { engines: 1, coupling: 'single' },
        { ...prediction, low: [6400], high: [6600] },
        limits,
      ).tracks[0]!.rpm[0]!,
    ),
  (limits) => saying(expectsOf(redlined, limits).most!),
  (limits) => saying(isMatch({ correlation: 0.55, second: 0.45 }, limits)),
  (limits) => {
    const read = readPull([21, 22, 23], 0, limits)!
    return saying(read.force.low, readPull([21, 22], 0, limits)!.force.low)
  },
  (limits) =>
    words(
      toldOfRun(
        {
          hearing: sure(0.9),
          pull: { read: readPull([21, 22, 23])!, predicted: { value: 216, low: 200, high: 230 } },
        },
        limits,
      ),
    ),
]

test('every limit, moved, changes which events are told, how the answer is worded, or how a finding stands', () => {
  expect(deafLimits(soundLimits, judgements)).toEqual([])
})
