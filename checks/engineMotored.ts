/** A dead engine turned by another: its friction and pumping against what was measured elsewhere. */
import type { CheckRow } from '../src/base/answers/check.ts'
import { motoredPressure, pumpingPressure, usualFriction } from '../src/trades/engine/deadDrag.ts'
import { referenceEngine } from '../src/trades/engine/engineReference.ts'
import { simulateMotored } from '../src/trades/engine/motored.ts'
import { letteredRows } from './row.ts'

const rows = letteredRows('engine')

/** Barnes-Moss: total motored mean pressure of a four-stroke, bar, over rev/min. */
const fourStroke = (rpm: number) => 0.97 + 0.15 * (rpm / 1000) + 0.05 * (rpm / 1000) ** 2

export function motoredRows(): CheckRow[] {
  const bar = (p: number) => p / 1e5
  const s = referenceEngine()
  // 3000 rpm of a 75 mm stroke is 7.5 m/s; the 54.5 mm stroke of the reference engine is as fast at 4130 rpm
  const alike = simulateMotored(s, [4130])[0]!
  const factor = (friction: number) =>
    motoredPressure(0.0545, 150, { value: friction, low: friction, high: friction })
  return [
    ...rows(
      'engine-motored',
      [
        [
          'motored in all by simulation, 125 cm³ at a mean piston speed of 7.5 m/s',
          'bar',
          bar(alike.pressure),
          0.5 * fourStroke(3000),
        ],
        [
          'the same by the law for engines known by size',
          'bar',
          bar(motoredPressure(0.0545, 4130 / 60).value),
          0.5 * fourStroke(3000),
        ],
      ],
      'memory',
      'M. L. Barnes-Moss (1975), quoted in J. B. Heywood, Internal Combustion Engine Fundamentals (1988), eq. 13.6, four-strokes of 845 to 2000 cm³ motored at full throttle, from memory; half of it a turn, as a four-stroke’s cycle takes two; ours has rolling bearings and no valve gear',
      { withinPart: 0.35 },
    ),
    ...rows(
      'engine-motored-friction',
      [
        [
          'friction alone, utility engine, 54.5 mm stroke at 9000 rpm',
          'bar',
          bar(factor(150).value - pumpingPressure.value),
          0.736,
        ],
        ['racing engine', 'bar', bar(factor(250).value - pumpingPressure.value), 1.226],
        ['usual factor between the two', '1', usualFriction.value, 200],
      ],
      'memory',
      'G. P. Blair, Design and Simulation of Two-Stroke Engines (1996), rolling bearings: 150 (utility) to 250 (motorcycle) × stroke × rpm, from memory',
      { withinPart: 0.12 },
    ),
  ]
}
