/** The chain in numbers, and what moves its answer most. */
import {
  inCelsius,
  inHertz,
  inMpa,
  inNewtons,
  inRpm,
  inTimes,
  inTorque,
  ranged,
} from '../../base/answers/amounts.ts'
import { say } from '../../base/answers/sentence.ts'
import type { Lever, NumberTable, Solved } from '../trade.ts'
import type { DriveAnswer, DriveInputs } from './driveAnswer.ts'
import { stages } from './jointRelax.ts'

type Now = Solved<DriveInputs, DriveAnswer | undefined>

export function driveNumbers({ answer }: Now): NumberTable[] {
  if (!answer) return []
  const { peaks } = answer
  const joints = answer.inOrder.flatMap((p) => (p.lasts ? [{ p, lasts: p.lasts }] : []))
  const margins: NumberTable = {
    caption: 'What each part bears over its peaks',
    heads: ['Part', 'What', 'Mean', 'Peak', 'Bears, times the peak', 'Goes first'],
    rows: answer.inOrder.map((p) => [
      p.letter,
      p.of.name,
      inTorque(p.mean),
      ranged(inTorque, p.peak),
      ranged(inTimes, p.margin),
      { ...inTimes(p.first), unit: '%', step: 1 },
    ]),
  }
  const pulls: NumberTable = {
    caption: 'Bolted joints as time goes by: pull of one bolt, and what all bear over the peaks',
    heads: ['Part', 'When', 'Pull', 'Bears'],
    rows: joints.flatMap(({ p, lasts }) =>
      stages.map((s) => [
        p.letter,
        whenWord[s],
        ranged(inNewtons, lasts.pull[s], 10),
        ranged(inTimes, lasts.margin[s]),
      ]),
    ),
  }
  const chain: NumberTable = {
    caption: 'The chain as it was judged',
    heads: ['What', 'Value'],
    rows: [
      [`engines, ${peaks.state.name}`, inRpm(peaks.state.rotation)],
      ['all engines together', inTorque(peaks.state.torque)],
      ...(peaks.atCrank === undefined
        ? []
        : [['largest at one cylinder’s crank', inTorque(peaks.atCrank)] as const]),
      ...(peaks.pressure === undefined
        ? []
        : [
            [
              `pressure it goes with, ${peaks.simulated ? 'simulated' : 'fitted to the torque'}`,
              inMpa(peaks.pressure, 0.1),
            ] as const,
          ]),
      ['swings against itself at', ranged(inHertz, answer.frequency)],
      ...joints.map(
        ({ p }) =>
          [`warmth of part ${p.letter}`, inCelsius('warm' in p.of ? p.of.warm.value : Number.NaN)] as const,
      ),
    ],
  }
  return joints.length > 0 ? [margins, pulls, chain] : [margins, chain]
}

const whenWord = {
  tightened: 'as tightened',
  minutes: 'after the first minutes',
  day: 'after a day of running',
  season: 'after a season',
} as const

/** The weakest part's own inputs. */
export function driveLevers({ answer }: Now): Lever[] {
  const weakest = answer?.parts[0]
  if (!weakest) return []
  const { of: it } = weakest
  switch (it.kind) {
    case 'coupling':
      return [
        {
          path: `${it.path}.torque`,
          effect: 'pull of the bolts',
          low: 0.2 * it.bolt.d * 1e3,
          high: 3 * it.bolt.d * 1e3,
        },
        { path: `${it.path}.sleeves`, effect: 'lets metal take the clamp' },
        {
          path: `${it.path}.circle`,
          effect: 'how far out friction works',
          low: it.radius.value,
          high: 4 * it.radius.value,
        },
      ]
    case 'hold':
      return [
        {
          path: `${it.path}.length`,
          effect: say`what the hub bears on`,
          low: 0.5 * it.length.value,
          high: 3 * it.length.value,
        },
      ]
    case 'shaft':
      return [
        {
          path: `${it.path}.diameter`,
          effect: 'stress falls with its cube',
          low: 0.6 * it.diameter.value,
          high: 1.8 * it.diameter.value,
        },
      ]
  }
}
