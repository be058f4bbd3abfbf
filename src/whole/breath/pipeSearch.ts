/** The search for a pipe: handbook start, length set by the simulated peak, pattern search, sizes that can be made. */
import type { Finding } from '../../base/answers/finding.ts'
import type { Craft } from '../../craft/index.ts'
import { exhaustLimits } from '../../trades/exhaust/exhaustLimits.ts'
import type { NextChange, PipeAnswer, Room } from '../../trades/exhaust/exhaustTypes.ts'
import { pipeFindings } from '../../trades/exhaust/pipeFindings.ts'
import {
  makeable,
  type PipeShape,
  pipeOfShape,
  roundedPipe,
  shapeOfPipe,
} from '../../trades/exhaust/pipeShape.ts'
import { searchPipe } from '../../trades/exhaust/pipeSpace.ts'
import { proportionedPipe } from '../../trades/exhaust/proportions.ts'
import {
  classFigures,
  firstCut,
  type PipeClass,
  soundSpeed,
  tunedLength,
} from '../../trades/exhaust/tuning.ts'
import { type Judged, type TrialRequest, type TryMany, tryPipe } from './pipeTrial.ts'
import { prepareTrial, type Trial, type TrialOrder } from './trial.ts'

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

/** What a search may tell and ask while it runs. */
export interface SearchWork<Answer> {
  progress?: (part: number, says: string) => void
  early?: (answer: Answer) => void
  cancelled?: () => boolean
  /** tries several pipes at once, in other threads where a face has them. Default: one after the other here */
  tryMany?: TryMany
}

/** Thrown when a search is called off. */
export class CalledOff extends Error {}

const plain = ({ band: _, ...answer }: Judged): PipeAnswer => answer
const classOf: Record<string, PipeClass> = { utility: 'road', sport: 'enduro', race: 'motocross' }

/** A first shape from the handbook for the speed aimed at, made to fit the room. */
export function handbookShape(trial: Trial): PipeShape {
  const engine = trial.craft.engines[trial.index]!
  const kind = classOf['tune' in engine ? engine.tune : 'sport'] ?? 'enduro'
  const open = 2 * (Math.PI - trial.spec.exhaust.opens)
  const speed = soundSpeed(classFigures[kind].temperature)
  const length = tunedLength(open, trial.aim / 60, speed) * firstCut
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

/** Searches. RangeError for a craft without a pipe to begin with; CalledOff when called off before its first answer; later it gives the best so far, not final. */
export async function findPipe(
  craft: Craft,
  order: TrialOrder,
  work: SearchWork<PipeSearchAnswer> = {},
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
  const tryMany = async (requests: readonly TrialRequest[]): Promise<Judged[]> => {
    check()
    curves += requests.length
    return work.tryMany ? work.tryMany(requests, trial) : requests.map((r) => tryPipe(trial, r))
  }
  const look = async (name: PipeAnswer['name'], pipe: PipeAnswer['pipe'], cells: 'coarse' | 'fine') =>
    (await tryMany([{ name, pipe, cells }]))[0]!

  const startAt = handbookShape(trial)
  const [nowCoarse, firstBook] = (await tryMany([
    { name: 'now', pipe: trial.now, cells: 'coarse' },
    { name: 'handbook', pipe: build(startAt), cells: 'coarse' },
  ])) as [Judged, Judged]
  tell(0.04, 'the handbook’s pipe')
  let start = startAt
  let handbook = firstBook
  // the simulated peak says how much too long or too short it is
  for (let i = 0; i < 2 && Number.isFinite(handbook.peakAt); i++) {
    const by = Math.min(1.15, Math.max(0.87, handbook.peakAt / trial.aim))
    if (Math.abs(by - 1) < 0.015) break
    const next = fitted(lengthened(start, trial.duct, by), trial)
    const tried = await look('handbook', build(next), 'coarse')
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
  // the best so far is told each time it grows, so that nothing of it is lost when the search is called off
  let bestSoFar = handbook.score > nowCoarse.score ? handbook : nowCoarse
  let told = bestSoFar.score
  const soFar = () => answer({ found: { ...plain(bestSoFar), name: 'found' }, band: bandOf(bestSoFar) })
  work.early?.(soFar())
  const note = (judged: readonly Judged[]) => {
    for (const j of judged) if (j.score > bestSoFar.score) bestSoFar = j
    if (bestSoFar.score < told + worthTelling) return
    told = bestSoFar.score
    work.early?.(soFar())
  }
  try {
    return await decided()
  } catch (error) {
    // called off, here or by the threads that were ended with it
    if (work.cancelled?.()) return soFar()
    throw error
  }

  async function decided(): Promise<PipeSearchAnswer> {
    tell(0.1, 'searching, with coarse cells')
    const worth = async (shapes: readonly PipeShape[]) => {
      const judged = await tryMany(shapes.map((x) => ({ name: 'found', pipe: build(x), cells: 'coarse' })))
      note(judged)
      return judged.map((j) => j.score)
    }
    let best = start
    if (present) {
      const s = fitted(present, trial)
      const [a] = await worth([s])
      if (a! > handbook.score) best = s
    }
    const found = await searchPipe(best, worth, {
      progress: (part, score) => tell(0.1 + 0.55 * part, progressSays(score - 1)),
      ...(work.cancelled ? { cancelled: work.cancelled } : {}),
    })
    if (found.cancelled) throw new CalledOff('called off')

    tell(0.66, 'deciding, with fine cells')
    const [now, handbookFine, ...judged] = (await tryMany([
      { name: 'now', pipe: trial.now, cells: 'fine' },
      { name: 'handbook', pipe: build(start), cells: 'fine' },
      ...found.leaders.map((l) => ({ name: 'found' as const, pipe: build(l.shape), cells: 'fine' as const })),
    ])) as [Judged, Judged, ...Judged[]]
    const winner = judged.reduce((a, j) => (j.score > a.score ? j : a))
    const shape = makeable(found.leaders[judged.indexOf(winner)]!.shape)
    tell(0.8, 'rounding to sizes that can be made')
    const made = (x: PipeShape) => roundedPipe(build(x))
    const snapped = await look('found', made(shape), 'fine')
    tell(0.84, 'what to change next')
    const next = await changesNext(trial, shape, made, snapped, tryMany)
    tell(1, 'done')
    return answer({
      final: true,
      now: plain(now),
      handbook: plain(handbookFine),
      found: plain(snapped),
      snappingCost: winner.score - snapped.score,
      next,
      band: bandOf(snapped),
      curves,
    })
  }
}

/** growth of the score that is worth a new early answer */
const worthTelling = 0.005

/** The same threshold as the verdict's, so that no gain is promised on the way that the end then denies. */
const progressSays = (gain: number) =>
  gain > exhaustLimits.pipeGain.value
    ? `searching, with coarse cells: ${signedPercent(gain)} so far, to be decided with fine ones`
    : 'searching, with coarse cells: nothing better so far'

const signedPercent = (x: number) => `${x < 0 ? '−' : '+'}${Math.abs(100 * x).toFixed(1)} %`

function bandOf(a: Judged): { from: number; to: number } {
  const list = [...a.band.filter(Number.isFinite), ...(a.band.length === 0 ? [a.pullAt] : [])]
  return { from: Math.min(...list), to: Math.max(...list) }
}

/** Finite differences round the pipe found, with fine cells: both ways, since curves bend. */
async function changesNext(
  trial: Trial,
  shape: PipeShape,
  build: (s: PipeShape) => PipeAnswer['pipe'],
  at: Judged,
  tryMany: (requests: readonly TrialRequest[]) => Promise<Judged[]>,
): Promise<NextChange[]> {
  const mm = 1e-3
  const degree = Math.PI / 180
  const rows: { says: string; step: number; shape?: PipeShape; opens?: number }[] = (
    [1, -1] as const
  ).flatMap((sign) => {
    const word = (more: string, less: string) => (sign > 0 ? more : less)
    const ten = sign * 10 * mm
    return [
      {
        says: `header 10 mm ${word('longer', 'shorter')}`,
        step: ten,
        shape: { ...shape, header: shape.header + ten },
      },
      {
        says: `stinger 10 mm ${word('longer', 'shorter')}`,
        step: ten,
        shape: { ...shape, stinger: shape.stinger + ten },
      },
      {
        says: `stinger bore 1 mm ${word('wider', 'narrower')}`,
        step: sign * mm,
        shape: { ...shape, stingerBore: shape.stingerBore + sign * mm },
      },
      {
        says: `exhaust port opening 1° ${word('later', 'earlier')}`,
        step: sign * degree,
        opens: sign * degree,
      },
    ]
  })
  const judged = await tryMany(
    rows.map((row) => ({
      name: 'found',
      pipe: build(row.shape ?? shape),
      cells: 'fine',
      ...(row.opens === undefined ? {} : { opens: row.opens }),
    })),
  )
  return rows.map((row, i) => {
    const j = judged[i]!
    return {
      says: row.says,
      step: row.step,
      ...(row.opens === undefined ? {} : { path: `engines.${trial.index}.ports.exhaust.opens` }),
      peakAt: j.peakAt - at.peakAt,
      torque: Math.max(...j.curve.torque) - Math.max(...at.curve.torque),
      thrust: trial.speeds.length > 0 ? j.thrust - at.thrust : j.pull - at.pull,
    }
  })
}
