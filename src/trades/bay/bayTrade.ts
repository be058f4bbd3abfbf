/** The trade bay: how warm the engine bay gets, what air it wants, and what lies in that air. */
import { inCelsius } from '../../base/answers/amounts.ts'
import { say } from '../../base/answers/sentence.ts'
import { defineTrade, type Lever } from '../trade.ts'
import { dunkingCard } from './afterDunking.ts'
import { type BayAnswer, bayAnswer } from './bayAnswer.ts'
import { bayMinutes, baySection } from './bayFigure.ts'
import { bayFindings, bayHeadline } from './bayFindings.ts'
import { type BayInputs, bayFromCraft } from './bayFromCraft.ts'
import { type BayLimits, bayLimits } from './bayLimits.ts'
import { bayNumbers } from './bayNumbers.ts'
import { bayReckoners } from './bayReckoners.ts'
import type { BayRun } from './bayRun.ts'

export const bayTrade = defineTrade<BayInputs, BayAnswer, BayRun>({
  id: 'bay',
  question: 'fuel',
  title: 'The engine bay: heat and air',
  reads: [
    'bay',
    'place',
    'engines',
    'hull',
    'weights',
    'tanks',
    'openings',
    'foam',
    'compartments',
    'deck',
    'jet',
    'rider',
  ],
  inputs: bayFromCraft,
  answer: bayAnswer,
  limits: bayLimits,
  judge: ({ inputs, answer }, limits) => bayFindings(inputs, answer, limits as BayLimits),
  headline: ({ inputs, answer }, limits) => bayHeadline(inputs, answer, limits as BayLimits),
  levers: ({ answer }) => leversOf(answer),
  figures: [
    {
      id: 'bay',
      title: 'The engine bay, its air and its heat',
      caption: ({ answer }) =>
        say`Air of the bay ${inCelsius(answer.air.value)}: what comes in blue, what goes out red.`,
      draw: (now, tried, look) => baySection(tried ?? now, look),
    },
    {
      id: 'minutes',
      title: 'The bay over the minutes',
      caption: ({ answer }) =>
        answer.stopped
          ? say`After a stop what stands in it comes to ${inCelsius(answer.stopped.top)}.`
          : 'Nothing to draw: the file does not describe the bay.',
      draw: bayMinutes,
    },
  ],
  numbers: bayNumbers,
  cards: ({ inputs }) => [dunkingCard(inputs)],
  reckoners: bayReckoners,
  cautions: [
    'Petrol vapour lies on the floor of a bay and one spark is enough: lid off, sniff and air it before each start; no open switch in it.',
    'Exhaust holds carbon monoxide, which has no smell and kills: never run it indoors, nor tied up with the wind from astern.',
    'Hot metal stays hot for half an hour; have an extinguisher outside the bay within reach.',
  ],
  method: [
    'What engines, pipe and muffler give the bay comes from the simulation where there was one, else from their power by usual parts. Air goes through each opening by the weight of the warm air, wind and fans, against what the engines draw; temperature and flow are solved together, the floor as cold as the water, lid and sides in air and sun.',
    'From cold and after a stop, engine, pipe and walls are three lumps that give and take heat, with the air between them in balance at each moment.',
    'Ranges come from the doubts of heat, air outside, openings, walls, room and sun.',
  ],
})

function leversOf({ bay }: BayAnswer): Lever[] {
  if (!bay) return []
  return [
    ...(bay.openings.length > 0 ? [{ path: 'bay.openings.0.area', low: 10e-4, high: 0.1 }] : []),
    { path: 'bay.cooling' },
    { path: 'bay.pipe' },
    { path: 'bay.volume', low: 0.01, high: 0.4 },
    ...(bay.fan ? [{ path: 'bay.fan.flow', low: 1e-3, high: 0.15 }] : []),
    ...(bay.water ? [{ path: 'bay.water.narrowest', low: 1e-3, high: 0.02 }] : []),
  ]
}
