/** The duct kernel and its boundaries against exact solutions. */
import type { CheckRow } from '../src/base/answers/check.ts'
import { fannoAfter, fannoPressure } from '../src/physics/gas/gasLaws.ts'
import { openEndReflection, quarterWave } from '../src/physics/gas/openPipe.ts'
import {
  fannoRun,
  nozzleRun,
  openState,
  pipeTone,
  portState,
  restSpeed,
  smoothError,
  sodError,
  stepReflection,
} from './gasCases.ts'
import { letteredRows } from './row.ts'

const rows = letteredRows('gas')
const scheme = 'derived: an independent program of the same scheme, compared with the exact Riemann solution'

export function kernelRows(): CheckRow[] {
  const sod = [100, 200, 400].map(sodError)
  const smooth = [32, 64, 128].map(smoothError)
  const nozzle = [25, 50, 100].map(nozzleRun)
  const fanno = fannoRun()
  return [
    ...rows(
      'gas-8',
      [
        ['density error of the kernel, Sod tube, 100 cells', '1', sod[0]!, 5e-3],
        ['density error, 200 cells', '1', sod[1]!, 2.57e-3],
        ['density error, 400 cells', '1', sod[2]!, 1.41e-3],
      ],
      'derived',
      scheme,
      { withinPart: 0.1 },
    ),
    ...rows(
      'gas-9',
      [
        ['density error of the kernel, smooth wave, 32 cells', '1', smooth[0]!, 3.97e-3],
        ['density error, 64 cells', '1', smooth[1]!, 9.78e-4],
        ['density error, 128 cells', '1', smooth[2]!, 2.33e-4],
      ],
      'derived',
      scheme,
      { withinPart: 0.1 },
    ),
    ...rows(
      'gas-9-order',
      [['order of accuracy on the smooth wave', '1', Math.log2(smooth[1]! / smooth[2]!), 2]],
      'exact',
      'second-order scheme: halving the cells quarters the error',
      { within: 0.15 },
    ),
    ...rows(
      'gas-10',
      [['speed of gas at rest in 40-110-22 mm cones, 900 to 400 K, 2000 steps', 'm/s', restSpeed(2000), 0]],
      'exact',
      'gas at rest under one pressure stays at rest',
      { within: 1e-9 },
    ),
    ...rows(
      'gas-19-run',
      [
        [
          'kernel with friction only: Mach number at the far end',
          '1',
          fanno.m2,
          fannoAfter(fanno.m1, fanno.friction, 1.4),
        ],
        [
          'kernel with friction only: pressure ratio',
          '1',
          fanno.pRatio,
          fannoPressure(fanno.m2, 1.4) / fannoPressure(fanno.m1, 1.4),
        ],
      ],
      'exact',
      'Shapiro (1953), ch. 6',
      { withinPart: 1e-3 },
    ),
    ...rows(
      'gas-19-t0',
      [['stagnation temperature out over in, friction only', '1', fanno.leaving, 1]],
      'exact',
      'an insulated tube neither gains nor loses total enthalpy',
      { within: 1e-6 },
    ),
    ...rows(
      'gas-24',
      [
        ['mass flow of the converging-diverging nozzle, 100 cells', 'kg/s', nozzle[2]!.mdot, 157.2657],
        ['exit Mach number (exact)', '1', nozzle[2]!.exit, 0.27169],
      ],
      'exact',
      'isentropic relations, NACA Report 1135 (1953), A = 1 + 2 (x - 1/2)^2, exit at 0.95 of the stagnation pressure',
      { withinPart: 1e-3 },
    ),
    ...rows(
      'gas-24-order',
      [['order of accuracy on the nozzle', '1', Math.log2(nozzle[1]!.error / nozzle[2]!.error), 2]],
      'exact',
      'second-order scheme: halving the cells quarters the error',
      { within: 0.1 },
    ),
  ]
}

export function boundaryRows(): CheckRow[] {
  const out = portState({ p: 3e5, t: 1200 }, 5e-4, 1e-3, { p: 1e5, t: 700, u: 0 })
  const choked = portState({ p: 6e5, t: 1500 }, 1e-4, 1e-3, { p: 1.1e5, t: 800, u: 50 })
  const air = { p: 101325, t: 298 }
  const away = openState({ p: 1.3e5, t: 700, u: 80 }, air)
  const back = openState({ p: 0.8e5, t: 600, u: -30 }, air)
  const solved = 'derived: wave curve (Toro 2009, sec. 4.2) and nozzle relations solved independently'
  const steps = [2, 4, 9, 0.25]
  // the same pulse over the same way in a plain tube takes the scheme's own spreading out
  const plain = stepReflection(1).transmitted
  const reflections = steps.map(stepReflection)
  const tone = pipeTone(1 + 0.6133 * 0.02, 50)
  const c = Math.sqrt(1.4 * 287.05 * 293.15)
  return [
    ...rows(
      'gas-28',
      [
        ['port, 3 bar into 1 bar: pipe pressure', 'Pa', out.p, 198076],
        ['pipe velocity', 'm/s', out.u, 284.29],
        ['pipe temperature', 'K', out.t, 1166.79],
        ['mass flow', 'kg/s', out.mdot, 0.163598],
        ['choked port, 6 bar: pipe pressure', 'Pa', choked.p, 148333],
        ['pipe velocity', 'm/s', choked.u, 178.925],
        ['pipe temperature', 'K', choked.t, 1486.85],
        ['mass flow', 'kg/s', choked.mdot, 0.0605092],
        ['open end, outflow: velocity', 'm/s', away.u, 177.091],
        ['temperature', 'K', away.t, 658.96],
        ['open end, inflow: pressure', 'Pa', back.p, 95967],
        ['velocity', 'm/s', back.u, -97.413],
        ['temperature', 'K', back.t, 294.1],
      ],
      'derived',
      solved,
      { withinPart: 1e-4 },
    ),
    ...reflections.flatMap((r, i) =>
      rows(
        `gas-32-${i + 1}`,
        [
          [
            `reflection of a small pulse at an area step of ${steps[i]}`,
            '1',
            r.reflected / plain,
            (1 - steps[i]!) / (1 + steps[i]!),
          ],
          [`transmission at an area step of ${steps[i]}`, '1', r.transmitted / plain, 2 / (1 + steps[i]!)],
        ],
        'exact',
        'plane-wave acoustics, e.g. A. D. Pierce, Acoustics (1981), sec. 7.2',
        { withinPart: 0.01 },
      ),
    ),
    ...rows(
      'gas-33',
      [
        [
          'tone of a closed-open pipe 1 m long, 20 mm radius (formula)',
          'Hz',
          quarterWave(1, 0.02, c),
          84.768,
        ],
        ['the same, flanged end', 'Hz', quarterWave(1, 0.02, c, true), 84.421],
        ['the same by the kernel, 50 cells', 'Hz', tone.frequency, 84.768],
      ],
      'published',
      'H. Levine and J. Schwinger, Phys. Rev. 73 (1948) 383: end correction 0.6133 radius',
      { within: 0.05 },
    ),
    ...rows(
      'gas-33-amplitude',
      [['what is left of the tone after ten periods, 50 cells', '1', tone.left, 1]],
      'exact',
      'no loss in an ideal pipe; one part in a hundred is the scheme',
      { within: 0.01 },
    ),
    ...rows(
      'gas-34',
      [
        ['open-end reflection at ka 0.1', '1', openEndReflection(0.1), 0.995],
        ['open-end reflection at ka 0.5', '1', openEndReflection(0.5), 0.8968],
      ],
      'memory',
      'Levine and Schwinger (1948): at 0.1 their low-frequency limit exp(−ka²/2), at 0.5 their exact integral; from memory',
      { within: 1e-3 },
    ),
  ]
}
