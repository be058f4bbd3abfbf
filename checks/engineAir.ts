/** Power in other air: our form against the other standard that is in use. */
import type { CheckRow } from '../src/base/answers/check.ts'
import { powerInAir, powerInAirIso } from '../src/trades/engine/airPower.ts'
import { letteredRows } from './row.ts'

const rows = letteredRows('engine')

export const airRows = (): CheckRow[] => [
  ...rows(
    'engine-air',
    [
      ['share of power in 90 kPa of dry air at 25 °C', '1', powerInAir(90e3, 298), powerInAirIso(90e3, 298)],
      ['at 99 kPa and 40 °C', '1', powerInAir(99e3, 313), powerInAirIso(99e3, 313)],
      [
        'at 3500 m of the standard atmosphere, 65.8 kPa at −7.8 °C',
        '1',
        powerInAir(65.76e3, 265.4),
        powerInAirIso(65.76e3, 265.4),
      ],
    ],
    'published',
    'ISO 1585:1992, (p/99 kPa)^1.2 (298 K/T)^0.6 on brake power; ours is the form of SAE J1349, from memory',
    { withinPart: 0.025 },
  ),
]
