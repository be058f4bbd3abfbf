import type { CheckRow } from '../src/base/answers/check.ts'
import { makeCombGrid } from '../src/trades/sound/comb.ts'
import { dopplerFactor, passSpeed, soundSpeed } from '../src/trades/sound/doppler.ts'
import { timedSpeed } from '../src/trades/sound/pull.ts'
import {
  bladePassRate,
  firingRate,
  freeRise,
  gasSoundSpeed,
  hannLobe,
  jitterLeft,
  quarterWave,
  rpmPerHertz,
  runDownHalf,
  slopeLimit,
  splitAt,
} from '../src/trades/sound/relations.ts'
import { FFT_SIZE, STEP, WARP_RATE, WINDOW } from '../src/trades/sound/settings.ts'
import { warpedTime } from '../src/trades/sound/warp.ts'
import { type Row, row, rowOf, rows } from './row.ts'

const kinematics =
  'Kinematics: one firing a turn for each two-stroke cylinder, one in two turns for a four-stroke'
const doppler = 'A. D. Pierce, Acoustics (1981), section 9-1, evaluated with c = 343.2 m/s'
const hann = 'F. J. Harris, Proc. IEEE 66 (1978) 51: Hann main lobe 4/T, applied by hand'
const chirp = 'P. Cancela, E. López, M. Rocamora, DAFx-10 (2010): phi = t + a t²/2, solved by hand'

function pitchRows(): Row[] {
  return [
    ...rows('exact', kinematics, 1e-9, [
      ['firing-1500', 'firing rate, two-stroke single, 1500 rpm', 'Hz', 25, firingRate(1500 / 60)],
      ['firing-6000', 'the same at 6000 rpm', 'Hz', 100, firingRate(6000 / 60)],
      ['firing-four', 'four-stroke single, 6000 rpm', 'Hz', 50, firingRate(6000 / 60, 1, 4)],
      ['firing-pair', 'two two-stroke cylinders, 6000 rpm', 'Hz', 200, firingRate(6000 / 60, 2)],
      ['rpm-per-hertz', 'rev/min a firing a second, two-stroke single', 'rev/min', 60, rpmPerHertz()],
      ['rpm-per-hertz-four', 'the same, four-stroke single', 'rev/min', 120, rpmPerHertz(1, 4)],
      ['blade-pass', 'three blades at 6000 rpm, direct', 'Hz', 300, bladePassRate(100, 3)],
    ]),
    row(
      'firing-10000',
      'firing rate at 10000 rpm',
      'Hz',
      166.7,
      firingRate(10000 / 60),
      3e-4,
      'exact',
      kinematics,
    ),
    row(
      'beat',
      'beat of 6000 against 6060 rpm',
      'Hz',
      1,
      firingRate(6060 / 60) - firingRate(100),
      1e-9,
      'exact',
      kinematics,
    ),
    row(
      'beat-5',
      'the same at the fifth harmonic',
      'Hz',
      5,
      5 * (firingRate(6060 / 60) - firingRate(100)),
      1e-9,
      'exact',
      kinematics,
    ),
  ]
}

function dopplerRows(): Row[] {
  const c = 343.2
  const rpm = (v: number) => 6000 * (dopplerFactor(v, c) - 1)
  return [
    ...rows('derived', doppler, 5e-6, [
      ['doppler-5', 'factor at 5 m/s closing', '1', 343.2 / 338.2, dopplerFactor(5, c)],
    ]),
    row(
      'doppler-5-printed',
      'factor at 5 m/s closing',
      '1',
      1.01479,
      dopplerFactor(5, c),
      1e-5,
      'derived',
      doppler,
    ),
    row(
      'doppler-drop',
      'fall of a two-sided pass at 5 m/s over the mean',
      '%',
      2.914,
      (200 * (dopplerFactor(5, c) - dopplerFactor(-5, c))) / (dopplerFactor(5, c) + dopplerFactor(-5, c)),
      3e-4,
      'derived',
      doppler,
    ),
    row(
      'pass-speed',
      'speed from 101.479 and 98.564 Hz',
      'm/s',
      5,
      passSpeed(101.479, 98.564, c),
      2e-3,
      'derived',
      doppler,
    ),
    row('doppler-rpm-2', 'error at 2 m/s and 6000 rpm', 'rev/min', 35, rpm(2), 0.02, 'derived', doppler),
    row('doppler-rpm-10', 'error at 10 m/s and 6000 rpm', 'rev/min', 180, rpm(10), 0.01, 'derived', doppler),
    row(
      'doppler-rpm-14-away',
      'error at 14 m/s going away',
      'rev/min',
      -235,
      rpm(-14),
      0.01,
      'derived',
      doppler,
    ),
    row(
      'sound-speed',
      'speed of sound in air at 20 °C',
      'm/s',
      343.2,
      soundSpeed(20),
      2e-3,
      'published',
      'L. E. Kinsler and others, Fundamentals of Acoustics (4th ed. 2000), appendix A10: 343 m/s, from memory',
    ),
    row(
      'quarter-cold',
      'quarter-wave tone of 0.5 m at 20 °C',
      'Hz',
      171.6,
      quarterWave(0.5, 343.2),
      2e-3,
      'exact',
      'c / (4 L) by hand',
    ),
    row(
      'quarter-hot',
      'the same at 400 °C, gamma 1.35',
      'Hz',
      255.3,
      quarterWave(0.5, gasSoundSpeed(1.35, 673.15)),
      2e-3,
      'derived',
      'sqrt(gamma R T) / (4 L) with R = 287, by hand',
    ),
  ]
}

function windowRows(): Row[] {
  return [
    ...rows('derived', hann, 5e-3, [
      ['hann-lobe', 'Hann lobe of the listening window', 'Hz', 11.11, hannLobe(WINDOW)],
      ['hann-split-5', 'split at the fifth harmonic, as rpm', 'rev/min', 133, 60 * splitAt(WINDOW, 5)],
      ['hann-split-10', 'split at the tenth harmonic, 0.8 s', 'rev/min', 30, 60 * splitAt(0.8, 10)],
      ['slope-0.36', 'steepest change for h = 6, 0.36 s', 'rev/min/s', 154, 60 * slopeLimit(0.36, 6)],
      ['slope-0.8', 'steepest change for h = 6, 0.8 s', 'rev/min/s', 31.25, 60 * slopeLimit(0.8, 6)],
    ]),
    row(
      'bin',
      'bin of the warped spectrum',
      'Hz',
      2500 / 1024,
      WARP_RATE / FFT_SIZE,
      1e-12,
      'exact',
      'rate over transform length',
    ),
    row('frames', 'frames a second', '1', 40, 1 / STEP, 1e-12, 'exact', '25 ms hop'),
    row(
      'comb-grid',
      'rates in the comb grid, 22–235 Hz in steps of e^0.006',
      '1',
      395,
      makeCombGrid().rates.length,
      1e-9,
      'exact',
      'floor(ln(235/22)/0.006) + 1 by hand',
    ),
    row('warp-0', 't(phi) without slope', 's', 0.1, warpedTime(0.1, 0), 1e-12, 'exact', chirp),
    row('warp-1', 't(0.1) with slope 1', 's', 0.095445, warpedTime(0.1, 1), 1e-5, 'exact', chirp),
    row(
      'warp-back',
      'phi of that t',
      's',
      0.1,
      warpedTime(0.1, 1) + warpedTime(0.1, 1) ** 2 / 2,
      1e-9,
      'exact',
      chirp,
    ),
    row(
      'jitter-26',
      'left of harmonic 26 at 0.6 % scatter',
      '1',
      0.62,
      jitterLeft(26, 0.006),
      0.01,
      'derived',
      'exp(-(2 pi h s)²/2) by hand',
    ),
    row(
      'jitter-16',
      'left of harmonic 16 at 2 % scatter',
      '1',
      0.13,
      jitterLeft(16, 0.02),
      0.03,
      'derived',
      'exp(-(2 pi h s)²/2) by hand',
    ),
  ]
}

function runRows(): Row[] {
  return [
    row(
      'run-down',
      'half time of 2e-3 kg m², k 1.05e-5, 628 rad/s',
      's',
      0.303,
      runDownHalf(2e-3, 1.05e-5, 628),
      2e-3,
      'derived',
      '1/omega grows by k t / I: I / (k omega)',
    ),
    row(
      'free-rise',
      'rise of 3 N m on 1.2e-3 kg m²',
      'rev/min/s',
      23873,
      (60 * freeRise(3, 1.2e-3)) / (2 * Math.PI),
      1e-4,
      'derived',
      'torque over inertia',
    ),
    row(
      'stopwatch-20',
      'one standard deviation of a 20 m run at 5 m/s, 0.2 s timing in all, 0.3 m gates',
      '%',
      5.2,
      (100 * (timedSpeed(20, 4, 0.2 / Math.SQRT2).high / 5 - 1)) / 1.96,
      0.01,
      'derived',
      'sqrt((0.2/4)² + (0.3/20)²) by hand',
    ),
    row(
      'stopwatch-50',
      'the same over 50 m',
      '%',
      2.1,
      (100 * (timedSpeed(50, 10, 0.2 / Math.SQRT2).high / 5 - 1)) / 1.96,
      0.01,
      'derived',
      'sqrt((0.2/10)² + (0.3/50)²) by hand',
    ),
  ]
}

/** Pitch, Doppler, windows and running down, against hand calculation and handbooks. */
export function soundChecks(): CheckRow[] {
  return [...pitchRows(), ...dopplerRows(), ...windowRows(), ...runRows()].map(rowOf('sound'))
}
