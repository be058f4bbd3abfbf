import Table from 'cli-table3'
import { inPercent, inSeconds, inTimes } from '../../base/answers/amounts.ts'
import { clockText } from '../../base/answers/clockText.ts'
import { worstFirst } from '../../base/answers/finding.ts'
import { plainAmounts, printedFinding } from '../../base/answers/printFinding.ts'
import { type Piece, printed, printedAmount, type Sentence, say } from '../../base/answers/sentence.ts'
import type { DisplaySystem } from '../../base/units/format.ts'
import { doubtOf, isUnsure, usualRange } from '../../trades/sound/heardAnswer.ts'
import type { Hearing } from '../../trades/sound/hearingTypes.ts'
import { comparedSpeeds } from '../../trades/sound/residuals.ts'
import { besideTable } from '../../trades/sound/runNumbers.ts'
import { type RunInputs, soundTrade } from '../../trades/sound/soundTrade.ts'
import type { NumberTable, Solved } from '../../trades/trade.ts'

/** A run solved: its hearing, what is known beside it, and the engines heard. */
export interface SolvedRun extends Solved<RunInputs, ReturnType<typeof soundTrade.answer>> {
  /** why there is no prediction, or what it rests on; absent without a craft */
  besideSays?: Sentence
}

const headlineOf = (run: SolvedRun) => soundTrade.headline!(run, soundTrade.limits)

/** The headline and all findings of a run. */
export const runFindingsOf = (run: SolvedRun) => [
  headlineOf(run),
  ...soundTrade.judge(run, soundTrade.limits),
]

/** One line of letters for a speed over time, eight heights, blank where nothing was heard. */
function strip(rpm: Float32Array, most: number, top: number): string {
  const columns = Math.min(most, rpm.length)
  const marks = '▁▂▃▄▅▆▇█'
  let out = ''
  for (let c = 0; c < columns; c++) {
    const part = rpm.subarray(
      Math.floor((c * rpm.length) / columns),
      Math.max(1, Math.floor(((c + 1) * rpm.length) / columns)),
    )
    const on = part.filter((v) => v > 0).sort()
    const middle = on.length > part.length / 2 ? on[Math.floor(on.length / 2)]! : 0
    out += middle > 0 ? marks[Math.min(7, Math.floor((7.99 * middle) / top))] : ' '
  }
  return out
}

const cell = (value: Piece, units: DisplaySystem) =>
  typeof value === 'string' ? value : printedAmount(value, units)

function tableText({ heads, rows }: NumberTable, units: DisplaySystem): string {
  const table = new Table({
    head: heads.map((h) => h.toLowerCase()),
    style: { head: [], border: [] },
  })
  for (const row of rows) table.push(row.map((value) => cell(value, units)))
  return table.toString()
}

/** What stands beside the model. */
function besideLines(run: SolvedRun, units: DisplaySystem): Sentence[] {
  const lines: Sentence[] = run.besideSays ? ['', run.besideSays] : []
  if (!run.inputs.prediction) return lines
  const list = comparedSpeeds(run.inputs)
  lines.push(
    list.length > 0
      ? tableText(besideTable(list), units)
      : say`No stretch of ${inSeconds(soundTrade.limits['steadyLeast']!.value, 1)} kept steady near the predicted speed, so nothing can be compared.`,
  )
  return lines
}

/** Each engine's speeds, and where the sound leaves something open. */
function trackLines({ inputs: { hearing: h }, answer }: SolvedRun): Sentence[] {
  const lines: Sentence[] = []
  const top = Math.max(1, ...h.tracks.map((t) => t.rpm.reduce((a, v) => Math.max(a, v), 0)))
  for (const e of answer) {
    const track = h.tracks.find((t) => t.label === e.label)!
    lines.push('', say`Engine ${e.label}  mostly ${usualRange(e)}`, strip(track.rpm, 72, top))
  }
  for (const o of h.octaves)
    lines.push(
      `From ${clockText(o.from)} to ${clockText(o.to)} engine ${o.label} may turn ${o.factor === 2 ? 'twice' : 'half'} as fast as shown: did it burble, firing every second turn?`,
    )
  if (h.labelsUncertainAfter.length > 0)
    lines.push(
      `Which engine is which is uncertain after ${h.labelsUncertainAfter.map(clockText).join(', ')}.`,
    )
  if (h.bladePass) {
    const { order, label, slip } = h.bladePass
    const means = Number.isFinite(slip) ? say`: as blade pass it means ${inPercent(slip)} slip` : ''
    lines.push(
      say`A line at ${inTimes(order)} times the firing rate does not belong to engine ${label}${means}.`,
    )
  }
  return lines
}

function eventLines(h: Hearing, units: DisplaySystem): Sentence[] {
  if (h.events.length === 0) return []
  const table = new Table({
    head: ['time', 'engine', 'what', ''],
    style: { head: [], border: [] },
    colWidths: [9, 8, 15, 62],
    wordWrap: true,
  })
  for (const e of h.events)
    table.push([
      clockText(e.time),
      e.engine,
      e.kind,
      `${printed(e.says, units)}${isUnsure(e) ? ' (unsure)' : ''}${e.excludes ? `; not ${e.excludes}` : ''}`,
    ])
  return ['', table.toString()]
}

/** A run as text for a terminal, in the reader's units. */
export function hearingText(name: string, run: SolvedRun, units: DisplaySystem): string {
  const { hearing: h, expects } = run.inputs
  const [headline, ...findings] = runFindingsOf(run)
  const says = printed(headline!.says, units)
  const lines: Sentence[] = [say`${name}: ${inSeconds(h.duration)}`, '', says]
  const beside = findings.filter((f) => f.id === 'runs.count' || f.id === 'runs.pull')
  lines.push(...beside.map((f) => f.says))
  const counted = beside.some((f) => f.id === 'runs.count')
  const open = h.verdict.code === 'no engine' || doubtOf(h, run.answer) !== undefined
  if (!counted && !open && (!expects || h.verdict.code === 'cannot tell')) lines.push(h.verdict.says)
  for (const f of h.flags) if (!says.includes(f.text)) lines.push(`! ${f.text}`)
  lines.push(...trackLines(run), ...eventLines(h, units), ...besideLines(run, units))
  const next = worstFirst([headline!, ...findings]).find((f) => f.standing !== 'good')?.measureNext
  if (next) lines.push('', `Next: ${next.what} (${next.with}, ${next.minutes} min).`)
  return `${lines.map((line) => printed(line, units)).join('\n')}\n`
}

/** Predicted beside heard for other programs; rpm is rev/min, forces N. */
function besideJson({ inputs, besideSays }: SolvedRun): unknown {
  const { prediction, pull } = inputs
  return {
    says: printed(besideSays ?? ''),
    residuals: comparedSpeeds(inputs),
    ...(prediction ? { prediction } : {}),
    ...(pull ? { pull: { read: pull.read.force, predicted: pull.predicted } } : {}),
  }
}

/** The numbers of a run for other programs, tracks ten times a second. */
export function hearingJson(name: string, run: SolvedRun): unknown {
  const h = run.inputs.hearing
  const every = Math.max(1, Math.round(0.1 / h.step))
  const thin = (x: Float32Array) => Array.from(x).filter((_, i) => i % every === 0)
  const { spectrogram: _, time, tracks, count, events, ...rest } = h
  return {
    recording: name,
    ...rest,
    events: events.map((e) => ({ ...e, says: printed(e.says), amounts: plainAmounts(e.says) })),
    units: { time: 's', rpm: 'rev/min', change: 'rev/min per s', firing: 'Hz' },
    time: thin(time),
    count: Array.from(count).filter((__, i) => i % every === 0),
    tracks: tracks.map((t) => ({ label: t.label, rpm: thin(t.rpm), confidence: thin(t.confidence) })),
    findings: runFindingsOf(run).map((f) => printedFinding(f)),
    ...(run.besideSays === undefined ? {} : { beside: besideJson(run) }),
  }
}
