/** A run as pictures and sentences: the recording with the tracks on it, and what the engines did. */
import { printed, say } from '../../base/answers/sentence.ts'
import { alongAxis } from '../../drawing/axes.ts'
import { lineChart } from '../../drawing/chart.ts'
import { heatChart } from '../../drawing/heatMap.ts'
import { line, polyline, rectangle, text } from '../../drawing/marks.ts'
import { ink, inkOf, okabeIto, quiet } from '../../drawing/palette.ts'
import type { Mark, Plot, PlotSeries, Sheet } from '../../drawing/sheet.ts'
import type { Hearing, Spectrogram, Track } from './hearingTypes.ts'
import type { Prediction } from './residuals.ts'
import { atRpm, percentile } from './saySpeed.ts'

/** Colours that show on the spectrogram's pale and dark parts alike; inside a white rim. */
export const engineColour: Record<'A' | 'B', string> = { A: okabeIto.blue, B: okabeIto.vermillion }

/** Columns of the picture at most; a screen shows no more. */
const MOST_COLUMNS = 1400

export interface RunPicture {
  width: number
  spectrogram: Spectrogram
  /** rev/min of one firing a second */
  rpmPerHertz: number
  /** absent while the recording is still being listened to */
  hearing?: Hearing
  /** s of recording shown; the whole when left out */
  from?: number
  to?: number
}

/** Highest speed on the picture, rev/min: above every track with room for the second line of the comb. */
function topSpeed(p: RunPicture): number {
  const most = Math.max(0, ...(p.hearing?.tracks ?? []).flatMap((t) => percentile(t.rpm, 0.98)))
  const picture = (p.spectrogram.rows - 1) * p.spectrogram.hertzStep * p.rpmPerHertz
  return Math.min(picture, most > 0 ? Math.ceil((1.7 * most) / 1000) * 1000 : 250 * p.rpmPerHertz)
}

/**
 * The spectrogram with its frequency told as the speed of an engine that fires at it, the tracks on it, and under it how
 * many engines ran. Time in s along x.
 */
export function runPicture(p: RunPicture): Sheet {
  const { spectrogram: s, hearing: h } = p
  const duration = h?.duration ?? s.columns * s.timeStep
  const from = Math.max(0, p.from ?? 0)
  const to = Math.max(from + 0.5, Math.min(duration, p.to ?? duration))
  const top = topSpeed(p)
  const rows = Math.max(2, Math.min(s.rows, Math.ceil(top / p.rpmPerHertz / s.hertzStep)))
  const first = Math.floor(from / s.timeStep)
  const last = Math.max(first + 1, Math.min(s.columns, Math.ceil(to / s.timeStep)))
  const cols = Math.max(1, Math.min(MOST_COLUMNS, last - first))
  const values = new Float32Array(cols * rows)
  for (let c = 0; c < cols; c++) {
    const a = first + Math.floor((c * (last - first)) / cols)
    const b = Math.max(a + 1, first + Math.floor(((c + 1) * (last - first)) / cols))
    for (let r = 0; r < rows; r++) {
      let most = 0
      for (let k = a; k < b; k++) most = Math.max(most, s.level[k * s.rows + r] ?? 0)
      values[r * cols + c] = most / 2
    }
  }
  const ends = levelEnds(values)
  const strip = h ? 13 : 0
  const says = h ? h.verdict.says : 'The recording as it is; the engines are still being looked for.'
  const heat = heatChart({
    title: 'What was heard',
    says,
    width: p.width,
    height: Math.max(70, Math.min(105, 0.55 * p.width)),
    x: { label: 'time', unit: 's', min: from, max: to },
    y: {
      label: 'speed of an engine that fires here',
      unit: 'rpm',
      min: 0,
      max: rows * s.hertzStep * p.rpmPerHertz,
    },
    level: { label: 'level', unit: 'dB', min: 0, max: ends.high - ends.low },
    values: values.map((v) => v - ends.low),
    cols,
    rows,
  })
  heat.marks = heat.marks.map(inGrey)
  if (!h) return heat
  const plot = heat.plots![0]!
  const series = h.tracks.map((t) => seriesOf(t, h, from, to))
  const raised: Plot = { ...plot, bottom: plot.bottom + strip, top: plot.top + strip, series }
  const marks: Mark[] = [
    ...heat.marks.map((m) => lifted(m, strip)),
    ...perhapsMarks(h, raised),
    ...h.tracks.flatMap((t) => trackMarks(t, h, raised)),
    ...trackNames(h, raised),
    ...countStrip(h, plot),
  ]
  return { ...heat, height: heat.height + strip, marks, plots: [raised] }
}

/** The picture in greys, so that the coloured lines on it stand out; the map's lightness falls evenly, so nothing is lost. */
function inGrey(m: Mark): Mark {
  if (m.kind !== 'image') return m
  const rgb = m.rgb.slice()
  for (let i = 0; i < rgb.length; i += 3) {
    const light = 0.3 * rgb[i]! + 0.59 * rgb[i + 1]! + 0.11 * rgb[i + 2]!
    // never quite black: the white rim of a line keeps it readable on any level
    rgb.fill(40 + (215 * light) / 255, i, i + 3)
  }
  return { ...m, rgb }
}

/** Levels between which the colours run: most of the noise stays pale, the strongest lines are dark. */
function levelEnds(values: Float32Array): { low: number; high: number } {
  const sorted = values.slice().sort()
  const low = sorted[Math.floor(0.35 * sorted.length)] ?? 0
  const high = sorted[Math.floor(0.997 * sorted.length)] ?? 0
  return { low, high: Math.max(low + 12, high) }
}

function lifted(m: Mark, dy: number): Mark {
  switch (m.kind) {
    case 'polyline':
    case 'polygon':
      return { ...m, points: m.points.map((v, i) => (i % 2 === 0 ? v : v + dy)) }
    case 'arc':
      return { ...m, cy: m.cy + dy }
    default:
      return { ...m, y: m.y + dy }
  }
}

function seriesOf(t: Track, h: Hearing, from: number, to: number): PlotSeries {
  const every = Math.max(1, Math.floor((to - from) / h.step / 3000))
  const x: number[] = []
  const y: number[] = []
  const end = Math.min(t.rpm.length, Math.ceil(to / h.step) + 1)
  for (let i = Math.max(0, Math.floor(from / h.step)); i < end; i += every) {
    x.push(h.time[i]!)
    y.push(t.rpm[i]! > 0 ? t.rpm[i]! : Number.NaN)
  }
  return { name: `engine ${t.label}`, x, y, colour: engineColour[t.label], tried: false }
}

/** A track with a white rim, broken where the engine was not heard. */
function trackMarks(t: Track, h: Hearing, plot: Plot): Mark[] {
  const colour = engineColour[t.label]
  const x = alongAxis(plot.x, plot.left, plot.right)
  const y = alongAxis(plot.y, plot.bottom, plot.top)
  const marks: Mark[] = []
  let points: number[] = []
  const flush = () => {
    if (points.length >= 4) {
      marks.push(polyline(points, { stroke: '#ffffff', width: 1.2 }, 'data'))
      marks.push(polyline(points, { stroke: colour, width: 0.6 }, 'data', `engine ${t.label}`))
    }
    points = []
  }
  // no more points than the paper shows
  const every = Math.max(
    1,
    Math.floor(((plot.x.max - plot.x.min) / h.step) * (0.15 / (plot.right - plot.left))),
  )
  for (let i = 0; i < t.rpm.length; i += every) {
    const time = h.time[i]!
    const rpm = t.rpm[i]!
    if (rpm > 0 && time >= plot.x.min && time <= plot.x.max && rpm <= plot.y.max) points.push(x(time), y(rpm))
    else flush()
  }
  flush()
  return marks
}

/** What may have been an engine, thin and grey. */
function perhapsMarks(h: Hearing, plot: Plot): Mark[] {
  const x = alongAxis(plot.x, plot.left, plot.right)
  const y = alongAxis(plot.y, plot.bottom, plot.top)
  return (h.perhaps ?? []).flatMap((p) => {
    const points: number[] = []
    p.rpm.forEach((rpm, i) => {
      const time = p.from + i * h.step
      if (time >= plot.x.min && time <= plot.x.max && rpm <= plot.y.max) points.push(x(time), y(rpm))
    })
    return points.length < 4
      ? []
      : [polyline(points, { stroke: quiet, width: 0.25 }, 'data', 'perhaps an engine')]
  })
}

/** mm a name takes: its length, and its height with some air */
const NAME_LONG = 17
const NAME_HIGH = 3.4
/** mm between a name's foot and its line, above or below */
const OFF = [2, -4.4]

interface Place {
  at: number
  foot: number
}

/** The names of the tracks, each where the lines and the names before it leave it room. */
function trackNames(h: Hearing, plot: Plot): Mark[] {
  const taken: Place[] = []
  return h.tracks.flatMap((t) => {
    const place = namePlace(t, h, plot, taken)
    if (!place) return []
    taken.push(place)
    const name = h.tracks.length > 1 ? `engine ${t.label}` : 'engine'
    const look = { colour: inkOf(engineColour[t.label]), bold: true, halo: true, layer: 'data' as const }
    return [text(place.at, place.foot, name, look)]
  })
}

function namePlace(t: Track, h: Hearing, plot: Plot, taken: readonly Place[]): Place | undefined {
  const x = alongAxis(plot.x, plot.left, plot.right)
  const y = alongAxis(plot.y, plot.bottom, plot.top)
  const end = plot.right - NAME_LONG
  const indexAt = (mm: number) => {
    const part = (mm - plot.left) / (plot.right - plot.left)
    return Math.round((plot.x.min + part * (plot.x.max - plot.x.min)) / h.step)
  }
  const heightAt = (track: Track, mm: number) => {
    const rpm = track.rpm[indexAt(mm)] ?? 0
    return rpm > 0 && rpm <= plot.y.max ? y(rpm) : undefined
  }
  /** least distance of any line from a name whose foot stands at `foot` */
  const room = (at: number, foot: number) => {
    let least = Math.min(foot - plot.bottom, plot.top - foot - NAME_HIGH)
    for (const p of taken)
      if (Math.abs(p.at - at) < NAME_LONG) least = Math.min(least, Math.abs(p.foot - foot) - NAME_HIGH)
    for (const other of h.tracks)
      for (let mm = at; mm <= at + NAME_LONG; mm += 1) {
        const line = heightAt(other, mm)
        if (line !== undefined) least = Math.min(least, Math.max(foot - line, line - foot - NAME_HIGH))
      }
    return least
  }
  let best: (Place & { free: number }) | undefined
  for (let at = plot.left + 1.5; at < end; at += (end - plot.left) / 40) {
    const line = heightAt(t, at)
    if (line === undefined) continue
    for (const off of OFF) {
      const free = Math.min(OFF[0]!, room(at, line + off))
      // the first of the places that are free enough
      if (!best || free > best.free + 0.2) best = { at, foot: line + off, free }
    }
  }
  if (best) return best
  // on a very short line any place will do
  const i = t.rpm.findIndex((rpm, k) => rpm > 0 && h.time[k]! >= plot.x.min && h.time[k]! <= plot.x.max)
  return i < 0 ? undefined : { at: Math.min(x(h.time[i]!), end), foot: y(t.rpm[i]!) + OFF[0]! }
}

/** Engines running at each moment, as bars one and two high, on the same time axis. */
function countStrip(h: Hearing, plot: Plot): Mark[] {
  const x = alongAxis(plot.x, plot.left, plot.right)
  const base = 1.2
  const tall = 3.4
  const marks: Mark[] = [
    text(plot.left, base + 2 * tall + 1.1, 'engines running', { size: 2.7, colour: quiet }),
    text(plot.left - 1.4, base + 0.4 * tall, '1', { size: 2.7, anchor: 'end', colour: quiet }),
    text(plot.left - 1.4, base + 1.3 * tall, '2', { size: 2.7, anchor: 'end', colour: quiet }),
  ]
  const from = Math.max(0, Math.floor(plot.x.min / h.step))
  const to = Math.min(h.count.length, Math.ceil(plot.x.max / h.step))
  for (let i = from; i < to; ) {
    let k = i
    while (k < to && h.count[k] === h.count[i]) k++
    const n = h.count[i]!
    if (n > 0) {
      const left = x(Math.max(plot.x.min, i * h.step))
      const right = x(Math.min(plot.x.max, k * h.step))
      marks.push(
        rectangle(left, base, right - left, n * tall, { fill: n > 1 ? '#8fa8b8' : '#c9d3d9' }, 'fill'),
      )
    }
    i = k
  }
  marks.push(line(plot.left, base, plot.right, base, { stroke: ink, width: 0.25 }, 'axis'))
  return marks
}

/** Heard speeds over time beside the predicted band; arrays thinned to what paper shows. */
export function besidePicture(h: Hearing, p: Prediction | undefined, width: number): Sheet {
  const every = Math.max(1, Math.floor(h.time.length / 900))
  const thin = (v: Float32Array) => Array.from(v).filter((_, i) => i % every === 0)
  const time = thin(h.time)
  const whose = h.tracks.length > 1 ? 'both engines' : 'the engine'
  const beside = p ? say` beside the speed predicted for full throttle, ${atRpm(p.rpm[0]!)} at the start` : ''
  return lineChart({
    title: p ? 'Heard and predicted speed' : 'Heard speed',
    says: printed(say`Heard speed of ${whose} over time${beside}.`),
    width,
    height: Math.max(62, Math.min(80, 0.45 * width)),
    x: { label: 'time', unit: 's', min: 0, max: h.duration },
    y: { label: 'engine speed', unit: 'rpm', include: [0] },
    series: [
      ...(p ? [predictedSeries(p, h.duration)] : []),
      ...h.tracks.map((t) => ({
        name: h.tracks.length > 1 ? `heard ${t.label}` : 'heard',
        x: time,
        y: thin(t.rpm).map((v) => (v > 0 ? v : Number.NaN)),
        colour: engineColour[t.label],
        signs: false,
      })),
    ],
  })
}

/** A prediction for one speed holds from end to end. */
function predictedSeries(p: Prediction, duration: number) {
  const flat = p.time.length < 2
  const twice = (v: readonly number[]) => (flat ? [v[0]!, v[0]!] : v)
  return {
    name: 'predicted',
    x: flat ? [0, duration] : p.time.map((t) => Math.min(duration, Math.max(0, t))),
    y: twice(p.rpm),
    low: twice(p.low),
    high: twice(p.high),
    colour: okabeIto.green,
    signs: false,
  }
}
