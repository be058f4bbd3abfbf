/** Hearing, and what the model expected, as findings of the question 'runs'. */
import type { Finding, Standing } from '../../base/answers/finding.ts'
import type { Range } from '../../base/answers/solved.ts'
import { countAgainst } from './expecting.ts'
import { clockText, doubtOf, rpmText, usualSpeed } from './heardAnswer.ts'
import type { Hearing } from './hearingTypes.ts'
import { type Pull, pullResidual } from './pull.ts'
import { type Prediction, residuals } from './residuals.ts'
import type { CraftExpects } from './soundFromCraft.ts'

const source =
  'Read from the recording by a comb of harmonics and dynamic programming; accuracy in docs/hearing.md'

function verdictFinding(h: Hearing, expects?: CraftExpects): Finding {
  const speeds = h.tracks.map(usualSpeed)
  const heard = speeds.filter((v) => v > 0)
  const doubted = doubtOf(h)
  const standing: Standing =
    h.verdict.code === 'cannot tell' || h.verdict.code === 'no engine' || doubted ? 'unknown' : 'good'
  const verdict =
    h.verdict.code === 'one' && expects?.coupling === 'single' ? 'The engine was heard.' : h.verdict.says
  const says =
    doubted ?? (heard.length > 0 ? `${verdict} Mostly at ${heard.map(rpmText).join(' and ')}.` : verdict)
  return {
    id: 'runs.heard',
    question: 'runs',
    says,
    ...(heard[0] ? { value: heard[0] / 60, unit: 'rev/s' } : {}),
    standing,
    because: h.flags.map((f) => ({ says: f.text })),
    ...(h.verdict.code === 'no engine' || doubted
      ? {
          measureNext: {
            what: 'record again from 3 to 10 m, plain camera, fingers off the microphones, out of the wind',
            with: 'phone',
            minutes: 10,
          },
        }
      : h.verdict.code === 'cannot tell'
        ? {
            measureNext: {
              what: 'listen whether it burbled, or record one engine alone',
              with: 'phone',
              minutes: 10,
            },
          }
        : {}),
    sources: [source],
  }
}

/** Kinds of event that need looking into, with what to do next. */
const serious: Partial<Record<string, { standing: Standing; measure: string; minutes: number }>> = {
  flare: {
    standing: 'watch',
    measure: 'look at the coupling, and watch the intake when it races',
    minutes: 15,
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

function eventFindings(h: Hearing): Finding[] {
  const out: Finding[] = []
  for (const [kind, rule] of Object.entries(serious)) {
    const all = h.events.filter((e) => e.kind === kind && e.confidence > 0.25)
    const first = all[0]
    if (!first || !rule) continue
    const who =
      first.engine === 'both' ? 'Both engines' : h.tracks.length > 1 ? `Engine ${first.engine}` : 'The engine'
    out.push({
      id: `runs.${kind.replace(' ', '-')}`,
      question: 'runs',
      says: `${who} at ${clockText(first.time)}: ${first.says}${all.length > 1 ? ` (${all.length} times in all)` : ''}.`,
      standing: rule.standing,
      // one alone is told already
      because:
        all.length > 1 ? all.slice(0, 6).map((e) => ({ says: `${clockText(e.time)}: ${e.says}` })) : [],
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

/** The scale's reading beside the predicted pull. */
export function pullFinding(pull: Pull, predicted: Range): Finding | undefined {
  const r = pullResidual(pull.force, predicted)
  if (!r) return undefined
  const newton = (v: number) => `${Math.round(v)} N`
  const percent = (v: number) => `${v >= 0 ? '+' : '−'}${Math.abs(100 * v).toFixed(0)} %`
  const { value, low, high } = pull.force
  return {
    id: 'runs.pull',
    question: 'runs',
    says: `The scale read ${newton(value)} where ${newton(predicted.value)} was expected tied up (${percent(r.part)}; ${percent(r.low)} to ${percent(r.high)} would be no surprise).`,
    value,
    low,
    high,
    unit: 'N',
    standing: r.standing === 'within' ? 'good' : 'watch',
    because: [
      {
        says: `middle of ${pull.readings} ${pull.readings === 1 ? 'reading' : 'readings'}, itself good to ${newton(low)} … ${newton(high)}`,
      },
      {
        says:
          r.standing === 'low'
            ? 'with the speed as predicted the jet gives less than the model has it; with the speed low too, the engine is weaker'
            : r.standing === 'high'
              ? 'the jet gives more than the model has it, or the scale reads high: hang known jugs of water on it'
              : 'read and expected agree',
        link: 'finding:push.pull',
      },
    ],
    ...(pull.readings < 3
      ? {
          measureNext: {
            what: 'read the pull twice more at full throttle, ten steady seconds each',
            with: 'luggage scale',
            minutes: 10,
          },
        }
      : {}),
    sources: ['Uncertainty of scale, reading and surging: authored judgement, see sound/pull.ts'],
  }
}

/** What is known of a run beside its sound. */
export interface KnownOfRun {
  prediction?: Prediction | undefined
  /** m/s toward the phone at a time */
  closing?: ((time: number) => number) | undefined
  expects?: CraftExpects | undefined
  pull?: { read: Pull; predicted: Range } | undefined
}

/** Findings of a run; with what is known beside its sound, also how the two compare. */
export function runFindings(h: Hearing, { prediction, closing, expects, pull }: KnownOfRun = {}): Finding[] {
  const out = [verdictFinding(h, expects)]
  // what is perhaps no engine has no events, and is counted against nothing
  const doubted = doubtOf(h) !== undefined
  if (!doubted) out.push(...eventFindings(h))
  if (expects && !doubted) out.push(...countFinding(h, expects))
  const read = pull && pullFinding(pull.read, pull.predicted)
  if (read) out.push(read)
  if (!prediction || doubted || h.verdict.code === 'no engine') return out
  for (const label of ['A', 'B'] as const) {
    const mine = residuals(h, prediction, closing).filter((r) => r.label === label)
    const longest = mine.sort((a, b) => b.to - b.from - (a.to - a.from))[0]
    if (!longest) continue
    const { heard, predicted, part, low, high, standing } = longest
    const percent = (v: number) => `${v >= 0 ? '+' : '−'}${Math.abs(100 * v).toFixed(1)} %`
    out.push({
      id: `runs.residual-${label}`,
      question: 'runs',
      says: `${h.tracks.length > 1 ? `Engine ${label}` : 'The engine'} ran at ${rpmText(heard)} where ${rpmText(predicted)} was expected (${percent(part)}; ${percent(low)} to ${percent(high)} would be no surprise).`,
      value: heard / 60,
      low: (predicted * (1 + low)) / 60,
      high: (predicted * (1 + high)) / 60,
      unit: 'rev/s',
      standing: standing === 'within' ? 'good' : 'watch',
      because: [
        { says: `steady from ${clockText(longest.from)} to ${clockText(longest.to)}` },
        {
          says:
            standing === 'low'
              ? 'the engine is weaker, or the load heavier, than the model has it'
              : standing === 'high'
                ? 'the load is lighter, or slips, or the engine is stronger than the model has it'
                : 'heard and expected agree',
          link: 'finding:push.pull',
        },
      ],
      sources: [source],
    })
  }
  return out
}
