/** Hearing, and what the model expected, as findings of the question 'runs'. */
import { asChange, inCount, inNewtons, inPercent, inScaleKg, ranged } from '../../base/answers/amounts.ts'
import { clockText } from '../../base/answers/clockText.ts'
import type { Finding, MeasureNext, Standing } from '../../base/answers/finding.ts'
import { type Sentence, say } from '../../base/answers/sentence.ts'
import type { Range } from '../../base/answers/solved.ts'
import { countAgainst } from './expecting.ts'
import { doubtOf, type HeardEngine, nameOf, runAnswer } from './heardAnswer.ts'
import type { Hearing } from './hearingTypes.ts'
import { type Pull, pullResidual } from './pull.ts'
import { comparedSpeeds, longestOf, type Predicted } from './residuals.ts'
import { atRpm } from './saySpeed.ts'
import type { EventKind } from './shaftEvents.ts'
import type { CraftExpects } from './soundFromCraft.ts'
import type { SoundLimits } from './soundLimits.ts'

const source =
  'Read from the recording by a comb of harmonics and dynamic programming; accuracy in docs/hearing.md'

/** A hearing, its octaves settled by the craft where that was possible, with what is known beside it. */
export interface RunKnown extends Predicted {
  expects?: CraftExpects | undefined
  pull?: { read: Pull; predicted: Range } | undefined
}

/** The page's answer: what the engines did, how fast, how sure. */
export function runHeadline(
  { hearing: h, expects }: RunKnown,
  heard: readonly HeardEngine[],
  limits: SoundLimits,
): Finding {
  const { says, confidence, open } = runAnswer(h, expects, heard, limits)
  const first = heard[0]
  const doubted = doubtOf(h, heard, limits) !== undefined
  const measureNext = whatNext(h, doubted)
  return {
    id: 'runs.headline',
    question: 'runs',
    says,
    ...(first ? { value: first.usual / 60, low: first.low / 60, high: first.high / 60, unit: 'rev/s' } : {}),
    standing: open ? 'unknown' : 'good',
    because: [{ says: confidence }, ...h.flags.map((f) => ({ says: f.text }))],
    ...(measureNext ? { measureNext } : {}),
    sources: [source],
  }
}

function whatNext(h: Hearing, doubted: boolean): MeasureNext | undefined {
  if (h.verdict.code === 'no engine' || doubted)
    return {
      what: 'record again from 3 to 10 m, plain camera, fingers off the microphones, out of the wind',
      with: 'phone',
      minutes: 10,
    }
  if (h.verdict.code === 'cannot tell')
    return { what: 'listen whether it burbled, or record one engine alone', with: 'phone', minutes: 10 }
  return undefined
}

interface Rule {
  standing: Standing
  measure: string
  minutes: number
}

/** Kinds of event that need looking into, with what to do next. */
const serious: Partial<Record<EventKind, Rule>> = {
  flare: {
    standing: 'watch',
    measure: 'look at the coupling, and watch the intake when it races',
    minutes: 15,
  },
  'load lost': {
    standing: 'watch',
    measure: 'stop the engines, then look at the coupling and the impeller, and at the intake for weed',
    minutes: 15,
  },
  'coupling opens': {
    standing: 'watch',
    measure: 'stop both engines, then look at the coupling between them',
    minutes: 15,
  },
  hunting: {
    standing: 'watch',
    measure: 'let it idle with the choke a little on: if it steadies, look for air leaking in',
    minutes: 10,
  },
  ventilation: {
    standing: 'watch',
    measure: 'watch the intake from the side at the moment it races',
    minutes: 15,
  },
  bog: {
    standing: 'watch',
    measure: 'open the throttle slowly and fast in turn, and note the difference',
    minutes: 10,
  },
  fall: {
    standing: 'watch',
    measure:
      'unless a hand eased the throttle: run on at full throttle with the tank cap loosened, and note whether the speed falls again',
    minutes: 10,
  },
  misfire: { standing: 'watch', measure: 'look at the plug and try a new one', minutes: 10 },
  'four-stroking': {
    standing: 'watch',
    measure: 'look at the plug, and lean the mixture a little if it is black and wet',
    minutes: 15,
  },
  'one dead': {
    standing: 'stop',
    measure: 'feel both exhausts from a distance for heat: a cold one has not fired',
    minutes: 5,
  },
  'water hit': { standing: 'watch', measure: 'look for the way spray reaches the air intake', minutes: 10 },
  'cut-out': {
    standing: 'watch',
    measure: 'wiggle the stop-switch lead with the engine idling, craft tied up',
    minutes: 5,
  },
}

/** What comes before an event's own words where they need it. */
const leads: Partial<Record<EventKind, string>> = { fall: 'its speed falls ' }

function eventFindings(h: Hearing, limits: SoundLimits): Finding[] {
  const out: Finding[] = []
  for (const [kind, rule] of Object.entries(serious) as [EventKind, Rule][]) {
    const all = h.events.filter((e) => e.kind === kind && e.confidence > limits.told.value)
    const first = all[0]
    if (!first) continue
    const who = first.engine === 'both' ? 'Both engines' : nameOf(h, first.engine)
    const again = all.length > 1 ? ` (${all.length} times in all)` : ''
    out.push({
      id: `runs.${kind.replace(' ', '-')}`,
      question: 'runs',
      says: say`${who} at ${clockText(first.time)}: ${leads[kind] ?? ''}${first.says}${again}.`,
      standing: rule.standing,
      // one alone is told already
      because: [
        ...(all.length > 1
          ? all.slice(0, 6).map((e) => ({ says: say`${clockText(e.time)}: ${e.says}` }))
          : []),
        ...(first.excludes ? [{ says: `it cannot have been ${first.excludes}` }] : []),
      ],
      measureNext: { what: rule.measure, with: 'eyes and hands', minutes: rule.minutes },
      sources: [source],
    })
  }
  return out
}

/** The number of lines heard beside the engines in the craft file. */
function countFinding(h: Hearing, expects: CraftExpects): Finding[] {
  const count = countAgainst(h, expects)
  if (!count) return []
  return [
    {
      id: 'runs.count',
      question: 'runs',
      says: count.says,
      standing: count.agrees ? 'good' : 'watch',
      because: [{ says: h.verdict.says, link: 'drive.arrangement' }],
      ...(count.agrees
        ? {}
        : {
            measureNext: {
              what: 'feel both exhausts from a distance for heat, and look at the coupling for slip marks',
              with: 'eyes and hands, engines off',
              minutes: 10,
            },
          }),
      sources: [source],
    },
  ]
}

/** How far off, and how far would be no surprise; `step` is the least part worth showing. */
const offBy = (r: { part: number; low: number; high: number }, step: number): Sentence => {
  const [part, low, high] = [r.part, r.low, r.high].map((v) => asChange(inPercent(v, step)))
  return say`${part!}; ${low!} to ${high!} would be no surprise`
}

const pullMeans = {
  within: 'read and expected agree',
  low: 'with the speed as predicted the jet gives less than the model has it; with the speed low too, the engine is weaker',
  high: 'the jet gives more than the model has it, or the scale reads high: hang known jugs of water on it',
}

/** The scale's reading beside the predicted pull; undefined where the prediction has no range. */
export function pullFinding(pull: Pull, predicted: Range, limits: SoundLimits): Finding | undefined {
  const r = pullResidual(pull.force, predicted)
  if (!r) return undefined
  const { value, low, high } = pull.force
  // as the scale shows it; newtons stand in the reason
  const shown = (force: number) => inScaleKg(force, 0.1)
  return {
    id: 'runs.pull',
    question: 'runs',
    says: say`The scale read ${shown(value)} where ${shown(predicted.value)} was expected tied up (${offBy(r, 1)}).`,
    value,
    low,
    high,
    unit: 'N',
    standing: r.standing === 'within' ? 'good' : 'watch',
    because: [
      {
        says: say`middle of ${inCount(pull.readings)} ${pull.readings === 1 ? 'reading' : 'readings'}: ${ranged(inNewtons, pull.force)}`,
      },
      { says: pullMeans[r.standing] },
    ],
    ...(pull.readings < limits.pullEnough.value
      ? {
          measureNext: {
            what: 'read the pull twice more at full throttle, ten steady seconds each',
            with: 'luggage scale',
            minutes: 10,
          },
        }
      : r.standing === 'within'
        ? {}
        : {
            measureNext: {
              what: 'hang ten litres of water on the scale: it should read 10 kg and what the can weighs',
              with: 'luggage scale, water can',
              minutes: 5,
            },
          }),
    sources: ['Uncertainty of scale, reading and surging: authored judgement, see sound/soundLimits.ts'],
  }
}

const speedMeans = {
  within: 'heard and expected agree',
  low: 'the engine is weaker, or the load heavier, than the model has it',
  high: 'the load is lighter, or slips, or the engine is stronger than the model has it',
}

/** The longest steady stretch of each engine beside the speed predicted for it. */
function speedFindings(run: RunKnown, limits: SoundLimits): Finding[] {
  const all = comparedSpeeds(run, limits)
  return (['A', 'B'] as const).flatMap((label): Finding[] => {
    const longest = longestOf(all, label)
    if (!longest) return []
    const { heard, predicted, standing } = longest
    return [
      {
        id: `runs.residual-${label}`,
        question: 'runs',
        says: say`${nameOf(run.hearing, label)} ran at ${atRpm(heard)} where ${atRpm(predicted)} was expected (${offBy(longest, 0.1)}).`,
        value: heard / 60,
        low: (predicted * (1 + longest.low)) / 60,
        high: (predicted * (1 + longest.high)) / 60,
        unit: 'rev/s',
        standing: standing === 'within' ? 'good' : 'watch',
        because: [
          { says: `steady from ${clockText(longest.from)} to ${clockText(longest.to)}` },
          { says: speedMeans[standing] },
        ],
        ...(standing === 'within'
          ? {}
          : {
              measureNext: {
                what: 'read the pull tied up at full throttle: pull and speed both low is the engine, pull alone the jet',
                with: 'luggage scale',
                minutes: 15,
              },
            }),
        sources: [source],
      },
    ]
  })
}

/** Findings of a run beside its headline; with what is known beside its sound, also how the two compare. */
export function runFindings(run: RunKnown, heard: readonly HeardEngine[], limits: SoundLimits): Finding[] {
  const { hearing: h, expects, pull } = run
  // what is perhaps no engine has no events, and is counted against nothing
  const doubted = doubtOf(h, heard, limits) !== undefined
  const read = pull && pullFinding(pull.read, pull.predicted, limits)
  return [
    ...(doubted ? [] : eventFindings(h, limits)),
    ...(expects && !doubted ? countFinding(h, expects) : []),
    ...(read ? [read] : []),
    ...(doubted || h.verdict.code === 'no engine' ? [] : speedFindings(run, limits)),
  ]
}
