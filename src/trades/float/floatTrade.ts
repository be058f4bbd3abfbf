/** The trade float: how the craft sits in still water, whole and swamped. */
import { say } from '../../base/answers/sentence.ts'
import { defineTrade, type Lever, NotKnown, type Section, type Solved } from '../trade.ts'
import { type FloatAnswer, floatAnswer } from './floatAnswer.ts'
import { floatFindingsOf } from './floatFindings.ts'
import { type FloatFromCraft, floatFromCraft } from './floatFromCraft.ts'
import { floatHeadline } from './floatHeadline.ts'
import { type FloatLimits, floatLimits } from './floatLimits.ts'
import { floatNumbers } from './floatNumbers.ts'
import { floatReckoners } from './floatReckoners.ts'
import { loadsFigure } from './loadsFigure.ts'
import { foamFigure, leakFigure } from './pageFigures.ts'

type FloatSolved = Solved<FloatFromCraft, FloatAnswer>

const reads: readonly Section[] = [
  'hull',
  'weights',
  'tanks',
  'rider',
  'openings',
  'engines',
  'foam',
  'compartments',
  'jet',
  'place',
  'files',
]

/** Measures that contradict each other make no hull: what is wrong is told, it is no crash. */
function orNotKnown<T>(work: () => T): T {
  try {
    return work()
  } catch (error) {
    if (error instanceof RangeError) throw new NotKnown('hull', error.message)
    throw error
  }
}

export const floatTrade = defineTrade<FloatFromCraft, FloatAnswer>({
  id: 'float',
  question: 'float',
  title: 'How it sits',
  reads,
  inputs: (craft) => orNotKnown(() => floatFromCraft(craft)),
  answer: ({ input }) => orNotKnown(() => floatAnswer(input)),
  limits: floatLimits,
  judge: ({ inputs, answer }, limits) =>
    floatFindingsOf(inputs.input, answer, inputs.weightsAssumed, limits as FloatLimits),
  headline: ({ inputs, answer }, limits) =>
    floatHeadline(inputs.input, answer, inputs.weightsAssumed, limits as FloatLimits),
  levers: ({ inputs }) => levers(inputs),
  figures: [
    {
      id: 'loads',
      title: 'The loads side by side',
      caption: () =>
        'From the side, each on its own waterline. The red cross is the common centre of gravity.',
      draw: (now, tried, look) => loadsFigure({ ...loadsOf(now, tried), system: look.system }, look.width),
    },
    {
      id: 'foam',
      title: 'Foam, there and wanted',
      caption: () =>
        'Foam keeps a swamped craft upright only when it sits high and far out; low and in the middle it turns it over.',
      draw: (now, tried, look) => {
        const { inputs, answer } = tried ?? now
        const there = answer.foam.filter((f) => f.volume > 0).map((f) => f.block)
        return foamFigure(inputs.input.hull, there, answer.need.blocks, look.width)
      },
    },
    {
      id: 'leak',
      title: 'Minutes to flood',
      caption: ({ answer: { leak } }) =>
        leak
          ? say`A hole at the stern, filling ${leak.space}; engine stopped, nobody aboard, no pump.`
          : 'It sinks dry: there is nothing to flood.',
      draw: (now, tried, look) => leakFigure(now.answer.leak, tried?.answer.leak, look.width, look.system),
    },
  ],
  numbers: floatNumbers,
  reckoners: floatReckoners,
  cautions: [
    'Drowning: wear a buoyancy aid and the kill cord every time, also for a first try in shallow water. Cold water takes your strength within minutes.',
    'Never alone: the first floats and every swamping trial with a second person who can swim, close to the shore, engine off.',
    'A swamped craft may roll over and is no raft to count on; air in a sealed space can be lost through one hole, foam cannot.',
    'What is computed here is still water at rest. Waves, wash and a turning craft ask for more; ask the local authority which rules bind a home-built craft where you ride.',
  ],
  method: [
    'The hull is a closed mesh of triangles; volume, centre and waterplane below the water are exact sums over it. The craft is settled where its weight and the water pushed away hold each other, in draft, trim and heel at once.',
    'A rider who balances acts where feet, knees or seat touch the deck; one held stiff acts at his own centre of gravity. Standing, that centre is about 0.56 of his height above the deck.',
    'The righting arm is the distance between the lines of weight and buoyancy at each heel, with draft and trim found anew. Swamped, only foam, sealed spaces and the material itself still push water away.',
    'The rider’s room is worked out place by place, 5 cm apart: heel within 10°, trim within 6°, and no opening under. A leak is followed with the water running to the low side.',
  ],
})

function levers({ input, weightsAssumed }: FloatFromCraft): Lever[] {
  const half = input.hull.beam / 2
  const { mass } = input.rider
  const heaviest = input.weights.reduce((a, w, i) => (w.mass > input.weights[a]!.mass ? i : a), 0)
  const own = input.hull.from.startsWith('the mesh')
  return [
    { path: 'rider.stance', effect: 'lower is steadier' },
    { path: 'rider.off centre', low: -0.6 * half, high: 0.6 * half },
    { path: 'rider.position', low: 0.1 * input.hull.length, high: 0.85 * input.hull.length },
    { path: 'rider.mass', low: Math.min(40, mass), high: Math.max(130, mass) },
    ...(weightsAssumed ? [] : [{ path: `weights.${heaviest}.mass`, effect: 'the heaviest item' }]),
    ...(own ? [] : [{ path: 'hull.beam' }, { path: 'hull.depth' }]),
  ]
}

function loadsOf(now: FloatSolved, tried: FloatSolved | undefined) {
  const cases = (s: FloatSolved) => s.answer.cases.filter((c) => c.name !== 'as ridden')
  const shown = tried ?? now
  const { hull, rider } = shown.inputs.input
  return {
    hull,
    cases: cases(shown),
    rider,
    ...(tried ? { before: { hull: now.inputs.input.hull, cases: cases(now) } } : {}),
  }
}
