import {
  inBar,
  inCelsius,
  inGramsPerKwh,
  inKpa,
  inKw,
  inPercent,
  inRpm,
  inTorque,
} from '../../../../base/answers/amounts.ts'
import type { NumberTable } from '../../../../trades/trade.ts'
import { TradeTables } from '../../parts/TradeParts.tsx'
import type { Side } from './useBreath.ts'

interface Props {
  now: Side
  tried: Side | undefined
}

/** The curve speed by speed, to be copied: what is felt at the shaft, and what goes on inside. */
export function Numbers({ now, tried }: Props) {
  const triedTables = tried?.simulation?.output?.curve ? tablesOf(tried, ', tried values') : []
  return <TradeTables tables={[...tablesOf(now, ''), ...triedTables]} />
}

function tablesOf(side: Side, suffix: string): NumberTable[] {
  const points = side.simulation?.output?.curve?.points ?? []
  const cylinders = side.view.reading?.cylinders ?? 1
  const settled = points.flatMap((r) => (r.point ? [{ speed: inRpm(r.rpm / 60), p: r.point }] : []))
  const lost = points.filter((r) => !r.point)
  return [
    {
      caption: `What is felt at the shaft${suffix}`,
      heads: ['At', 'Pull of the crank', 'Power', 'Petrol for it'],
      rows: [
        ...settled.map(({ speed, p }) => [
          speed,
          inTorque(p.torque * cylinders),
          inKw(p.power * cylinders, 0.01),
          inGramsPerKwh(p.bsfc),
        ]),
        ...lost.map((r) => [inRpm(r.rpm / 60), 'did not settle', '', '']),
      ],
    },
    {
      caption: `What goes on inside${suffix}`,
      heads: [
        'At',
        'Filled, of its size',
        'Of that stays in',
        'Highest push',
        'Push on average',
        'Gas leaving',
        'Held up behind the pipe',
      ],
      rows: settled.map(({ speed, p }) => [
        speed,
        inPercent(p.deliveryRatio),
        inPercent(p.trapping),
        inBar(p.pMax, 1),
        inBar(p.bmep, 0.1),
        inCelsius(p.exhaustT),
        inKpa(p.behind, 0.1),
      ]),
    },
  ]
}
