import { existsSync, readFileSync } from 'node:fs'
import { availableParallelism } from 'node:os'
import { dirname, resolve } from 'node:path'
import { fileURLToPath } from 'node:url'
import { styleText } from 'node:util'
import Table from 'cli-table3'
import { type Craft, formatProblem } from '../../craft/index.ts'
import { trialOf } from '../../jobs/pipeSearchJob.ts'
import type { PipeAnswer, StingerRow } from '../../trades/exhaust/exhaustTypes.ts'
import {
  answerEngines,
  type EngineAnswers,
  remembering,
  type SimulatedEngine,
} from '../../whole/breath/engineAnswers.ts'
import { CalledOff, findPipe, type PipeSearchAnswer } from '../../whole/breath/pipeSearch.ts'
import type { Judged, TryMany, tryPipe } from '../../whole/breath/pipeTrial.ts'
import { findStinger, type StingerSearchAnswer } from '../../whole/breath/stingerSearch.ts'
import { lookAt } from '../../whole/look.ts'
import { fileStore } from './engineStore.ts'
import { findingText } from './lookCommand.ts'
import { BadInput, exit, print, printJson } from './outcome.ts'
import { openPool, type Pool } from './pool.ts'
import { progressLine } from './progress.ts'
import { readCraftFile } from './readCraftFile.ts'

export interface BreatheOptions {
  json?: boolean
  search?: string
  engine: string
  rpm?: string
}

/** `wakewright breathe`: how the engines breathe, and with --search a better pipe or stinger. */
export async function breathe(file: string, options: BreatheOptions): Promise<number> {
  const { search } = options
  if (search !== undefined && search !== 'pipe' && search !== 'stinger')
    throw new BadInput([`breathe: --search "${search}" is not pipe or stinger`])
  const { craft, warnings } = readCraftFile(file)
  for (const w of warnings) process.stderr.write(`${formatProblem(w)}\n`)
  const index = Number(options.engine) - 1
  if (!Number.isInteger(index) || index < 0 || index >= craft.engines.length)
    throw new BadInput([
      `breathe: --engine "${options.engine}" is not a whole number from 1 to ${craft.engines.length}`,
    ])
  const rpm = options.rpm === undefined ? undefined : Number(options.rpm)
  if (rpm !== undefined && !(rpm >= 1000 && rpm <= 20000))
    throw new BadInput([`breathe: --rpm "${options.rpm}" is not a number from 1000 to 20000`])
  const store = remembering(fileStore())
  const line = progressLine()
  try {
    if (search === undefined)
      return lookOnly(craft, answerEngines(craft, { store, progress: line.show })!, line.end, options)
    const engine = craft.engines[index]!
    if (engine.kind !== 'two-stroke' || !engine.exhaust)
      throw new BadInput([
        `${file}: engines.${index}: a search needs an engine of kind two-stroke with an exhaust; this one is ${engine.kind}`,
      ])
    return await searchFor(
      search,
      { file, index, ...(rpm === undefined ? {} : { rpm }) },
      craft,
      store,
      line,
      options,
    )
  } finally {
    line.end()
  }
}

function lookOnly(craft: Craft, engines: EngineAnswers, end: () => void, options: BreatheOptions): number {
  end()
  const findings = lookAt(craft, { engines, ranges: false }).findings.filter((f) => f.question === 'breath')
  const simulated = [...engines.simulated].map(([i, s]) => ({ engine: i, ...s }))
  if (options.json) printJson({ units: jsonUnits, findings, engines: simulated })
  else {
    print(`\n${styleText('bold', craft.name)}\n`)
    for (const f of findings) print(findingText(f, 'metric'))
    for (const s of simulated)
      print(
        curveText(
          craft.engines[s.engine]!.name ?? `engine ${s.engine + 1}`,
          s,
          engines.readings.get(s.engine)!.cylinders,
        ),
      )
    if (findings.length === 0)
      print('No engine of this craft is known by its ports and pipe; give one of kind two-stroke.')
  }
  return findings.some((f) => f.standing === 'stop') ? exit.stop : exit.fine
}

const jsonUnits = {
  rpm: 'rev/min',
  torque: 'N·m',
  power: 'W',
  thrust: 'N',
  pull: 'N',
  exhaustT: 'K',
  gauge: 'Pa',
  length: 'm',
  bore: 'm',
  outFlow: 'kg/s',
} as const

function curveText(name: string, s: SimulatedEngine, cylinders: number): string {
  const table = new Table({
    head: ['rpm', 'N·m', 'kW', 'delivery', 'trapping', 'exhaust °C', 'box kPa'],
    style: { head: [], border: [] },
  })
  for (const p of s.curve.points)
    table.push(
      p.point
        ? [
            p.rpm,
            (p.point.torque * cylinders).toFixed(1),
            ((p.point.power * cylinders) / 1000).toFixed(1),
            p.point.deliveryRatio.toFixed(2),
            p.point.trapping.toFixed(2),
            (p.point.exhaustT - 273.15).toFixed(0),
            (p.point.behind / 1000).toFixed(1),
          ]
        : [p.rpm, { colSpan: 6, content: p.says ?? 'did not settle' }],
    )
  return `\n${name}, simulated with cells of ${(1000 * s.curve.dx).toFixed(0)} mm\n${table.toString()}`
}

interface SearchOf {
  file: string
  index: number
  rpm?: number
}

async function searchFor(
  what: 'pipe' | 'stinger',
  of: SearchOf,
  craft: Craft,
  store: ReturnType<typeof remembering>,
  line: ReturnType<typeof progressLine>,
  options: BreatheOptions,
): Promise<number> {
  const off = new AbortController()
  const stop = () => off.abort()
  process.once('SIGINT', stop)
  process.once('SIGTERM', stop)
  const order = { ...trialOf({ engine: of.index, ...(of.rpm === undefined ? {} : { rpm: of.rpm }) }), store }
  const pool = existsSync(resolve(dirname(fileURLToPath(import.meta.url)), 'worker.js'))
    ? openPool()
    : undefined
  const text = readFileSync(of.file, 'utf8')
  const work = {
    progress: line.show,
    cancelled: () => off.signal.aborted,
    ...(pool
      ? {
          tryMany: spread(pool, off.signal, (requests) => ({
            text,
            engine: of.index,
            ...(of.rpm === undefined ? {} : { rpm: of.rpm }),
            known: store.all(),
            requests,
          })),
        }
      : {}),
  }
  try {
    if (what === 'stinger') {
      const answer = await findStinger(craft, order, {
        ...work,
        early: (a) =>
          process.stderr.isTTY && process.stderr.write(`\r\x1b[KA first look: ${a.findings[0]!.says}\n`),
      })
      line.end()
      return options.json ? sayJson(answer) : sayStinger(answer)
    }
    const answer = await findPipe(craft, order, {
      ...work,
      early: (a) =>
        process.stderr.isTTY && process.stderr.write(`\r\x1b[KA first look: ${a.findings[0]!.says}\n`),
    })
    line.end()
    return options.json ? sayJson(answer) : sayPipe(answer)
  } catch (error) {
    if (error instanceof CalledOff || off.signal.aborted) {
      line.end()
      process.stderr.write('The search was called off.\n')
      return exit.badInput
    }
    if (error instanceof RangeError) throw new BadInput([`${of.file}: ${error.message}`])
    throw error
  } finally {
    process.off('SIGINT', stop)
    process.off('SIGTERM', stop)
    await pool?.close()
  }
}

type Orders = Parameters<typeof tryPipe>[1]

/** Requests dealt out to as many threads as there are cores. */
function spread(
  pool: Pool,
  signal: AbortSignal,
  orderOf: (requests: readonly Orders[]) => Parameters<Pool['run']>[1],
): TryMany {
  const threads = Math.max(1, availableParallelism())
  return async (requests) => {
    const hands = Math.min(threads, requests.length)
    const parts = Array.from({ length: hands }, (_, h) => requests.filter((_r, i) => i % hands === h))
    const answers = (await Promise.all(
      parts.map((part) => pool.run('pipe-trials', orderOf(part) as never, undefined, signal)),
    )) as Judged[][]
    return requests.map((_, i) => answers[i % hands]![Math.floor(i / hands)]!)
  }
}

function sayJson(answer: PipeSearchAnswer | StingerSearchAnswer): number {
  printJson({ units: jsonUnits, ...answer })
  return answer.findings.some((f) => f.standing === 'stop') ? exit.stop : exit.fine
}

const mm = (x: number, digits = 0) => (1000 * x).toFixed(digits)
const signed = (x: number, digits = 0) => `${x < 0 ? '−' : '+'}${Math.abs(x).toFixed(digits)}`

function sayPipe(a: PipeSearchAnswer): number {
  print('')
  for (const f of a.findings) print(findingText(f, 'metric'))
  const compare = new Table({
    head: ['', 'power', 'at', 'pull', 'thrust', 'exhaust', 'in the pipe', 'cells'],
    style: { head: [], border: [] },
  })
  for (const p of [a.now, a.handbook, a.found]) compare.push(lineOf(p))
  print(compare.toString())
  const cuts = new Table({ head: ['part', 'length mm', 'from mm', 'to mm'], style: { head: [], border: [] } })
  for (const s of a.found.pipe.segments) cuts.push([s.name, mm(s.length), mm(s.d0, 1), mm(s.d1, 1)])
  const { stinger } = a.found.pipe
  cuts.push(['stinger', mm(stinger.length), mm(stinger.bore, 1), mm(stinger.bore, 1)])
  print(`\nThe pipe found, inside, from the flange\n${cuts.toString()}`)
  const next = new Table({
    head: ['what to change next', 'peak rpm', 'N·m', 'N'],
    style: { head: [], border: [] },
  })
  for (const n of a.next) next.push([n.says, signed(n.peakAt), signed(n.torque, 2), signed(n.thrust, 1)])
  print(`\n${next.toString()}`)
  print(
    `Caution: a new pipe can run leaner and hotter; richen first and look at the plug after short runs. Hot metal burns; exhaust gas holds carbon monoxide.`,
  )
  return a.findings.some((f) => f.standing === 'stop') ? exit.stop : exit.fine
}

const lineOf = (p: PipeAnswer) => [
  p.name,
  `${(p.power / 1000).toFixed(1)} kW`,
  `${p.peakAt.toFixed(0)} rpm`,
  `${p.pull.toFixed(0)} N`,
  Number.isFinite(p.thrust) ? `${p.thrust.toFixed(0)} N` : '—',
  `${(p.curve.exhaustT - 273.15).toFixed(0)} °C`,
  `${(p.curve.inside / 1000).toFixed(1)} kPa`,
  p.cells,
]

function sayStinger(a: StingerSearchAnswer): number {
  print('')
  for (const f of a.findings) print(findingText(f, 'metric'))
  const rows = new Table({
    head: ['bore mm', 'length mm', 'pull N', 'thrust N', 'N·m', 'exhaust °C', 'in the pipe kPa', 'risk', ''],
    style: { head: [], border: [] },
  })
  const row = (r: StingerRow) => [
    `${mm(r.bore, 1)}${r === a.now ? ' now' : ''}`,
    mm(r.length),
    r.pull.toFixed(0),
    r.thrust.toFixed(0),
    r.torque.toFixed(1),
    (r.exhaustT - 273.15).toFixed(0),
    (r.inside / 1000).toFixed(1),
    r.risk,
    r.because,
  ]
  for (const r of [...a.rows, ...a.lengths]) rows.push(row(r))
  print(rows.toString())
  return a.findings.some((f) => f.standing === 'stop') ? exit.stop : exit.fine
}
