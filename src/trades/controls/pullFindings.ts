/** The pull-cord: what it takes to turn the engines over, how fast they turn, and what the cord goes round. */
import {
  inCount,
  inDegrees,
  inMetres,
  inMm,
  inNewtons,
  inPercent,
  inRpm,
  inTimes,
  ranged,
} from '../../base/answers/amounts.ts'
import type { Finding } from '../../base/answers/finding.ts'
import { say } from '../../base/answers/sentence.ts'
import type { Craft } from '../../craft/schema/craftSchema.ts'
import { type Bend, breakingForce, cordStretch, overBends } from './capstan.ts'
import type { ControlledEngine, ControlsInputs } from './controlsFromCraft.ts'
import type { ControlsLimits } from './controlsLimits.ts'

export type Cord = NonNullable<Craft['cord']>

export const finding = (id: string, f: Omit<Finding, 'id' | 'question'>): Finding => ({
  id: `controls.${id}`,
  question: 'strength',
  ...f,
})

/** m/s of a hand that pulls a cord: judgement */
const hand = 2

export interface Pull {
  /** N at the handle: a quick pull with its ends, and what a slow one stands against */
  quick: { value: number; low: number; high: number }
  slow: number
  /** turns of the crank in one pull, and rev/s */
  turns: number
  rotation: number
  bends: number
}

const bendsOf = (cord: Cord): Bend[] =>
  cord.bends.map((b) => ({ angle: b.angle.value, over: b.over, across: b.across.value }))

/** The engines that one handle turns over, the heaviest handle of all. */
export function turnedBy(
  { engines, together }: ControlsInputs,
  handles: number,
): readonly ControlledEngine[] {
  if (together && handles === 1) return engines
  const heavy = engines.reduce<ControlledEngine | undefined>(
    (a, b) => (a && a.turning.mean * a.cylinders >= b.turning.mean * b.cylinders ? a : b),
    undefined,
  )
  return heavy ? [heavy] : []
}

/** What one pull takes and gives. */
export function pullOf(inputs: ControlsInputs, cord: Cord): Pull {
  const turned = together(inputs, cord)
  const radius = (d: number) => 0.5 * (d + cord.thickness.value)
  const bends = overBends(bendsOf(cord))
  const sum = (of: (e: ControlledEngine) => number) => turned.reduce((all, e) => all + of(e) * e.cylinders, 0)
  const at = (torque: number, drum: number) => (bends * torque) / radius(drum)
  const quick = at(
    sum((e) => e.turning.mean),
    cord.drum.value,
  )
  const ends = [
    at(
      sum((e) => e.low.mean),
      cord.drum.high,
    ),
    at(
      sum((e) => e.high.mean),
      cord.drum.low,
    ),
  ]
  const round = 2 * Math.PI * radius(cord.drum.value)
  return {
    quick: { value: quick, low: Math.min(quick, ...ends), high: Math.max(quick, ...ends) },
    slow: at(
      sum((e) => e.turning.peak),
      cord.drum.value,
    ),
    turns: cord.pull.value / round,
    rotation: hand / round,
    bends,
  }
}

/** on one shaft every engine turns, whichever handle is pulled */
function together(inputs: ControlsInputs, cord: Cord): readonly ControlledEngine[] {
  return inputs.together ? inputs.engines : turnedBy(inputs, cord.handles.value)
}

export function cordFindings(inputs: ControlsInputs, limits: ControlsLimits): Finding[] {
  const { cord } = inputs.craft
  if (!cord || inputs.engines.length === 0) return []
  const p = pullOf(inputs, cord)
  return [
    pull(inputs, cord, p, limits),
    cranking(cord, p, limits),
    ...path(cord, p, limits),
    strength(cord, p, limits),
  ]
}

/** up to the millimetre that makes it hold */
const mmUp = (m: number) => 1e-3 * Math.ceil(1e3 * m - 1e-9)
const mmDown = (m: number) => 1e-3 * Math.floor(1e3 * m + 1e-9)
const typed = (m: number) => `${Math.round(1e4 * m) / 10} mm`

function pull(inputs: ControlsInputs, cord: Cord, p: Pull, limits: ControlsLimits): Finding {
  const turned = together(inputs, cord)
  const names = turned.map((e) => e.name).join(' and ')
  const stop = p.quick.low > limits.pullStop.value
  const bad = p.quick.value > limits.pull.value
  const { thickness } = cord
  const drum = mmUp(
    (cord.drum.value + thickness.value) * (p.quick.value / limits.pull.value) - thickness.value,
  )
  return finding('pull', {
    says: say`Turning ${names} over takes ${ranged(inNewtons, p.quick)} at the handle in a quick pull; pulled slowly, compression stands against it with up to ${inNewtons(p.slow)}.`,
    ...(bad
      ? {
          act: say`a drum of ${inMm(drum)} across instead of ${inMm(cord.drum.value)}, or a cord for each engine`,
          changes: [{ path: 'cord.drum', from: cord.drum.text ?? typed(cord.drum.value), to: typed(drum) }],
        }
      : {}),
    harm: stop ? 'before the water' : 'will stop the run',
    ...p.quick,
    unit: 'N',
    standing: stop ? 'stop' : bad ? 'watch' : 'good',
    because: [
      {
        says: say`${turned.length > 1 ? 'on one shaft all of them turn at once' : 'one engine'}${turned.every((e) => e.byPorts) ? ', compression by ports and stroke' : ', compression by volume alone'}`,
        link: 'engines',
      },
      { says: say`drum ${inMm(cord.drum.value)} across`, link: 'cord.drum' },
      { says: say`the way to the handle multiplies it by ${inTimes(p.bends)}`, link: 'cord.bends' },
      {
        says: 'the flywheel carries a quick pull over: go to the first hard place, let the cord back, then pull through',
      },
    ],
    measureNext: {
      what: 'pull the handle with a luggage scale, slowly, over two compressions',
      with: 'luggage scale',
      minutes: 3,
      path: 'cord',
    },
    sources: ['Slider-crank and polytropic compression from exhaust closing; friction after common practice'],
  })
}

function cranking(cord: Cord, p: Pull, limits: ControlsLimits): Finding {
  const bad = p.turns < limits.turns.value || p.rotation < limits.cranking.value
  const most =
    Math.min(cord.pull.value / limits.turns.value, hand / limits.cranking.value) / Math.PI -
    cord.thickness.value
  const drum = mmDown(Math.max(0.01, most))
  return finding('cranking', {
    says: say`One pull turns the crank ${inTimes(p.turns, 0.1)} times at about ${inRpm(p.rotation)}.`,
    ...(bad
      ? {
          act: say`a drum of ${inMm(drum)} across instead of ${inMm(cord.drum.value)}`,
          changes: [{ path: 'cord.drum', from: cord.drum.text ?? typed(cord.drum.value), to: typed(drum) }],
        }
      : {}),
    value: p.rotation,
    unit: 'rev/s',
    standing: bad ? 'watch' : 'good',
    because: [
      {
        says: say`${inMetres(cord.pull.value)} of pull on a drum of ${inMm(cord.drum.value)}`,
        link: 'cord.pull',
      },
      { says: say`a magneto sparks well from about ${inRpm(limits.cranking.value)}` },
    ],
    sources: ['Drum circumference; a hand at 2 m/s, judgement'],
  })
}

/** What the cord is led round: friction, tight places, and out of line. */
function path(cord: Cord, p: Pull, limits: ControlsLimits): Finding[] {
  const eyes = cord.bends.filter((b) => b.over !== 'sheave')
  const rubs = p.bends > limits.bends.value
  const wheels = overBends(bendsOf(cord).map((b) => ({ ...b, over: 'sheave' })))
  const least = limits.sheave.value * cord.thickness.value
  const places = cord.bends.map((b, i) => ({ b, i })).filter(({ b }) => b.across.value < least - 1e-9)
  const skew = cord.fleet.value > limits.fleet.value
  return [
    finding('bends', {
      says: say`Its bends multiply the pull by ${inTimes(p.bends)}.`,
      ...(rubs
        ? {
            act: say`${inCount(eyes.length)} ${eyes.length === 1 ? 'sheave' : 'sheaves'} in place of eyes, which leaves ${inTimes(wheels)}`,
            changes: cord.bends.flatMap((b, i) =>
              b.over === 'sheave' ? [] : [{ path: `cord.bends.${i}.over`, from: b.over, to: 'sheave' }],
            ),
          }
        : {}),
      harm: 'comfort',
      value: p.bends,
      unit: '1',
      standing: rubs ? 'watch' : 'good',
      because: [
        {
          says: say`${inCount(cord.bends.length)} bends, ${inCount(eyes.length)} of them over things that do not turn`,
          link: 'cord.bends',
        },
      ],
      sources: ['Capstan rule e^{μθ}'],
    }),
    ...(cord.bends.length > 0
      ? [
          finding('sheave', {
            says:
              places.length > 0
                ? say`${inCount(places.length)} of its ${inCount(cord.bends.length)} bends go round less than ${inTimes(limits.sheave.value, 1)} cords: the cord frays there.`
                : say`Its bends go round at least ${inTimes(limits.sheave.value, 1)} times the cord’s thickness.`,
            ...(places.length > 0
              ? {
                  act: say`sheaves or eyes of ${inMm(mmUp(least))} across`,
                  changes: places.map(({ b, i }) => ({
                    path: `cord.bends.${i}.across`,
                    from: b.across.text ?? typed(b.across.value),
                    to: typed(mmUp(least)),
                  })),
                }
              : {}),
            harm: 'comfort',
            standing: places.length > 0 ? 'watch' : 'good',
            because: [{ says: say`a cord of ${inMm(cord.thickness.value, 0.1)}`, link: 'cord.thickness' }],
            sources: ['Cordage makers’ guidance, from memory'],
          }),
        ]
      : []),
    finding('lead-in', {
      says: say`The cord comes onto its drum ${inDegrees(cord.fleet.value)} out of line.`,
      ...(skew
        ? { act: say`an eye or a sheave that leads it in within ${inDegrees(limits.fleet.value)}` }
        : {}),
      harm: 'comfort',
      value: cord.fleet.value,
      unit: 'rad',
      standing: skew ? 'watch' : 'good',
      because: [{ says: 'out of line it climbs the side of its groove and jams', link: 'cord.fleet' }],
      sources: ['Cordage makers’ guidance, from memory'],
    }),
  ]
}

function strength(cord: Cord, p: Pull, limits: ControlsLimits): Finding {
  const { material } = cord
  const thickness = cord.thickness.value
  const breaks = breakingForce(material, thickness)
  const margin = breaks / p.quick.high
  const free = cord.length.value + cord.pull.value
  const stretch = cordStretch(material, thickness, free, p.quick.value) / cord.pull.value
  const weak = margin < limits.cord.value
  const soft = stretch > limits.stretch.value
  // area goes with both
  const by = Math.max(limits.cord.value / margin, stretch / limits.stretch.value)
  const wants = 0.5e-3 * Math.ceil((thickness * Math.sqrt(by)) / 0.5e-3 - 1e-9)
  return finding('cord', {
    says: say`Its cord of ${inMm(thickness, 0.1)} ${material} breaks at ${inTimes(margin, 0.1)} times the pull, new and without a knot, and stretches away ${inPercent(stretch)} of it.`,
    ...(weak || soft
      ? {
          act: say`a cord of ${inMm(wants, 0.1)} instead of ${inMm(thickness, 0.1)}`,
          changes: [
            { path: 'cord.thickness', from: cord.thickness.text ?? typed(thickness), to: typed(wants) },
          ],
        }
      : {}),
    value: margin,
    unit: '1',
    standing: weak || soft ? 'watch' : 'good',
    because: [
      { says: say`${inNewtons(breaks)} by its thickness`, link: 'cord.material' },
      { says: say`${inMetres(free)} of it under load at the end of the pull`, link: 'cord.length' },
    ],
    sources: ['Cordage makers’ tables, from memory'],
  })
}
