import type { Decision } from '../base/answers/decision.ts'
import type { Finding } from '../base/answers/finding.ts'
import { type Craft, type CraftFiles, giveFiles, readCraft, whatIf } from '../craft/index.ts'
import type { TorqueCurve } from '../trades/engine/curve.ts'
import { answerEngines, type EngineAnswers, mapStore } from '../whole/breath/engineAnswers.ts'
import { type FirstLook, type Look, lookAt } from '../whole/look.ts'
import type { Balance } from '../whole/push/balanceTypes.ts'
import { MapStore } from '../whole/push/craftModel.ts'
import { Cancelled, defineJob, type JobContext } from './job.ts'

export interface LookOrder {
  /** a craft file's text that reads without errors */
  text: string
  /** tried values by path: SI numbers, words, flags */
  tried?: Readonly<Record<string, number | string | boolean>>
  /** what the craft names, such as its hull mesh, and a name for their state: the same name, the same files */
  files?: CraftFiles
  filesAre?: string
}

export interface LookAnswer {
  /** on the way to the answer: only how it goes, its ranges from few draws, no decisions */
  first?: true
  now: Finding[]
  tried?: Finding[]
  /** what to do about it, worst first */
  decisions: Decision[]
  triedDecisions?: Decision[]
  /** with ranges and changes; absent when an engine has no torque curve yet */
  balance?: Balance
  triedBalance?: Balance
  /** torque curves that were simulated, by engine index: what a quick balance on the page has to be given */
  solved: [number, TorqueCurve][]
  triedSolved?: [number, TorqueCurve][]
  /** engines simulated coarsely for it */
  coarse?: true
}

/** pump maps of earlier looks; most changes leave them as they are */
const maps = new MapStore()

/** simulated engines of earlier looks */
const engines = mapStore()

interface Looked extends Look {
  solved: [number, TorqueCurve][]
}

/** the last text looked at: while values are tried it stays the same */
let last: { text: string; filesAre: string; look: Looked } | undefined

/** Told of answers on the way: first how it goes from few draws, then, where engines are simulated, all of it from coarse ones. */
interface OnTheWay {
  first: (look: FirstLook, answers: EngineAnswers) => void
  coarse?: (look: Looked) => void
}

function lookWell(craft: Craft, context: JobContext, from: number, way?: OnTheWay): Looked {
  const lookWith = (answers: EngineAnswers, first?: OnTheWay['first']): Looked => ({
    ...lookAt(craft, { maps, engines: answers, ...(first ? { first: (f) => first(f, answers) } : {}) }),
    solved: [...answers.solved],
  })
  const quick = way?.coarse && answerEngines(craft, { store: engines, coarse: true })
  const coarse = quick && quick.coarse.size > 0
  if (coarse) way?.coarse?.(lookWith(quick, way.first))
  const answers: EngineAnswers | undefined = answerEngines(craft, {
    store: engines,
    progress: (part, says) => context.progress(from + 0.45 * part, says),
    cancelled: () => context.cancelled(),
  })
  if (!answers) throw new Cancelled()
  return lookWith(answers, coarse ? undefined : way?.first)
}

const plainAnswer = (now: Looked): LookAnswer => ({
  now: now.findings,
  decisions: now.decisions,
  solved: now.solved,
  ...(now.balance ? { balance: now.balance } : {}),
})

/** A first answer as plain data. */
const firstAnswer = ({ balance, headline }: FirstLook, answers: EngineAnswers): LookAnswer => ({
  first: true,
  now: [headline],
  decisions: [],
  balance,
  solved: [...answers.solved],
  ...(answers.coarse.size > 0 ? { coarse: true } : {}),
})

/** All findings of a craft, and of the same with the tried values in it; `context.early` gets first coarse ones. */
export const look = defineJob('look', (order: LookOrder, context): LookAnswer => {
  const { craft } = readCraft(order.text)
  if (!craft) throw new RangeError('text: the craft file cannot be read')
  if (order.files) giveFiles(craft, order.files)
  context.progress(0, 'Looking at the craft')
  const filesAre = order.filesAre ?? ''
  const { early } = context
  if (last?.text !== order.text || last.filesAre !== filesAre) {
    const way = early && {
      first: (first: FirstLook, answers: EngineAnswers) => early(firstAnswer(first, answers)),
      coarse: (coarse: Looked) => early({ ...plainAnswer(coarse), coarse: true }),
    }
    last = { text: order.text, filesAre, look: lookWell(craft, context, 0, way) }
  }
  const now = last.look
  const answer = plainAnswer(now)
  if (!order.tried) return answer
  context.progress(0.5, 'Looking at what is tried')
  const way = early && {
    first: ({ balance }: FirstLook, answers: EngineAnswers) =>
      early({ ...answer, first: true, triedBalance: balance, triedSolved: [...answers.solved] }),
  }
  const tried = lookWell(whatIf(craft, order.tried), context, 0.5, way)
  return {
    ...answer,
    tried: tried.findings,
    triedDecisions: tried.decisions,
    triedSolved: tried.solved,
    ...(tried.balance ? { triedBalance: tried.balance } : {}),
  }
})
