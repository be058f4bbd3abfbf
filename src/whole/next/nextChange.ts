/**
 * The next change: of those that this craft can make, the one that is surest to buy what its builder wants, with what it costs in
 * hours and grams and what the next run should show if it is right; or nothing yet, and why. Gains and their ranges are the balance's
 * own (the whole craft solved again with the change made). Hours and grams are judgement, for one person with a printer.
 */
import {
  asChange,
  inGrams,
  inHours,
  inNewtons,
  inPercent,
  inRpm,
  inSpeed,
  ranged,
} from '../../base/answers/amounts.ts'
import type { FileChange } from '../../base/answers/decision.ts'
import type { Finding } from '../../base/answers/finding.ts'
import { joined, type Sentence, say, whole } from '../../base/answers/sentence.ts'
import type { Range } from '../../base/answers/solved.ts'
import type { Craft } from '../../craft/index.ts'
import { printMaterials } from '../../trades/jet/printed.ts'
import type { RunRanking } from '../faults/rankingTypes.ts'
import { comparable } from '../log/compare.ts'
import { type CraftLog, isChange, runsOf } from '../log/craftLog.ts'
import type { Balance, Change } from '../push/balanceTypes.ts'
import { fileChanges } from '../push/design.ts'
import { type Wants, wantsOf, wantsSays } from '../push/merit.ts'

export interface NextChange {
  says: Sentence
  /** absent where nothing should be changed yet; `says` tells why */
  change?: {
    id: string
    says: Sentence
    changes: readonly FileChange[]
    /** part by which what the builder wants grows */
    gain: Range
    /** hands-on, s */
    hours: Range
    /** the printer's own or waiting, s */
    waiting: Range
    /** kg that the craft gains; what a printed part weighs that takes another's place counts as nothing */
    mass: Range
    /** what the next run should show if it is right */
    expects: { rotation: Range; pull: Range; topSpeed: Range; from: 'last run' | 'model' }
    /** the same in words */
    show: Sentence
  }
}

/** What a change costs: hours of hands and of waiting, grams; "new" where nothing comes off for it. */
interface Cost {
  hands: readonly [number, number]
  waits: readonly [number, number]
  grams: readonly [number, number]
}

const costs: readonly [RegExp, Cost][] = [
  [/^(pitch|blade)/, { hands: [1.5, 3], waits: [8, 18], grams: [-15, 15] }],
  [/^nozzle/, { hands: [0.7, 1.5], waits: [3, 7], grams: [-10, 10] }],
  [/^gap/, { hands: [1, 3], waits: [3, 8], grams: [5, 40] }],
  [/^edge/, { hands: [0.5, 1], waits: [0, 0], grams: [-3, 0] }],
  [/^smooth/, { hands: [1, 2], waits: [8, 24], grams: [2, 8] }],
  [/^ratio/, { hands: [2, 5], waits: [0, 0], grams: [-100, 150] }],
  [/^stator/, { hands: [2, 4], waits: [6, 14], grams: [80, 250] }],
]

const hour = 3600

/** This craft can make it: printed parts where it is printed, a ratio where there is one; nobody makes a craft lighter by wishing. */
export function canMake(craft: Craft, change: Pick<Change, 'id'>): boolean {
  if (!costs.some(([id]) => id.test(change.id))) return false
  const printed = printMaterials[craft.jet.rotor.material] !== undefined
  return printed || !/^(pitch|blade|smooth)/.test(change.id)
}

/** Part by which what is wanted grows, its range with it. */
function gainIn(wants: Wants, b: Balance, { pull, topSpeed }: Pick<Change, 'pull' | 'topSpeed'>): Range {
  const part = (r: Range, of: number): Range => ({ value: r.value / of, low: r.low / of, high: r.high / of })
  const p = part(pull, b.pull.value)
  const v = part(topSpeed, b.topSpeed.value)
  if (wants === 'pull' || wants === 'plane' || !Number.isFinite(v.value)) return p
  if (wants === 'speed') return v
  return { value: (p.value + v.value) / 2, low: (p.low + v.low) / 2, high: (p.high + v.high) / 2 }
}

/** gain below which no hour is worth spending (judgement) */
const worthMaking = 0.015
/** share of a cause from which it is found out before anything is changed (judgement) */
const causeFirst = 0.3
/** two runs of the same craft differ by so much, nineteen times in twenty */
const scatter = { rotation: 0.042, pull: 0.11, topSpeed: 0.14 } as const

export interface NextSetting {
  findings?: readonly Finding[]
  log?: CraftLog
  ranking?: RunRanking
}

export function nextChange(craft: Craft, balance: Balance, setting: NextSetting = {}): NextChange {
  const wait = waitFor(setting)
  if (wait) return { says: wait }
  if (!balance.ranged) return { says: 'Nothing yet: how it goes is still being worked out.' }
  const wants = wantsOf(craft)
  const able = balance.changes
    .filter((c) => canMake(craft, c))
    .map((c) => ({ c, gain: gainIn(wants, balance, c) }))
    .filter(({ gain }) => gain.value >= worthMaking)
    .sort((x, y) => y.gain.value - x.gain.value)
  const sure = able.find(({ gain }) => gain.low > 0)
  if (!sure) return { says: notSure(able[0], balance, wants) }
  const { c, gain } = sure
  const cost = costs.find(([id]) => id.test(c.id))![1]
  const span = ([low, high]: readonly [number, number], unit: number): Range => ({
    value: ((low + high) / 2) * unit,
    low: low * unit,
    high: high * unit,
  })
  const hours = span(cost.hands, hour)
  const waiting = span(cost.waits, hour)
  const mass = span(cost.grams, 1e-3)
  const expects = expectsOf(balance, c, setting.log)
  const change = {
    id: c.id,
    says: c.says,
    changes: typeof c.to === 'number' ? fileChanges(craft, { [c.path]: c.to, ...c.also }) : [],
    gain,
    hours,
    waiting,
    mass,
    expects,
    show: showSays(expects),
  }
  const time =
    waiting.high > 0
      ? say`${ranged(inHours, hours)} of work, ${ranged(inHours, waiting)} of waiting`
      : say`${ranged(inHours, hours)} of work`
  return {
    says: say`${whole(c.says)} It buys ${asChange(ranged(inPercent, gain))} of ${wantsSays[wants]} for ${time} and ${asChange(ranged(inGrams, mass))}. One change a run: two at once hide each other.`,
    change,
  }
}

/** Why nothing should be changed yet, or undefined. */
function waitFor({ findings = [], log, ranking }: NextSetting): Sentence | undefined {
  const stop = findings.find((f) => f.standing === 'stop')
  if (stop) return say`Nothing yet: first what says stop. ${whole(stop.act ?? stop.says)}`
  const cause = ranking?.causes[0]
  if (cause && cause.share >= causeFirst && cause.id !== 'as-filed') {
    const check = ranking.checks.find((k) => k.separates.includes(cause.id)) ?? ranking.checks[0]
    const next = check ? whole(check.act) : 'Mend it and run again.'
    return say`Nothing yet: first find out about “${cause.says}” (${inPercent(cause.share)}), as a change now would hide it. ${next}`
  }
  const runs = log ? runsOf(log) : []
  const last = runs.at(-1)
  const since = log && last ? log.entries.filter((e) => e.number > last.number && isChange(e)) : []
  if (since.length > 0)
    return 'Nothing yet: the last change has not been run. Run it first, or nobody will know what it did.'
  return undefined
}

function notSure(best: { c: Change; gain: Range } | undefined, balance: Balance, wants: Wants): Sentence {
  const next = balance.drivers.find((d) => d.source === 'guess' || d.source === 'assumed')
  const measure = next ? say` Measure first what is least known: ${next.says}.` : ''
  if (!best)
    return say`Nothing yet: no change that this craft can make buys ${inPercent(worthMaking)} of ${wantsSays[wants]} or more.${measure}`
  return say`Nothing yet: the best change (${best.c.says}) may buy ${asChange(ranged(inPercent, best.gain))} of ${wantsSays[wants]}, and may cost some.${measure}`
}

/** What the next run should show: the last run's own readings moved by the change where there are any, else the model's answers. */
function expectsOf(
  b: Balance,
  c: Change,
  log: CraftLog | undefined,
): NonNullable<NextChange['change']>['expects'] {
  const last = log ? runsOf(log).at(-1) : undefined
  const read = last ? comparable(last) : {}
  const of = (seen: number | undefined, model: Range, change: Range, chance: number): Range => {
    const part = (x: number) => 1 + x / model.value
    const base =
      seen === undefined ? model : { value: seen, low: seen * (1 - chance), high: seen * (1 + chance) }
    return {
      value: base.value * part(change.value),
      low: base.low * part(change.low),
      high: base.high * part(change.high),
    }
  }
  const rotation = of(read['engine speed'], b.tiedUpRotation, c.rotation, scatter.rotation)
  const pull = of(read.pull, b.pull, c.pull, scatter.pull)
  const topSpeed = of(read['top speed'], b.topSpeed, c.topSpeed, scatter.topSpeed)
  return { rotation, pull, topSpeed, from: Object.keys(read).length > 0 ? 'last run' : 'model' }
}

function showSays({
  rotation,
  pull,
  topSpeed,
  from,
}: NonNullable<NextChange['change']>['expects']): Sentence {
  const parts: Sentence[] = []
  if (Number.isFinite(rotation.value)) parts.push(say`${ranged(inRpm, rotation)} heard tied up`)
  if (Number.isFinite(pull.value)) parts.push(say`${ranged(inNewtons, pull)} on the scale`)
  if (Number.isFinite(topSpeed.value)) parts.push(say`${ranged(inSpeed, topSpeed)} on the track`)
  return say`If it is right, the next run shows ${joined(parts)}${from === 'last run' ? ', going by the last run' : ', going by the model'}.`
}
