import { basename } from 'node:path'
import Table from 'cli-table3'
import { printed } from '../../base/answers/sentence.ts'
import type { Craft } from '../../craft/schema/craftSchema.ts'
import { countAgainst } from '../../trades/sound/expecting.ts'
import { clockText as clock, doubtOf, runAnswer } from '../../trades/sound/heardAnswer.ts'
import type { Hearing } from '../../trades/sound/hearingTypes.ts'
import { makeChannelPicker } from '../../trades/sound/hearSamples.ts'
import { type HearOptions, type Listener, makeListener } from '../../trades/sound/listener.ts'
import { residuals } from '../../trades/sound/residuals.ts'
import { pullFinding, runFindings } from '../../trades/sound/soundFindings.ts'
import { type CraftExpects, expectsOf, hearOptionsOf } from '../../trades/sound/soundFromCraft.ts'
import type { BesideRun } from '../../whole/runs/besideRun.ts'
import { decodeFile } from './decodeSound.ts'
import { besideCraft, type ToldOptions, typedTold } from './hearBeside.ts'
import { BadInput, exit, print, printJson } from './outcome.ts'
import { readCraftFile } from './readCraftFile.ts'
import { makeTidier } from './tidy.ts'

export interface RunHearOptions extends HearOptions {
  ffmpeg?: string
}

export interface HeardFile {
  exitCode: number
  text: string
  json: unknown
  hearing?: Hearing
}

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

/** What stands beside the model, as lines of text. */
function besideLines({ compared, prediction, closing, pull, says }: BesideRun): string[] {
  const lines = says ? ['', says] : []
  const list = compared && prediction ? residuals(compared, prediction, closing) : []
  if (prediction && list.length === 0)
    lines.push('No stretch of two seconds kept steady near the predicted speed, so nothing can be compared.')
  if (list.length > 0) {
    const percent = (v: number) => `${v >= 0 ? '+' : '-'}${Math.abs(100 * v).toFixed(1)} %`
    const table = new Table({
      head: ['engine', 'from', 'to', 'heard', 'predicted', 'off by', 'no surprise', ''],
      style: { head: [], border: [] },
    })
    for (const r of list)
      table.push([
        r.label,
        clock(r.from),
        clock(r.to),
        `${ten(r.heard)} rpm`,
        `${ten(r.predicted)} rpm`,
        percent(r.part),
        `${percent(r.low)} to ${percent(r.high)}`,
        r.standing === 'within' ? 'as predicted' : r.standing === 'low' ? 'slower' : 'faster',
      ])
    lines.push(table.toString())
  }
  const read = pull && pullFinding(pull.read, pull.predicted)
  if (read) lines.push(printed(read.says))
  return lines
}

const ten = (rpm: number) => Math.round(rpm / 10) * 10

/** A hearing as text for a terminal; with a craft also what it means beside its file. */
export function hearingText(name: string, h: Hearing, craft?: BesideCraft): string {
  const { says } = runAnswer(h, craft?.expects)
  const lines = [`${name}: ${h.duration.toFixed(1)} s`, '', says]
  if (!doubtOf(h)) {
    const count = craft && countAgainst(h, craft.expects)
    if (count) lines.push(printed(count.says))
    else if ((!craft || h.verdict.code === 'cannot tell') && h.verdict.code !== 'no engine')
      lines.push(h.verdict.says)
  }
  for (const f of h.flags) if (!says.includes(f.text)) lines.push(`! ${f.text}`)
  const top = Math.max(1, ...h.tracks.map((t) => t.rpm.reduce((a, v) => Math.max(a, v), 0)))
  for (const t of h.tracks) {
    const on = t.rpm.filter((v) => v > 0).sort()
    if (on.length === 0) continue
    const q = (p: number) => Math.round(on[Math.min(on.length - 1, Math.floor(p * on.length))]! / 10) * 10
    lines.push('', `Engine ${t.label}  ${q(0.05)} to ${q(0.95)} rpm, mostly ${q(0.5)}`, strip(t.rpm, 72, top))
  }
  for (const o of h.octaves)
    lines.push(
      `From ${clock(o.from)} to ${clock(o.to)} engine ${o.label} may turn ${o.factor === 2 ? 'twice' : 'half'} as fast as shown: did it burble, firing every second turn?`,
    )
  if (h.labelsUncertainAfter.length > 0)
    lines.push(`Which engine is which is uncertain after ${h.labelsUncertainAfter.map(clock).join(', ')}.`)
  if (h.bladePass)
    lines.push(
      `A line at ${h.bladePass.order.toFixed(2)} times the firing rate does not belong to engine ${h.bladePass.label}${Number.isFinite(h.bladePass.slip) ? `: as blade pass it means ${(100 * h.bladePass.slip).toFixed(0)} % slip` : ''}.`,
    )
  if (h.events.length > 0) {
    const table = new Table({
      head: ['time', 'engine', 'what', ''],
      style: { head: [], border: [] },
      colWidths: [9, 8, 15, 62],
      wordWrap: true,
    })
    for (const e of h.events) table.push([clock(e.time), e.engine, e.kind, e.says])
    lines.push('', table.toString())
  }
  if (craft) lines.push(...besideLines(craft.beside))
  return `${lines.join('\n')}\n`
}

interface BesideCraft {
  expects: CraftExpects
  beside: BesideRun
}

const findingsOf = (h: Hearing, craft: BesideCraft | undefined) =>
  craft
    ? runFindings(craft.beside.compared ?? h, { ...craft.beside, expects: craft.expects })
    : runFindings(h)

/** Predicted beside heard for other programs; rpm is rev/min, forces N. */
function besideJson({ compared, prediction, closing, pull, says }: BesideRun): unknown {
  return {
    says,
    residuals: compared && prediction ? residuals(compared, prediction, closing) : [],
    ...(prediction ? { prediction } : {}),
    ...(pull ? { pull: { read: pull.read.force, predicted: pull.predicted } } : {}),
  }
}

/** The numbers of a hearing for other programs, tracks ten times a second. */
export function hearingJson(name: string, h: Hearing, craft?: BesideCraft): unknown {
  const every = Math.max(1, Math.round(0.1 / h.step))
  const thin = (x: Float32Array) => Array.from(x).filter((_, i) => i % every === 0)
  const { spectrogram: _, time, tracks, count, ...rest } = h
  return {
    recording: name,
    ...rest,
    units: { time: 's', rpm: 'rev/min', change: 'rev/min per s', firing: 'Hz' },
    time: thin(time),
    count: Array.from(count).filter((__, i) => i % every === 0),
    tracks: tracks.map((t) => ({ label: t.label, rpm: thin(t.rpm), confidence: thin(t.confidence) })),
    findings: findingsOf(h, craft),
    ...(craft ? { beside: besideJson(craft.beside) } : {}),
  }
}

/** Listens to a recording on disk. Exit code 0 = listened, also when no engine was heard; 1 = a finding says stop; 2 = no sound could be read. */
export async function runHear(
  path: string,
  options: RunHearOptions = {},
  beside?: (heard: Hearing) => BesideCraft,
): Promise<HeardFile> {
  const name = basename(path)
  let listener: Listener | undefined
  const picker = makeChannelPicker(options)
  const tidy = makeTidier()
  const cancelled = () => {
    tidy()
    return options.cancelled?.() ?? false
  }
  const listen = (stretches: readonly Float32Array[], rate: number, expected: number | undefined) => {
    for (const x of stretches) {
      listener ??= makeListener(rate, { ...options, cancelled, ...(expected ? { expected } : {}) })
      listener.push(x)
    }
  }
  const decoded = await decodeFile(
    path,
    (channels, rate, expected) => listen(picker.push(channels, rate), rate, expected),
    options.ffmpeg,
  )
  listen(picker.end(), decoded.rate, undefined)
  if (!decoded.ok || !listener) {
    const says = decoded.flags.map((f) => f.text)
    return {
      exitCode: exit.badInput,
      text: `${name}: ${says.join(' ')}\n`,
      json: { recording: name, error: says.join(' '), flags: decoded.flags },
    }
  }
  const heard = (listener as Listener).finish()
  heard.flags.unshift(...decoded.flags)
  const craft = beside?.(heard)
  const hearing = craft?.beside.hearing ?? heard
  const stop = findingsOf(hearing, craft).some((f) => f.standing === 'stop')
  return {
    exitCode: stop ? exit.stop : exit.fine,
    text: hearingText(name, hearing, craft),
    json: hearingJson(name, hearing, craft),
    hearing,
  }
}

export interface HearCommandOptions extends ToldOptions {
  json?: boolean
  craft?: string
  engines?: string
  cylinders?: string
}

/** Listening options of the command line; what is typed goes before what the craft file says. Throws BadInput. */
function typedOptions({ engines, cylinders }: HearCommandOptions, craft: Craft | undefined): HearOptions {
  const from = craft ? hearOptionsOf(craft) : {}
  const out: HearOptions = { ...from }
  if (engines !== undefined) {
    if (engines !== '1' && engines !== '2' && engines !== 'auto')
      throw new BadInput([`hear: --engines "${engines}" is not 1, 2 or auto`])
    out.engines = engines === 'auto' ? 'auto' : engines === '1' ? 1 : 2
  }
  if (cylinders !== undefined) {
    if (!/^[1-8]$/.test(cylinders)) throw new BadInput([`hear: --cylinders "${cylinders}" is not 1 to 8`])
    out.cylinders = Number(cylinders)
  }
  return out
}

/** `wakewright hear RECORDING [--json] [--craft FILE]`. Returns the exit code. */
export async function hearCommand(path: string, options: HearCommandOptions = {}): Promise<number> {
  const craft = options.craft === undefined ? undefined : readCraftFile(options.craft).craft
  const told = typedTold(options, craft !== undefined)
  const expects = craft && expectsOf(craft)
  const heard = await runHear(
    path,
    typedOptions(options, craft),
    craft && expects && ((h) => ({ expects, beside: besideCraft(h, craft, expects, told) })),
  )
  if (options.json) printJson(heard.json)
  else if (heard.exitCode === exit.badInput) process.stderr.write(heard.text)
  else print(heard.text)
  return heard.exitCode
}
