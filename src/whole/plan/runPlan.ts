/** The plan of a run: which twenty seconds to run, what each should sound like and read, and which suspects it tells apart. */
import {
  type AmountMaker,
  inCount,
  inNewtons,
  inPercent,
  inRpm,
  inSpeed,
  ranged,
} from '../../base/answers/amounts.ts'
import { type Sentence, say } from '../../base/answers/sentence.ts'
import type { Range } from '../../base/answers/solved.ts'
import type { Craft } from '../../craft/index.ts'
import type { SolvedCurves } from '../../trades/engine/enginesFromCraft.ts'
import type { Balance } from '../push/balanceTypes.ts'
import { MapStore } from '../push/craftModel.ts'
import { type Outcome, outcomeOf, type PlanModel, planModel, type Trial } from './planModel.ts'
import { checklist, kit, phonePlace, stepWords } from './planWords.ts'
import {
  type ModelDoubt,
  type NamedRight,
  namedRight,
  scatter,
  severities,
  type TrialOutcomes,
} from './planWorth.ts'
import { type Believed, type Suspect, suspectsOf } from './suspects.ts'

/** What is heard and read in a step if one suspect is true; ranges are the model's own. */
export interface Expected {
  suspect: string
  says: Sentence
  /** engine speed of each shaft, rev/s */
  rotation: readonly Range[]
  pull?: Range
  speed?: Range
}

export interface PlanStep {
  id: string
  /** the order: what to do */
  act: Sentence
  minutes: number
  /** what to read on the scale or the phone */
  read: string
  /** the first is the craft as the file has it, then the suspects that would sound most different */
  expected: readonly Expected[]
  /** ids of the suspects it tells from the craft as filed */
  separates: readonly string[]
  cautions: readonly string[]
}

export interface RunPlan {
  says: Sentence
  steps: readonly PlanStep[]
  minutes: number
  /** chance that the likeliest cause is the true one, now and after the run */
  before: NamedRight
  after: NamedRight
  suspects: readonly Suspect[]
  phone: readonly Sentence[]
  checklist: readonly Sentence[]
  kit: readonly string[]
}

/** minutes on the water a plan may take, and what tying up and casting off take of them */
const mostMinutes = 15
const tying = 3
/** a step that makes the right answer likelier by less than this is left out */
const leastGain = 0.012
/** expected figures shown in a step, the craft as filed among them */
const shown = 5

/** standard deviations from which a step tells a suspect from the craft as filed; a cut never tells much by itself */
const tells = 2
const tellsLittle = 0.8

interface Able extends Trial {
  minutes: number
}

/** Trials this craft can make. */
function trialsOf(craft: Craft): Able[] {
  const engines = craft.engines.flatMap((e, i) => (e.running ? [i] : []))
  const electric = engines.every((i) => craft.engines[i]!.kind === 'electric')
  const alone =
    engines.length > 1
      ? engines.map((i): Able => ({ id: `alone ${i + 1}`, engines: [i], throttle: 1, minutes: 2.5 }))
      : []
  return [
    ...alone,
    { id: 'third', engines, throttle: 1 / 3, minutes: 1 },
    { id: 'two-thirds', engines, throttle: 2 / 3, minutes: 1 },
    { id: 'full', engines, throttle: 1, minutes: 1.5 },
    ...(electric ? [] : [{ id: 'choke', engines, throttle: 1, choked: true, minutes: 1 } as Able]),
    { id: 'cut', engines, throttle: 1, cut: true, minutes: 0.5 },
    { id: 'way', engines, throttle: 1, underWay: true, minutes: 5 },
  ]
}

export interface PlanSetting extends Believed {
  solved?: SolvedCurves
  maps?: MapStore
}

/** Plans the run of a craft. `balance` is its own, with ranges. Throws NotBalanced when an engine has no curve. */
export function runPlan(craft: Craft, balance: Balance, setting: PlanSetting = {}): RunPlan {
  if (!craft.engines.some((e) => e.running)) return nothingRuns(craft)
  const of = planModel(craft, setting.maps ?? new MapStore(), setting.solved)
  const suspects = suspectsOf(craft, setting)
  const able = trialsOf(craft)
  const outcomes = new Map(able.map((trial) => [trial.id, outcomesOf(of, trial, suspects)]))
  const doubt = doubtOf(balance)
  const { chosen, after } = choose(able, outcomes, suspects, doubt)
  const steps = chosen.map((trial) => stepOf(craft, trial, outcomes.get(trial.id)!, suspects, balance))
  const before = namedRight(suspects, [], doubt)
  const minutes = tying + chosen.reduce((sum, t) => sum + t.minutes, 0)
  return {
    says: planSays(steps, minutes, before, after),
    steps,
    minutes,
    before,
    after,
    suspects,
    phone: phonePlace(craft),
    checklist: checklist(craft),
    kit: kit(
      craft,
      steps.map((s) => s.id),
    ),
  }
}

const nothingRuns = (craft: Craft): RunPlan => ({
  says: 'No engine of the craft file runs, so there is no run to plan: set one to running first.',
  steps: [],
  minutes: 0,
  before: { cause: Number.NaN, engine: Number.NaN },
  after: { cause: Number.NaN, engine: Number.NaN },
  suspects: [],
  phone: phonePlace(craft),
  checklist: checklist(craft),
  kit: kit(craft, []),
})

const planSays = (
  steps: readonly PlanStep[],
  minutes: number,
  before: NamedRight,
  after: NamedRight,
): Sentence =>
  say`${inCount(steps.length)} steps of about twenty seconds, ${inCount(Math.round(minutes))} minutes on the water: the likeliest cause is then the right one in ${inPercent(after.cause)} of such craft, against ${inPercent(before.cause)} before.`

const outcomesOf = (of: PlanModel, trial: Trial, suspects: readonly Suspect[]): TrialOutcomes =>
  suspects.map((s) => {
    const still = Object.keys(s.change).length === 0
    const one = still ? outcomeOf(of, trial, s, 0) : undefined
    return severities.map((part) => one ?? outcomeOf(of, trial, s, part))
  })

/** One standard deviation of each answer's common doubt, from the balance's own ranges. */
function doubtOf(balance: Balance): ModelDoubt {
  const of = ({ value, low, high }: Range, usual: number) => {
    const part = Math.log(high / low) / (2 * 1.96)
    return Number.isFinite(part) && value > 0 ? part : usual
  }
  return {
    rotation: of(balance.tiedUpRotation, 0.05),
    pull: of(balance.pull, 0.12),
    speed: of(balance.topSpeed, 0.08),
  }
}

/** Full throttle tied up first, then whatever makes the right answer likelier by most a minute, as long as there is time. */
function choose(
  able: readonly Able[],
  outcomes: ReadonlyMap<string, TrialOutcomes>,
  suspects: readonly Suspect[],
  doubt: ModelDoubt,
): { chosen: Able[]; after: NamedRight } {
  const chosen = able.filter((t) => t.id === 'full')
  const worth = (trials: readonly Able[]) =>
    namedRight(
      suspects,
      trials.map((t) => outcomes.get(t.id)!),
      doubt,
    )
  let after = worth(chosen)
  let left = mostMinutes - tying - chosen.reduce((sum, t) => sum + t.minutes, 0)
  for (;;) {
    let best: { trial: Able; after: NamedRight; rate: number } | undefined
    for (const trial of able) {
      if (chosen.includes(trial) || trial.minutes > left) continue
      const then = worth([...chosen, trial])
      // which engine it is counts as much as what it is
      const gain = (then.cause - after.cause + then.engine - after.engine) / 2
      const rate = gain / trial.minutes
      if (gain >= leastGain && (!best || rate > best.rate)) best = { trial, after: then, rate }
    }
    if (!best) break
    chosen.push(best.trial)
    after = best.after
    left -= best.trial.minutes
  }
  return { chosen: able.filter((t) => chosen.includes(t)), after }
}

function stepOf(
  craft: Craft,
  trial: Able,
  outcomes: TrialOutcomes,
  suspects: readonly Suspect[],
  balance: Balance,
): PlanStep {
  const filed = Math.max(
    0,
    suspects.findIndex((s) => Object.keys(s.change).length === 0),
  )
  const base = outcomes[filed]![0]!
  const middle = severities.length >> 1
  const rows = suspects
    .map((suspect, s) => ({
      suspect,
      outcome: outcomes[s]![middle]!,
      apart: apartBy(base, outcomes[s]![middle]!),
    }))
    .filter(({ apart }, s) => s !== filed && apart > (trial.cut ? tellsLittle : tells))
    .sort((a, b) => b.suspect.share * Math.min(b.apart, 6) - a.suspect.share * Math.min(a.apart, 6))
  const list = [{ suspect: suspects[filed]!, outcome: base }, ...rows.slice(0, shown - 1)]
  return {
    ...stepWords(craft, trial),
    id: trial.id,
    minutes: trial.minutes,
    expected: list.map(({ suspect, outcome }) => expectedOf(craft, suspect, outcome, base, balance)),
    separates: rows.map(({ suspect }) => suspect.id),
  }
}

/** How far two outcomes stand apart, in standard deviations of the readings. */
function apartBy(a: Outcome, b: Outcome): number {
  const by = (x: number, y: number, sd: number) => {
    if (!(x > 0)) return 0
    return y > 0 ? Math.log(y / x) / sd : 10
  }
  const parts = [
    ...a.rotation.map((r, i) => by(r, b.rotation[i]!, scatter.rotation)),
    by(a.pull, b.pull, scatter.pull),
    by(a.speed, b.speed, scatter.speed),
    by(a.fall, b.fall, scatter.fall),
    a.uneven === b.uneven ? 0 : 1 / scatter.uneven,
  ]
  return Math.hypot(...parts)
}

function expectedOf(
  craft: Craft,
  suspect: Suspect,
  outcome: Outcome,
  base: Outcome,
  balance: Balance,
): Expected {
  // the trials are solved at the file's own values; a headline tells the middle of its draws: all stand by that one
  const like = (value: number, of: Range, solved: number): Range => {
    const shift = Number.isFinite(of.value / solved) ? of.value / solved : 1
    const [low, high] = [of.low / of.value, of.high / of.value]
    return { value: value * shift, low: value * shift * low, high: value * shift * high }
  }
  const { tiedUp, top } = balance
  const rotation = outcome.rotation.map((r) => like(r, balance.tiedUpRotation, tiedUp.rotation))
  const pull = base.pull > 0 ? like(outcome.pull, balance.pull, tiedUp.thrust) : undefined
  const speed = base.speed > 0 ? like(outcome.speed, balance.topSpeed, top?.speed ?? Number.NaN) : undefined
  return {
    suspect: suspect.id,
    says: expectedSays(craft, suspect, outcome, { rotation, pull, speed }),
    rotation,
    ...(pull ? { pull } : {}),
    ...(speed ? { speed } : {}),
  }
}

const fallSays = (fall: number): Sentence =>
  Math.abs(fall - 1) > 0.01
    ? say`runs down ${inPercent(Math.abs(fall - 1))} ${fall > 1 ? 'faster' : 'slower'} than in the last good run`
    : 'runs down as in the last good run'

function expectedSays(
  craft: Craft,
  suspect: Suspect,
  outcome: Outcome,
  {
    rotation,
    pull,
    speed,
  }: { rotation: readonly Range[]; pull: Range | undefined; speed: Range | undefined },
): Sentence {
  const each = rotation.length > 1
  const name = (u: number) => (each ? `${craft.engines[u]?.name ?? `engine ${u + 1}`} ` : '')
  if (Number.isFinite(outcome.fall)) return say`${fallSays(outcome.fall)}: ${suspect.says}`
  const shaftSays = rotation.reduce<Sentence>((all, r, u) => {
    const between = u === 0 ? '' : ', '
    return Number.isFinite(r.value)
      ? say`${all}${between}${name(u)}${ranged(inRpm, r)}`
      : say`${all}${between}${name(u)}not turning`
  }, '')
  const uneven = outcome.uneven ? ', firing unevenly (lines at half orders)' : ''
  const read = (make: AmountMaker, r: Range | undefined, words: string): Sentence =>
    r && Number.isFinite(r.value) ? say`, ${words} ${ranged(make, r)}` : ''
  return say`${shaftSays}${uneven}${read(inNewtons, pull, 'pull')}${read(inSpeed, speed, 'speed')}: ${suspect.says}`
}
