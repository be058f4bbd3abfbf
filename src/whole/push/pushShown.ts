/** What a page, and the book, show of the balance besides its findings: figures, numbers, the usual cautions and how it is worked out. */
import {
  inDegrees,
  inKw,
  inLitresPerSecond,
  inMm,
  inNewtons,
  inPercent,
  inRpm,
  inSeconds,
  inSpeed,
  inTimes,
} from '../../base/answers/amounts.ts'
import { type Amount, say } from '../../base/answers/sentence.ts'
import type { FigureLook, NumberTable, Solved, TradeFigure } from '../../trades/trade.ts'
import type { Balance, OperatingPoint } from './balanceTypes.ts'
import { matchingFigure } from './matchingFigure.ts'
import { forcesFigure, runFigure } from './pushFigures.ts'
import { inchLook, type Look, metricLook } from './shown.ts'

type PushSolved = Solved<unknown, Balance>

const lookOf = ({ system, width }: FigureLook): Look => ({
  ...(system === 'inch' ? inchLook : metricLook),
  width,
})

/** Engines and impeller, thrust and drag, the run from rest; the tried balance beside the one of the file. */
export const pushFigures: readonly TradeFigure<unknown, Balance>[] = [
  {
    id: 'forces',
    title: 'Thrust against drag',
    caption: ({ answer }) => answer.limitedBy.says,
    draw: (now, tried, look) => forcesFigure(now.answer, tried?.answer, lookOf(look)),
  },
  {
    id: 'matching',
    title: 'Engines and impeller',
    caption: ({ answer }) =>
      say`Where the lines meet they run: ${inRpm(answer.tiedUp.rotation)} tied up, by the file’s values.`,
    draw: (now, tried, look) => matchingFigure(now.answer, tried?.answer, lookOf(look)),
  },
  {
    id: 'run',
    title: 'The run up to speed',
    caption: ({ answer: { run } }) =>
      run.timeToPlane === undefined
        ? 'Full throttle from rest, the rider in the best place: it does not plane.'
        : say`Full throttle from rest, on the plane after ${inSeconds(run.timeToPlane)}.`,
    draw: (now, tried, look) => runFigure(now.answer, tried?.answer, lookOf(look)),
  },
]

/** Key numbers now and tried, and about twenty speeds of the operating table. */
export function pushNumbers(now: PushSolved, tried?: PushSolved): NumberTable[] {
  const heads = ['Quantity', 'Now', ...(tried ? ['Tried'] : [])]
  const rows = lines.map(([name, pick]) => [name, pick(now.answer), ...(tried ? [pick(tried.answer)] : [])])
  return [
    { caption: 'Key numbers', heads, rows },
    {
      caption: tried ? 'Over boat speed, tried values' : 'Over boat speed',
      heads: [
        'Speed',
        'Engines',
        'Thrust',
        'Drag',
        'Left over',
        'Trim',
        'Rider’s best place',
        'Flow',
        'Cavitates',
      ],
      rows: overSpeed((tried ?? now).answer),
    },
  ]
}

type Line = readonly [string, (b: Balance) => Amount]

const at =
  (of: 'tiedUp' | 'top', pick: (p: OperatingPoint) => Amount, none: Amount) =>
  (b: Balance): Amount => {
    const point = b[of]
    return point ? pick(point) : none
  }
const missing = Number.NaN

const lines: readonly Line[] = [
  ['Pull, tied up', (b) => inNewtons(b.pull.value)],
  ['Engine speed, tied up', at('tiedUp', (p) => inRpm(p.rotation), inRpm(missing))],
  ['Shaft power, tied up', at('tiedUp', (p) => inKw(p.power, 0.01), inKw(missing))],
  ['Pump efficiency, tied up', at('tiedUp', (p) => inPercent(p.pumpEfficiency), inPercent(missing))],
  ['Top speed', (b) => inSpeed(b.topSpeed.value)],
  ['Engine speed at the top', at('top', (p) => inRpm(p.rotation), inRpm(missing))],
  ['Thrust at the top', at('top', (p) => inNewtons(p.thrust), inNewtons(missing))],
  ['Hump', (b) => inSpeed(b.hump.speed)],
  ['Thrust over drag at the hump', (b) => inTimes(b.hump.margin)],
  ['Time to plane', (b) => inSeconds(b.run.timeToPlane ?? missing)],
  ['Time to 95 % of top speed', (b) => inSeconds(b.run.timeTo95 ?? missing)],
  ['Engines’ most power at', (b) => inRpm(b.matching.powerPeakRotation)],
  ['Pitch that does best', (b) => inMm(b.verdict.bestPitch.value)],
  ['Torque taken in a valley on the way up', (b) => inPercent(b.matching.bogRatio)],
]

function overSpeed({ curve: c }: Balance): (string | Amount)[][] {
  const every = Math.max(1, Math.round(c.speed.length / 20))
  return c.speed.flatMap((v, i) =>
    i % every !== 0
      ? []
      : [
          [
            inSpeed(v),
            inRpm(c.rpm[i]! / 60),
            inNewtons(c.thrust[i]!),
            inNewtons(c.drag[i]!),
            inNewtons(c.thrust[i]! - c.drag[i]!),
            inDegrees(c.trim[i]!),
            inMm(c.riderAt[i]!),
            inLitresPerSecond(c.flow[i]!, 1),
            c.cavitating[i] ? 'yes' : 'no',
          ],
        ],
  )
}

/** The usual cautions of a pull test and of running a jet; common practice, no source. */
export const pushCautions: readonly string[] = [
  'Stop the engine and take off the kill cord before a hand goes near the intake, the grate or the nozzle. Weed at the grate waits until the impeller stands still.',
  'Keep hair, straps, cord and sleeves away from the intake and from every turning part; cover belts and couplings.',
  'Tied-up pull: two ropes to something that cannot move, the craft afloat with its intake well under, nobody in line with rope or jet, a second person at the kill switch, short pulls with time to cool.',
  'Wear the kill cord, a buoyancy aid and a helmet. Ride where the law on the water lets you, and ask the local authority before you go.',
  'Engines make carbon monoxide: run them in the open, never in a shed or under a cover, and turn the craft so that the fumes blow away from you.',
  'Petrol burns: fill up with the engine cold, on the bank, away from flames and sparks, and wipe up before starting.',
]

/** How the answer is worked out, a sentence or two a step. */
export const pushMethod: readonly string[] = [
  'Engines and impeller are put together at every boat speed: where the torque the engines give meets the torque the impeller takes, they run. All such meetings are found, and which of them hold.',
  'The impeller is cut into rings; each ring turns the water by its blade angles, with losses for friction, tip gap, edges and a stalled blade. Intake, duct and nozzle are added, then cavitation and air.',
  'Drag is followed from floating to full planing with the rider at the best place for each speed; where thrust and drag meet is the top speed. The run from rest adds the mass of the craft and of the water it drags along.',
  'Ranges come from the doubt of each input and of the models, moved one at a time and added as squares (about nineteen cases in twenty). While a slider moves the answer comes without them; they follow.',
]
