import { readFileSync } from 'node:fs'
import type { Craft } from '../../craft/schema/craftSchema.ts'
import type { SolvedCurves } from '../../trades/engine/enginesFromCraft.ts'
import { type GpxPoint, readGpx } from '../../trades/sound/gpx.ts'
import type { Hearing } from '../../trades/sound/hearingTypes.ts'
import { readingsFault } from '../../trades/sound/pull.ts'
import type { CraftExpects } from '../../trades/sound/soundFromCraft.ts'
import { answerEngines } from '../../whole/breath/engineAnswers.ts'
import type { Balance } from '../../whole/push/balanceTypes.ts'
import { solveBalance } from '../../whole/push/solveBalance.ts'
import { type BesideRun, besideRun, matchTrack, type ToldOfRun } from '../../whole/runs/besideRun.ts'
import { fileStore } from './engineStore.ts'
import { BadInput } from './outcome.ts'

/** What may be told of a run on the command line. */
export interface ToldOptions {
  tiedUp?: boolean
  gpx?: string
  lag?: string
  phone?: string
  pull?: string
}

/** Checks what was typed; undefined when nothing of the run was told. Throws BadInput. */
export function typedTold(options: ToldOptions, craftGiven: boolean): ToldOfRun | undefined {
  const { tiedUp, gpx, lag, phone = 'shore', pull = '' } = options
  if (!tiedUp && gpx === undefined && pull === '') {
    if (lag !== undefined) throw new BadInput(['hear: --lag needs a track to move: add --gpx FILE'])
    return undefined
  }
  if (!craftGiven)
    throw new BadInput(['hear: --tied-up, --gpx and --pull stand beside a craft: add --craft FILE'])
  if (tiedUp && gpx !== undefined)
    throw new BadInput(['hear: a craft is either tied up or under way: --tied-up or --gpx, not both'])
  if (phone !== 'shore' && phone !== 'craft')
    throw new BadInput([`hear: --phone "${phone}" is not shore or craft`])
  if (lag !== undefined && !/^-?\d+(\.\d+)?$/.test(lag))
    throw new BadInput([`hear: --lag "${lag}" is not a number of seconds`])
  const fault = readingsFault(pull)
  if (fault) throw new BadInput([`hear: --pull: ${fault}`])
  return {
    kind: gpx === undefined ? (tiedUp || pull !== '' ? 'tied up' : 'not said') : 'under way',
    readings: pull,
    gpx: gpx === undefined ? [] : readTrack(gpx),
    ...(lag === undefined ? {} : { lag: Number(lag) }),
    phone: phone === 'shore' ? 'on shore' : 'on the craft',
  }
}

function readTrack(path: string): GpxPoint[] {
  let text: string
  try {
    text = readFileSync(path, 'utf8')
  } catch {
    throw new BadInput([`hear: --gpx "${path}" cannot be read`])
  }
  const { points, flags } = readGpx(text)
  if (points.length < 3) throw new BadInput(flags.map((f) => `hear: --gpx: ${f.text}`))
  return points
}

/** The hearing beside the craft's own prediction. */
export function besideCraft(
  heard: Hearing,
  craft: Craft,
  expects: CraftExpects,
  told: ToldOfRun | undefined,
): BesideRun {
  const run = told ?? { kind: 'not said', readings: '', gpx: [], phone: 'on shore' }
  const balance = told ? balanceOf(craft).balance : undefined
  return besideRun(heard, run, expects, balance, matchTrack(heard, run.gpx))
}

/** With ranges, and the curves it was reckoned from; empty when the craft cannot be balanced. */
export function balanceOf(craft: Craft): { balance?: Balance; solved?: SolvedCurves } {
  try {
    const engines = answerEngines(craft, { store: fileStore() })
    const solved = engines ? { solved: engines.solved } : {}
    return { balance: solveBalance(craft, solved), ...solved }
  } catch {
    return {}
  }
}
