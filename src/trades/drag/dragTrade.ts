/** The trade drag: resistance and trim from rest to the top speed of the balance. */
import { inDegrees, inMetres, inNewtons, inSpeed, withEnds } from '../../base/answers/amounts.ts'
import { defineTrade, type Lever, NotKnown, type NumberTable, type Section, type Solved } from '../trade.ts'
import { type DragAnswer, type DragInputs, dragAnswer, dragInputs } from './dragAnswer.ts'
import { dragFindingsOf } from './dragFindings.ts'
import { type DragLimits, dragLimits } from './dragLimits.ts'
import { hullReckoners } from './dragReckoners.ts'

const reads: readonly Section[] = ['hull', 'jet', 'place', 'rider', 'weights', 'tanks', 'files']

function orNotKnown<T>(work: () => T): T {
  try {
    return work()
  } catch (error) {
    if (error instanceof RangeError) throw new NotKnown('hull', error.message)
    throw error
  }
}

/** Handed the top speed of the balance, m/s, where there is one. */
export const dragTrade = defineTrade<DragInputs, DragAnswer, number | undefined>({
  id: 'drag',
  question: 'push',
  title: 'Drag and trim',
  reads,
  inputs: (craft, topSpeed) => orNotKnown(() => dragInputs(craft, topSpeed)),
  answer: (inputs) => orNotKnown(() => dragAnswer(inputs)),
  limits: dragLimits,
  judge: ({ inputs, answer }, limits) => dragFindingsOf(inputs, answer, limits as DragLimits),
  levers: ({ inputs }) => levers(inputs),
  numbers: (now, tried) => [speedTable(now, tried)],
  reckoners: hullReckoners,
  cautions: [
    'Towing: a line under load whips back when it parts; nobody stands in its way, and it is let go of at both ends.',
    'First runs: buoyancy aid, kill cord, a second person ashore, and water deep enough to fall into.',
  ],
  method: [
    'Below the hump: friction on the wetted bottom (ITTC 1957), transom, and a regression over towed models (Mercier and Savitsky 1973).',
    'On the plane: lift and drag of a planing wedge (Savitsky 1964), settled where weight, lift, jet and air hold each other in trim. Between the two they are blended.',
    'The rider stays where the file says, or finds the place of least drag within reach. Air drag by stance and size; whisker spray and the intake’s opening are added.',
    'The band is what the methods scatter by among themselves and against published tests; no test of a craft this light is published.',
  ],
})

function levers({ loading, spec }: DragInputs): Lever[] {
  const [aft, fore] = loading.riderRange
  return [
    { path: 'rider.position', low: aft, high: fore, effect: 'forward lowers the bow and the hump' },
    { path: 'rider.mass' },
    ...(spec.stations ? [] : [{ path: 'hull.chine beam' }, { path: 'hull.deadrise' }]),
    { path: 'place.depth' },
  ]
}

/** speeds of the curve that the table has */
const everyFourth = 4

/** Drag, trim and wetted length over speed, the rider where the file says; what is tried beside it. */
function speedTable(
  now: Solved<DragInputs, DragAnswer>,
  tried: Solved<DragInputs, DragAnswer> | undefined,
): NumberTable {
  const rowsOf = (answer: DragAnswer, word: string) =>
    (answer.answered?.here ?? [])
      .filter((_, i) => i % everyFourth === 0)
      .map((p) => [
        inSpeed(p.speed),
        word,
        withEnds(inNewtons(p.drag), p),
        inDegrees(p.trim),
        inMetres(p.wettedLength),
        p.regime,
      ])
  return {
    caption: 'Drag over speed, the rider where the file says',
    heads: ['Speed', '', 'Drag', 'Trim, bow up', 'Wetted length', 'How it runs'],
    rows: tried ? [...rowsOf(now.answer, 'now'), ...rowsOf(tried.answer, 'tried')] : rowsOf(now.answer, ''),
  }
}
