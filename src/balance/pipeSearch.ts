/** The search for a pipe: handbook start, length set by the simulated peak, pattern search, sizes that can be made. */
import type { Finding } from '../answers/finding.ts'
import type { Craft } from '../craft/index.ts'
import { twoStrokeFromCraft } from '../engine/twoStrokeFromCraft.ts'
import { pipeFindings } from '../exhaust/pipeFindings.ts'
import { proportionedPipe } from '../exhaust/proportions.ts'
import { searchPipe } from '../exhaust/search.ts'
import { lengthOfPipe, makeable, type PipeShape, pipeOfShape, shapeOfPipe } from '../exhaust/shape.ts'
import {
  classFigures,
  type PipeClass,
  simulatedOverHandbook,
  soundSpeed,
  tunedLength,
} from '../exhaust/tuning.ts'
import type { NextChange, PipeAnswer, Room } from '../exhaust/types.ts'
import {
  coarse,
  curveWith,
  judgePipe,
  prepareTrial,
  type Trial,
  type TrialOrder,
  tryPipe,
  withOpening,
} from './pipeTrial.ts'

export interface PipeSearchAnswer {
  /** false for the first answer, given early, from coarse cells and before the search proper */
  final: boolean
  now: PipeAnswer
  handbook: PipeAnswer
  /** in sizes that can be made */
  found: PipeAnswer
  /** part of the score that rounding to makeable sizes cost (negative when it gained); 0 in the first answer */
  snappingCost: number
  next: NextChange[]
  /** rev/min that the jet holds the engine at with the pipe found, over the speeds that count */
  band: { from: number; to: number }
  /** m/s whose thrust counts, slowest first; empty when a speed was asked for */
  speeds: number[]
  /** rev/min the search aimed the power peak at first */
  aim: number
  room: Room
  /** simulated curves so far */
  curves: number
  findings: Finding[]
}

export interface SearchWork {
  progress?: (part: number, says: string) => void
  early?: (answer: PipeSearchAnswer) => void
  cancelled?: () => boolean
  /** tries several pipes at once, coarse; by other threads where a face has them. Default: one after the other here */
  tryMany?: (trial: Trial, shapes: readonly PipeShape[]) => Promise<number[]>
}

/** Thrown when a search is called off. */
export class CalledOff extends Error {}

type Judged = PipeAnswer & { band: number[] }
const plain = ({ band: _, ...answer }: Judged): PipeAnswer => answer
const classOf: Record<string, PipeClass> = { utility: 'road', sport: 'enduro', race: 'motocross' }

/** A first shape from the handbook for the speed aimed at, made to fit the room. */
export function handbookShape(trial: Trial): PipeShape {
  const engine = trial.craft.engines[trial.index]!
  const kind = classOf['tune' in engine ? engine.tune : 'sport'] ?? 'enduro'
  const open = 2 * (Math.PI - trial.spec.exhaust.opens)
  const speed = soundSpeed(classFigures[kind].temperature)
  const length = tunedLength(open, trial.aim / 60, speed) * simulatedOverHandbook
  const d0 = trial.spec.pipe[0]!.d0
  const pipe = proportionedPipe({ tunedLength: length, portDiameter: d0, kind, stages: 3 })
  const [header, ...rest] = pipe.segments
  const diffuser = rest.slice(0, 3).reduce((sum, s) => sum + s.length, 0)
  const flange = trial.spec.pipe[0]!.d1
  // the handbook counts the duct in the cylinder as header; a pipe needs some header of its own
  const own = Math.max(0.03, header!.length - trial.duct)
  return fitted(
    {
      flange,
      header: own,
      headerEnd: Math.max(flange, header!.d1),
      diffuser,
      horn: 1.5,
      belly: rest[3]!.length,
      bellyBore: rest[3]!.d0,
      baffle: rest[4]!.length,
      stingerBore: pipe.stinger.bore,
      stinger: pipe.stinger.length,
    },
    trial,
  )
}

/** Belly and stinger drawn in until the shape fits its room, as far as they can. */
function fitted(s: PipeShape, trial: Trial): PipeShape {
  const bellyBore = Math.min(s.bellyBore, trial.room.diameter)
  const tuned = s.header + s.diffuser + s.belly + s.baffle
  const stinger = Math.max(5 * s.stingerBore, Math.min(s.stinger, trial.room.length - tuned))
  return { ...s, bellyBore, stinger }
}

/** All lengths to the stinger scaled, the duct in the cylinder staying as it is. */
function lengthened(s: PipeShape, duct: number, by: number): PipeShape {
  const own = s.header + s.diffuser + s.belly + s.baffle
  const k = ((own + duct) * by - duct) / own
  return { ...s, header: s.header * k, diffuser: s.diffuser * k, belly: s.belly * k, baffle: s.baffle * k }
}

/** Searches. RangeError for a craft without a pipe to begin with; CalledOff when called off. */
export async function findPipe(
  craft: Craft,
  order: TrialOrder,
  work: SearchWork = {},
): Promise<PipeSearchAnswer> {
  const tell = (part: number, says: string) => work.progress?.(part, says)
  const check = () => {
    if (work.cancelled?.()) throw new CalledOff('called off')
  }
  tell(0, 'the present pipe')
  const trial = prepareTrial(craft, order)
  let curves = 0
  const bend = trial.room.bend
  const build = (s: PipeShape) => pipeOfShape(s, trial.duct, bend)
  const look = (
    name: PipeAnswer['name'],
    pipe: ReturnType<typeof build>,
    cells: 'coarse' | 'fine',
  ): Judged => {
    check()
    curves++
    return tryPipe(trial, name, pipe, cells)
  }

  const nowCoarse = look('now', trial.now, 'coarse')
  tell(0.04, 'the handbook’s pipe')
  let start = handbookShape(trial)
  let handbook = look('handbook', build(start), 'coarse')
  // the simulated peak says how much too long or too short it is
  for (let i = 0; i < 2 && Number.isFinite(handbook.peakAt); i++) {
    const by = Math.min(1.15, Math.max(0.87, handbook.peakAt / trial.aim))
    if (Math.abs(by - 1) < 0.015) break
    const next = fitted(lengthened(start, trial.duct, by), trial)
    const tried = look('handbook', build(next), 'coarse')
    if (!(tried.score > handbook.score)) break
    start = next
    handbook = tried
  }
  const present = shapeOfPipe(trial.now.segments, trial.now.stinger)
  const answer = (
    over: Partial<PipeSearchAnswer> & { found: PipeAnswer; band: { from: number; to: number } },
  ): PipeSearchAnswer => {
    const made: PipeSearchAnswer = {
      final: false,
      now: plain(nowCoarse),
      handbook: plain(handbook),
      snappingCost: 0,
      next: [],
      speeds: [...trial.speeds],
      aim: trial.aim,
      room: trial.room,
      curves,
      findings: [],
      ...over,
    }
    return { ...made, findings: pipeFindings(made, `engines.${trial.index}`) }
  }
  const first = handbook.score > nowCoarse.score ? handbook : nowCoarse
  work.early?.(answer({ found: { ...plain(first), name: 'found' }, band: bandOf(first) }))

  tell(0.1, 'searching, with coarse cells')
  const worth = async (shapes: readonly PipeShape[]) => {
    check()
    curves += shapes.length
    if (work.tryMany) return work.tryMany(trial, shapes)
    return shapes.map((s) => tryPipe(trial, 'found', build(s), 'coarse').score)
  }
  let best = start
  if (present) {
    const s = fitted(present, trial)
    const [a] = await worth([s])
    if (a! > handbook.score) best = s
  }
  const found = await searchPipe(best, worth, {
    progress: (part, score) =>
      tell(0.1 + 0.55 * part, `searching, with coarse cells: ${signedPercent(score - 1)} so far`),
    ...(work.cancelled ? { cancelled: work.cancelled } : {}),
  })
  if (found.cancelled) throw new CalledOff('called off')

  tell(0.66, 'deciding, with fine cells')
  const now = look('now', trial.now, 'fine')
  const handbookFine = look('handbook', build(start), 'fine')
  const tried: { shape: PipeShape; answer: Judged }[] = []
  for (const [i, l] of found.leaders.entries()) {
    tell(0.7 + 0.03 * i, 'deciding, with fine cells')
    tried.push({ shape: l.shape, answer: look('found', build(l.shape), 'fine') })
  }
  tried.sort((a, b) => b.answer.score - a.answer.score)
  const winner = tried[0]!
  const shape = makeable(winner.shape)
  const snapped = look('found', build(shape), 'fine')
  tell(0.84, 'what to change next')
  const next = changesNext(trial, shape, build, snapped, (part) => {
    check()
    curves++
    tell(0.84 + 0.16 * part, 'what to change next')
  })
  tell(1, 'done')
  return answer({
    final: true,
    now: plain(now),
    handbook: plain(handbookFine),
    found: plain(snapped),
    snappingCost: winner.answer.score - snapped.score,
    next,
    band: bandOf(snapped),
    curves,
  })
}

const signedPercent = (x: number) => `${x < 0 ? '−' : '+'}${Math.abs(100 * x).toFixed(1)} %`

function bandOf(a: Judged): { from: number; to: number } {
  const list = [...a.band.filter(Number.isFinite), ...(a.band.length === 0 ? [a.pullAt] : [])]
  return { from: Math.min(...list), to: Math.max(...list) }
}

/** Finite differences round the pipe found, with fine cells: both ways, since curves bend. */
function changesNext(
  trial: Trial,
  shape: PipeShape,
  build: (s: PipeShape) => PipeAnswer['pipe'],
  at: Judged,
  step: (part: number) => void,
): NextChange[] {
  const mm = 1e-3
  const longer = (by: number) => ({ ...shape, header: shape.header + by })
  const rows: { says: string; step: number; path?: string; shape?: PipeShape; opens?: number }[] = []
  for (const sign of [1, -1] as const) {
    const word = (more: string, less: string) => (sign > 0 ? more : less)
    rows.push({
      says: `header 10 mm ${word('longer', 'shorter')}`,
      step: sign * 10 * mm,
      shape: longer(sign * 10 * mm),
    })
    rows.push({
      says: `stinger 10 mm ${word('longer', 'shorter')}`,
      step: sign * 10 * mm,
      shape: { ...shape, stinger: shape.stinger + sign * 10 * mm },
    })
    rows.push({
      says: `stinger bore 1 mm ${word('wider', 'narrower')}`,
      step: sign * mm,
      shape: { ...shape, stingerBore: shape.stingerBore + sign * mm },
    })
    rows.push({
      says: `exhaust port opening 1° ${word('later', 'earlier')}`,
      step: (sign * Math.PI) / 180,
      path: `engines.${trial.index}.ports.exhaust.opens`,
      opens: (sign * Math.PI) / 180,
    })
  }
  const out: NextChange[] = []
  rows.forEach((row, i) => {
    step(i / rows.length)
    const pipe = build(row.shape ?? shape)
    const moved = row.opens === undefined ? undefined : openedAt(trial, row.opens, pipe)
    if (row.opens !== undefined && !moved) return
    const curve = moved ?? curveWith(trial, pipe, 0.5 * coarse, trial.fineRpms)
    const judged = judgePipe(trial, 'found', pipe, curve)
    out.push({
      says: row.says,
      step: row.step,
      ...(row.path ? { path: row.path } : {}),
      peakAt: judged.peakAt - at.peakAt,
      torque: Math.max(...judged.curve.torque) - Math.max(...at.curve.torque),
      thrust: trial.speeds.length > 0 ? judged.thrust - at.thrust : judged.pull - at.pull,
    })
  })
  return out
}

/** Curve with the port opened earlier or later; undefined where the file's numbers then contradict each other. */
function openedAt(trial: Trial, by: number, pipe: PipeAnswer['pipe']) {
  const moved = withOpening(trial.craft, trial.index, by)
  const reading = twoStrokeFromCraft(moved, trial.index)
  if (!reading.spec || reading.faults.some((f) => !f.says.includes('wheel'))) return undefined
  const spec = { ...reading.spec, pipe: curvePipe(trial, pipe, reading.spec.pipe[0]!) }
  return curveWith(trial, pipe, 0.5 * coarse, trial.fineRpms, spec)
}

function curvePipe(trial: Trial, pipe: PipeAnswer['pipe'], duct: Trial['spec']['pipe'][number]) {
  const parts = pipe.segments.map(({ name: _, ...s }) => s)
  const tube = { length: pipe.stinger.length, d0: pipe.stinger.bore, d1: pipe.stinger.bore }
  const engine = trial.craft.engines[trial.index]!
  const after =
    'exhaust' in engine && engine.exhaust?.muffler
      ? []
      : trial.spec.pipe.slice(1 + trial.now.segments.length + 1)
  return [duct, ...parts, tube, ...after]
}

/** m, for a word on the room */
export const lengthTaken = (a: PipeAnswer) => lengthOfPipe(a.pipe)
