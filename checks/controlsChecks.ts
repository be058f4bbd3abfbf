import type { CheckRow } from '../src/base/answers/check.ts'
import { capstan } from '../src/trades/controls/capstan.ts'
import { controlsReckoners } from '../src/trades/controls/controlsReckoners.ts'
import { compressionTorque, cylinderOf } from '../src/trades/controls/starterPull.ts'
import { cablePull } from '../src/trades/controls/throttleCable.ts'
import { reckonedBy } from './reckoned.ts'
import { near, type Row, row, rowOf } from './row.ts'

const degree = Math.PI / 180

function wraps(): Row[] {
  const euler = 'capstan rule e^{μθ}, any mechanics text'
  return (
    [
      [90, 1.602],
      [180, 2.566],
      [360, 6.586],
    ] as const
  ).map(([angle, times]) =>
    near(
      `K-1 ${angle}`,
      `capstan at μ 0.3 over ${angle}°`,
      '1',
      times,
      capstan(0.3, angle * degree),
      0.001,
      'exact',
      euler,
    ),
  )
}

/** Friction of one two-stroke cylinder by its mean pressure, and the pressure of compression at the top by the law of gases. */
function turning(): Row[] {
  const reckon = reckonedBy(controlsReckoners)
  const c = cylinderOf(50e-6, 7)
  // torque a degree before the top over the arm there is the gas force
  const a = 1 * degree
  const r = c.stroke / 2
  const arm =
    r * Math.sin(a) + (r * r * Math.sin(a) * Math.cos(a)) / Math.sqrt(c.rod ** 2 - (r * Math.sin(a)) ** 2)
  const pressure = compressionTorque(c, a) / arm / ((Math.PI / 4) * c.bore ** 2) + 101325
  const cord = reckon(
    'starter-cord',
    { drum: 0.06 - 0.004, thickness: 4e-3, pull: 0.8, force: 150 },
    { material: 'nylon' },
  )
  return [
    row(
      'K-2',
      'compressed 7 to 1 at exponent 1.3',
      'bar',
      12.7,
      pressure / 1e5,
      0.01,
      'exact',
      '1.013 × 7^1.3, polytropic compression',
    ),
    row(
      'K-3',
      'turns of a 60 mm drum in 0.8 m',
      '1',
      4.244,
      cord['turns']!,
      1e-3,
      'exact',
      'circumference of a circle',
    ),
  ]
}

function cable(): Row[] {
  const a = cablePull({ bends: 270 * degree, friction: 0.2, spring: 10, lever: 2, ratio: 1 })
  return [
    near('K-4', 'lined cable, 270° of bends at μ 0.2', '1', 2.566, a.times, 0.001, 'exact', 'e^{0.2 · 3π/2}'),
    near(
      'K-5',
      'spring wanted for twice a lever of 2 N',
      'N',
      10.27,
      a.springWanted,
      0.01,
      'derived',
      'capstan both ways',
    ),
  ]
}

export const controlsChecks = (): CheckRow[] => [...wraps(), ...turning(), ...cable()].map(rowOf('controls'))
