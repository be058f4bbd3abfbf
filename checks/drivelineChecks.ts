import type { CheckRow } from '../src/base/answers/check.ts'
import { mostPreload, torquePerPull } from '../src/trades/driveline/boltTorque.ts'
import { flangeTorque, rubRadius, setScrewTorque } from '../src/trades/driveline/frictionGrip.ts'
import { relaxed } from '../src/trades/driveline/jointRelax.ts'
import { boltOf, classOf, stressArea } from '../src/trades/driveline/metricBolts.ts'
import { bearingLife, equivalentLoad, ratingFor } from '../src/trades/driveline/rollingBearings.ts'
import {
  frequencyOfSag,
  mountStiffness,
  passes,
  rubberModulus,
} from '../src/trades/driveline/rubberMounts.ts'
import { shaftFor, twistStiffness, twistStress } from '../src/trades/driveline/shaftStress.ts'
import { nutThreadArea, stripsAt } from '../src/trades/driveline/threadStrip.ts'
import { chainFrequencies, twoMass } from '../src/trades/driveline/torsionChain.ts'
import { plainWhirl, whirlSpeed } from '../src/trades/driveline/whirl.ts'
import { type Line, letteredRows } from './row.ts'

const lettered = letteredRows('driveline')
const lbf = 4.4482216152605
const inch = 0.0254

function bolts(): CheckRow[] {
  const area = (size: string) => 1e6 * stressArea(boltOf(size))
  const proof = (size: string, name: string) =>
    (classOf(`steel ${name}`).proof * stressArea(boltOf(size))) / 1e3
  const m6 = boltOf('M6')
  const areas: Line[] = (
    [
      ['M5', 14.2],
      ['M6', 20.1],
      ['M8', 36.6],
      ['M10', 58],
      ['M12', 84.3],
    ] as const
  ).map(([size, expected]) => [`stress area ${size}`, 'mm²', area(size), expected])
  const loads: Line[] = (
    [
      ['M6', '8.8', 11.6],
      ['M8', '8.8', 21.2],
      ['M10', '8.8', 33.7],
      ['M12', '8.8', 48.9],
      ['M8', '10.9', 30.4],
    ] as const
  ).map(([size, name, expected]) => [`proof load ${size} class ${name}`, 'kN', proof(size, name), expected])
  return [
    ...lettered('D-21', areas, 'published', 'ISO 898-1, stress areas', { within: 0.1 }),
    ...lettered('D-22', loads, 'published', 'ISO 898-1, proof loads', { within: 0.15 }),
    ...lettered(
      'D-65',
      [
        [
          'pull of M6 class 8.8 at 90 % of yield, friction 0.12',
          'kN',
          mostPreload(m6, classOf('steel 8.8'), 0.12) / 1e3,
          10.18,
        ],
        ['torque to it, rubbing at 7.67 mm', 'N·m', 10_180 * torquePerPull(m6, 0.12, 0.12, 7.67e-3), 10.08],
      ],
      'memory',
      'VDI 2230 part 1, table of assembly preloads, from memory; worked out again from its equations',
      { withinPart: 0.01 },
    ),
    ...lettered(
      'D-68',
      [
        ['nut thread in shear, M8, a millimetre', 'mm²', 1e6 * nutThreadArea(boltOf('M8'), 1e-3), 16.829],
        ['nut thread in shear, M10, a millimetre', 'mm²', 1e6 * nutThreadArea(boltOf('M10'), 1e-3), 21.477],
        ['M6 in aluminium of 138 MPa, 6 mm', 'kN', stripsAt(m6, 6e-3, 138e6) / 1e3, 10.09],
      ],
      'derived',
      'FED-STD-H28/2B and ASME B1.1 appendix B at ISO 965-2 limits, worked out by hand outside this code',
      { withinPart: 0.002 },
    ),
    ...lettered(
      'D-98',
      [
        ['pull left after creep of half', '1', relaxed({ bolt: 4.854e-9, soft: 5e-8, hard: 0 }, 0.5), 0.687],
        [
          'after creep as large as the elastic strain',
          '1',
          relaxed({ bolt: 4.854e-9, soft: 5e-8, hard: 0 }, 1),
          0.523,
        ],
        [
          'the same with a disc spring',
          '1',
          relaxed({ bolt: 4.854e-9 + 1.667e-7, soft: 5e-8, hard: 0 }, 1),
          0.816,
        ],
      ],
      'derived',
      'springs in series, by hand; M6, 20 mm, plastic of 2 GPa on 200 mm²',
      { within: 0.001 },
    ),
  ]
}

function grips(): CheckRow[] {
  // K = 0.2: pull = torque / (0.2 d), in pounds and inches
  const screw = (torque: number, d: number) => setScrewTorque((lbf * torque) / (0.2 * d), 2)
  const radius = rubRadius(0.025, 0.045)
  return [
    ...lettered(
      'D-94',
      [
        ['flange rubs at', 'mm', 1e3 * radius, 35.95],
        ['torque of six bolts of 6 kN, friction 0.15', 'N·m', flangeTorque(0.15, 1, 36e3, radius), 194.1],
      ],
      'derived',
      'even pressure on a ring (Shigley, Mechanical Engineering Design, disc clutches), by hand',
      { withinPart: 0.002 },
    ),
    ...lettered(
      'D-95',
      [
        ['holding power of a No. 10 set screw at 36 lbf·in', 'lbf', screw(36, 0.19) / lbf, 540],
        ['of a 1/4 in one at 87 lbf·in', 'lbf', screw(87, 0.25) / lbf, 1000],
      ],
      'memory',
      'J. E. Shigley, Mechanical Engineering Design, typical holding power of socket set screws, from memory',
      { withinPart: 0.02 },
    ),
  ]
}

function shafts(): CheckRow[] {
  const steel = { modulus: 205e9, density: 7850 }
  const hung = { metal: steel, diameter: 0.016, bore: 0, span: 0.6, overhang: 0, mass: 0, seat: 1e15 }
  const tip = {
    metal: { modulus: 205e9, density: 1e-3 },
    diameter: 0.012,
    bore: 0,
    span: 0.3,
    overhang: 0.1,
    mass: 0.5,
    seat: 1e15,
  }
  const bending = (205e9 * Math.PI * 0.012 ** 4) / 64
  const tipStiff = (3 * bending) / (0.1 ** 2 * (0.3 + 0.1))
  return [
    ...lettered(
      'D-71',
      [
        ['whirl of steel Ø16 on 600 mm', 'rev/min', 60 * plainWhirl(hung), 5351],
        ['the same from its lumps', 'rev/min', 60 * whirlSpeed(hung).value, 5351],
      ],
      'exact',
      '(π/L)² √(EI/ρA)',
      { withinPart: 0.01 },
    ),
    ...lettered(
      'D-71t',
      [
        [
          'a mass hung behind two bearings, shaft without weight',
          'Hz',
          whirlSpeed(tip).value,
          Math.sqrt(tipStiff / 0.5) / (2 * Math.PI),
        ],
      ],
      'exact',
      'stiffness 3EI/(a²(L + a)) at the end of an overhang (Roark, beams)',
      { withinPart: 0.001 },
    ),
    ...lettered(
      'D-72',
      [
        ['shear stress Ø16 at 20 N·m', 'MPa', twistStress(20, 0.016) / 1e6, 24.87],
        [
          'its twist a metre, G 79.3 GPa',
          '°',
          ((20 / twistStiffness(79.3e9, 1, 0.016)) * 180) / Math.PI,
          2.246,
        ],
      ],
      'exact',
      '16T/πd³ and TL/GJ, by hand',
      { withinPart: 0.002 },
    ),
    ...lettered(
      'D-105',
      [
        [
          'shaft for 30 N·m bending and 20 N·m twist, shock 1.5, 40 MPa',
          'mm',
          1e3 * shaftFor({ torque: 20, moment: 30, torqueFactor: 1.5, momentFactor: 1.5 }, 40e6),
          19.02,
        ],
      ],
      'derived',
      'ASME code for transmission shafting (B17c, 1927), from memory; by hand',
      { within: 0.02 },
    ),
    ...lettered(
      'D-106',
      [
        [
          'two equal masses on a spring',
          'Hz',
          twoMass(1e-3, 1e-3, 500),
          Math.sqrt(2 * 500 * 1e3) / (2 * Math.PI),
        ],
        [
          'three equal ones, first',
          'Hz',
          chainFrequencies({ inertia: [1e-3, 1e-3, 1e-3], stiffness: [500, 500] })[0]!,
          Math.sqrt(500e3) / (2 * Math.PI),
        ],
        [
          'three equal ones, second',
          'Hz',
          chainFrequencies({ inertia: [1e-3, 1e-3, 1e-3], stiffness: [500, 500] })[1]!,
          Math.sqrt(1500e3) / (2 * Math.PI),
        ],
      ],
      'exact',
      'J. P. Den Hartog, Mechanical Vibrations: free chain of equal masses, √(k/J) and √(3k/J)',
      { withinPart: 1e-6 },
    ),
  ]
}

function bearings(): CheckRow[] {
  return [
    ...lettered(
      'D-73',
      [
        [
          'rating for 400 lbf, 5000 h at 1725 rev/min',
          'lbf',
          ratingFor(400 * lbf, 5000 * 3600, 1725 / 60) / lbf,
          3211,
        ],
      ],
      'memory',
      'J. E. Shigley, Mechanical Engineering Design, example 11-1, from memory',
      { withinPart: 0.002 },
    ),
    ...lettered(
      'D-74',
      [
        [
          'life of 13.5 kN under 1.2 kN at 7000 rev/min',
          'h',
          bearingLife(13.5e3, 1.2e3, 7000 / 60) / 3600,
          3390,
        ],
      ],
      'derived',
      'ISO 281, L10 = (C/P)³, by hand',
      { withinPart: 0.005 },
    ),
    ...lettered(
      'D-74e',
      [
        [
          'load that counts: 500 lbf on a turning outer ring and 400 lbf of thrust, C0 4450 lbf',
          'lbf',
          equivalentLoad(1.2 * 500 * lbf, 400 * lbf, 4450 * lbf) / lbf,
          947,
        ],
      ],
      'memory',
      'J. E. Shigley, Mechanical Engineering Design, example 11-4 (Y 1.527 between the table’s rows), from memory',
      { withinPart: 0.002 },
    ),
  ]
}

function rubber(): CheckRow[] {
  const block = mountStiffness({ across: 2 * inch, height: inch, shore: 50 })
  return [
    ...lettered(
      'D-75',
      [
        ['own frequency at 1 mm of sag', 'Hz', frequencyOfSag(1e-3), 15.76],
        ['passes at √6 times its frequency', '1', passes(Math.sqrt(6), 0), 0.2],
        ['passes at three times', '1', passes(3, 0), 0.125],
      ],
      'exact',
      '√(g/sag)/2π and 1/(r² − 1)',
      { within: 0.005 },
    ),
    ...lettered(
      'D-76',
      [
        ['modulus of rubber of 50 degrees', 'MPa', rubberModulus(50) / 1e6, 2.47],
        [
          'pressed over sheared, a block as high as half its width',
          '1',
          block.pressed / block.sheared,
          3 * (1 + 2 * 0.5 ** 2),
        ],
      ],
      'memory',
      'A. N. Gent (1958) and P. B. Lindley, Engineering Design with Natural Rubber, from memory; second by hand',
      { withinPart: 0.01 },
    ),
  ]
}

export const drivelineChecks = (): CheckRow[] => [
  ...bolts(),
  ...grips(),
  ...shafts(),
  ...bearings(),
  ...rubber(),
]
