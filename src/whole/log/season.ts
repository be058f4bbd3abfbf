/** A season: the runs of a log, the craft's versions between its changes, and how pull, engine speed and top speed moved. */
import { inMinutes } from '../../base/answers/amounts.ts'
import { type Sentence, say } from '../../base/answers/sentence.ts'
import { fromSi } from '../../base/units/convert.ts'
import { lineChart } from '../../drawing/chart.ts'
import type { ChartSeries } from '../../drawing/chartSpec.ts'
import { stacked } from '../../drawing/compose.ts'
import { seriesColours } from '../../drawing/palette.ts'
import type { Sheet } from '../../drawing/sheet.ts'
import { inLook, type Look, metricLook } from '../push/shown.ts'
import { comparable } from './compare.ts'
import { type CraftLog, type CraftLogEntry, changesBetween, entrySays, runsOf } from './craftLog.ts'
import { numbersOf } from './readings.ts'

/** A run in its season. Numbers are SI and NaN where the run left none. */
export interface SeasonRun {
  run: CraftLogEntry
  /** from 1; a run with changes before it begins a new one */
  version: number
  /** what changed since the run before */
  changes: readonly CraftLogEntry[]
  pull: number
  rotation: number
  topSpeed: number
  /** running time up to and with this run, s; NaN as long as none was written down */
  hours: number
}

export interface Season {
  runs: readonly SeasonRun[]
  says: Sentence
}

/** The season of a log; all of it, or one year's runs. */
export function seasonOf(log: CraftLog, year?: string): Season {
  const runs = runsOf(log).filter((r) => year === undefined || r.entry.at.startsWith(year))
  let version = 0
  let before = 0
  let hours = Number.NaN
  const list = runs.map((run): SeasonRun => {
    const changes = changesBetween(log, before, run.number)
    if (version === 0 || changes.length > 0) version++
    before = run.number
    const time = numbersOf(run.entry).values['time']
    if (time !== undefined) hours = (Number.isNaN(hours) ? 0 : hours) + time
    const { pull, 'engine speed': rotation, 'top speed': topSpeed } = comparable(run)
    return {
      run,
      version,
      changes,
      pull: pull ?? Number.NaN,
      rotation: rotation ?? Number.NaN,
      topSpeed: topSpeed ?? Number.NaN,
      hours,
    }
  })
  return { runs: list, says: seasonSays(list) }
}

function seasonSays(runs: readonly SeasonRun[]): Sentence {
  const last = runs.at(-1)
  if (!last) return 'No run stands in the log yet.'
  const count = runs.length === 1 ? '1 run' : `${runs.length} runs`
  const versions = last.version === 1 ? 'one version of the craft' : `${last.version} versions of the craft`
  return last.hours > 0
    ? say`${count} of ${versions}, ${inMinutes(last.hours)} of running.`
    : say`${count} of ${versions}; no running time was written down.`
}

/** What changed before a run, in words; '' where nothing did. */
export const changedSays = (run: SeasonRun): string => run.changes.map(entrySays).join('; ')

const panels = [
  ['pull', 'force', 'Pull, tied up'],
  ['rotation', 'rotation', 'Engine speed, tied up'],
  ['topSpeed', 'speed', 'Top speed'],
] as const

const shownIn = (si: number, kind: 'force' | 'rotation' | 'speed', look: Look): number =>
  kind === 'rotation' ? fromSi(si, 'rotation', 'rpm') : inLook(si, kind, look)

/** Pull, engine speed and top speed over the runs, each in a panel of its own, a version a line of its own. Undefined without a number. */
export function seasonFigure(season: Season, look: Look = metricLook): Sheet | undefined {
  const sheets = panels.flatMap(([key, kind, title]): Sheet[] => {
    const known = season.runs.flatMap((r, i) => (Number.isFinite(r[key]) ? [{ r, x: i + 1 }] : []))
    if (known.length === 0) return []
    const versions = [...new Set(known.map(({ r }) => r.version))]
    const unit = kind === 'force' ? look.force : kind === 'speed' ? look.speed : 'rpm'
    const series = versions.map((version, i): ChartSeries => {
      const own = known.filter(({ r }) => r.version === version)
      return {
        name: `version ${version}`,
        x: own.map(({ x }) => x),
        y: own.map(({ r }) => shownIn(r[key], kind, look)),
        colour: seriesColours[i % seriesColours.length]!,
        signs: false,
        label: false,
      }
    })
    const markers = known.map(({ r, x }) => ({
      x,
      y: shownIn(r[key], kind, look),
      shape: 'circle' as const,
      colour: seriesColours[versions.indexOf(r.version) % seriesColours.length]!,
      ...(known.find((k) => k.r.version === r.version)?.x === x ? { label: `v${r.version}` } : {}),
    }))
    return [
      lineChart({
        title,
        says: `${title} over ${known.length} runs.`,
        width: look.width,
        height: 52,
        x: { label: 'run', unit: '', min: 0.5, max: season.runs.length + 0.5 },
        y: { label: title, unit },
        series,
        markers,
      }),
    ]
  })
  if (sheets.length === 0) return undefined
  return stacked(sheets, 3, 'The season', 'Pull, engine speed and top speed over the runs of the season.')
}
