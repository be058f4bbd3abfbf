/** Air to fuel over the width of a chip in a jet: a strip across it, a chip at its edge, and where the engine no longer fires. */
import { lineChart } from '../../drawing/chart.ts'
import { okabeIto } from '../../drawing/palette.ts'
import type { Sheet } from '../../drawing/sheet.ts'
import type { Solved } from '../trade.ts'
import { leanLimit, stoichiometric } from './chipInJet.ts'
import type { FuelAnswer } from './fuelAnswer.ts'
import type { FuelInputs } from './fuelFromCraft.ts'
import { type ChipForm, chipBlocks } from './jetFlow.ts'

const widths = Array.from({ length: 41 }, (_, i) => i / 100)

export function chipFigure({ answer }: Solved<FuelInputs, FuelAnswer | undefined>, width: number): Sheet {
  const jet = answer?.jets.jets.find((j) => j.running)
  const ratio = (form: ChipForm) =>
    widths.map((k) => ((jet?.set ?? Number.NaN) * stoichiometric) / (1 - chipBlocks(k, form)))
  const percent = widths.map((k) => 100 * k)
  return lineChart({
    title: 'What a chip does to the mixture',
    says: 'Air to fuel by mass over the width of a chip, as a share of the jet’s bore: it leans the faster the wider the chip.',
    width,
    height: width < 120 ? 80 : 85,
    x: { label: 'width of the chip over the jet’s bore', unit: '%', min: 0, max: 40 },
    y: { label: 'air to fuel, by mass', unit: '', min: 10, max: 24 },
    zones: [
      {
        axis: 'y',
        from: leanLimit.low * stoichiometric,
        to: leanLimit.high * stoichiometric,
        label: 'misfires full open',
        colour: okabeIto.vermillion,
      },
    ],
    series: jet
      ? [
          { name: 'a strip across', x: percent, y: held(ratio('strip')), colour: okabeIto.blue },
          { name: 'at the edge', x: percent, y: held(ratio('edge')), colour: okabeIto.green },
          { name: 'a round grain', x: percent, y: held(ratio('round')), colour: okabeIto.purple },
        ]
      : [],
    empty: 'With a fuel section in the file the mixture is drawn here.',
  })
}

/** what leaves the plot is a gap */
const held = (y: readonly number[]): number[] => y.map((v) => (v <= 24 ? v : Number.NaN))
