import { expect, test } from 'vitest'
import { deafLimits } from '../../base/answers/limit.testkit.ts'
import { box, inputs, outlet, pulses, run, snorkel } from './exhaust.testkit.ts'
import { exhaustFindings } from './exhaustFindings.ts'
import { exhaustLimits } from './exhaustLimits.ts'
import type { PipeAnswer } from './exhaustTypes.ts'
import type { ExhaustView } from './exhaustView.ts'
import { type PipeSearchView, pipeFindings } from './pipeFindings.ts'

const views: ExhaustView[] = [
  { inputs, run },
  { inputs, run: { ...run, behind: 12e3 } },
  { inputs, run: { ...run, behind: 25e3 } },
  { inputs: { ...inputs, box: { ...box, outletBore: 0.0195 } }, run },
  { inputs: { ...inputs, box: { ...box, outletBore: 0.012 } }, run: { ...run, behind: 4e3 } },
  { inputs: { ...inputs, snorkel: { ...snorkel, height: 0.15 } }, run },
  { inputs: { ...inputs, snorkel: { ...snorkel, height: 0.05 } }, run },
  { inputs: { ...inputs, snorkel: { ...snorkel, bore: 0.02 } }, run },
  { inputs: { ...inputs, snorkel: { ...snorkel, bore: 0.014 } }, run },
  { inputs: { ...inputs, box: { ...box, length: 0.05, inletReach: 0, outletReach: 0 } }, run },
  { inputs: { ...inputs, box: { ...box, length: 0.006, inletReach: 0, outletReach: 0 } }, run },
  { inputs, run: { ...run, outFlow: pulses.map((x) => 300 * x) } },
  { inputs: { ...inputs, outlet: { ...outlet, flap: true, height: 0.01 } }, run },
]

const answer = (power: number, exhaustT: number): PipeAnswer =>
  ({
    power,
    peakAt: 8000,
    thrust: power / 10,
    pull: power / 12,
    cells: 'fine',
    curve: { exhaustT },
    pipe: {
      segments: [{ name: 'header', length: 0.9, d0: 0.03, d1: 0.08 }],
      stinger: { bore: 0.02, length: 0.2 },
      tunedLength: 0.8,
    },
  }) as unknown as PipeAnswer

const search = (found: PipeAnswer, more: Partial<PipeSearchView> = {}): PipeSearchView => ({
  final: true,
  now: answer(8000, 850),
  handbook: answer(8000, 850),
  found,
  snappingCost: 0.01,
  next: [],
  band: { from: 7000, to: 9000 },
  speeds: [],
  room: { length: 0.9, diameter: 0.07, bend: 0, given: true },
  curves: 100,
  ...more,
})

const searches = [
  search(answer(8400, 870)),
  search(answer(8050, 850), { snappingCost: 0.03 }),
  search(answer(8400, 900), { room: { length: 2, diameter: 0.2, bend: 0, given: true } }),
]

test('every limit, moved, changes what is said of an exhaust or of a pipe that was found', () => {
  const judgements = [
    ...views.map((v) => (limits: typeof exhaustLimits) => exhaustFindings(v, limits)),
    ...searches.map((s) => (limits: typeof exhaustLimits) => pipeFindings(s, 'engines.0', limits)),
  ]
  expect(deafLimits(exhaustLimits, judgements as never)).toEqual([])
})
