/** A run as tables of numbers: each engine, speed over time, and heard beside predicted. */
import { asChange, inCount, inPercent, inSeconds } from '../../base/answers/amounts.ts'
import { clockText } from '../../base/answers/clockText.ts'
import type { NumberTable } from '../trade.ts'
import type { HeardEngine } from './heardAnswer.ts'
import type { Hearing } from './hearingTypes.ts'
import { type Residual, readsAs } from './residuals.ts'
import { atRpm } from './saySpeed.ts'

/** rows of a table that is for reading: longer runs have fewer rows a second */
const MOST_ROWS = 40

/** Each engine's numbers, and how evenly it fired. */
export function enginesTable(h: Hearing, heard: readonly HeardEngine[]): NumberTable {
  return {
    caption: 'Engines',
    heads: ['Engine', 'Usual speed', 'Heard for', 'Confidence', 'Firing', 'Blade-pass slip'],
    rows: heard.map((e) => {
      const blade = h.bladePass?.label === e.label ? h.bladePass : undefined
      const firing = new Set(h.quality.filter((q) => q.label === e.label).map((q) => q.reads))
      return [
        e.label,
        atRpm(e.usual),
        inSeconds(e.part * h.duration),
        inPercent(Math.min(0.99, e.confidence)),
        [...firing].join(', ') || 'not told apart',
        blade && Number.isFinite(blade.slip) ? inPercent(blade.slip, 0.1) : 'not audible',
      ]
    }),
  }
}

/** Speed over time, a row a second at most. */
export function speedTable(h: Hearing, heard: readonly HeardEngine[]): NumberTable {
  const tracks = h.tracks.filter((t) => heard.some((e) => e.label === t.label))
  const seconds = Math.ceil(h.duration)
  const every = Math.max(1, Math.ceil(seconds / MOST_ROWS))
  const per = Math.round(1 / h.step)
  return {
    caption: 'Speed over time',
    heads: ['Time', 'Engines', ...tracks.map((t) => `Engine ${t.label}`)],
    rows: Array.from({ length: Math.floor(seconds / every) + 1 }, (_, k) => {
      const i = Math.min(h.time.length - 1, k * every * per)
      return [
        clockText(k * every),
        inCount(h.count[i] ?? 0),
        ...tracks.map((t) => ((t.rpm[i] ?? 0) > 0 ? atRpm(t.rpm[i]!) : '–')),
      ]
    }),
  }
}

/** Every steady stretch beside what was predicted for it. */
export function besideTable(list: readonly Residual[]): NumberTable {
  const off = (part: number) => asChange(inPercent(part, 0.1))
  return {
    caption: 'Heard against predicted',
    heads: ['Engine', 'From', 'To', 'Heard', 'Predicted', 'Off by', 'No surprise from', 'to', 'Reads'],
    rows: list.map((r) => [
      r.label,
      clockText(r.from),
      clockText(r.to),
      atRpm(r.heard),
      atRpm(r.predicted),
      off(r.part),
      off(r.low),
      off(r.high),
      readsAs[r.standing],
    ]),
  }
}
