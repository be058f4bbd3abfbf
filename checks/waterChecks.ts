/** Water: its density, viscosity and friction lines. */
import { ittc57, schoenherr } from '../src/physics/fluid/friction.ts'
import { freshWaterDensity, kinematicViscosity, seaWaterDensity } from '../src/physics/fluid/water.ts'
import { savitskyPaper } from './planingChecks.ts'
import type { Row } from './row.ts'

export function water(): Row[] {
  const unesco =
    'UNESCO (1981), Tech. Papers in Marine Science 38, International Equation of State of Seawater 1980'
  const density = (t: number, expected: number): Row => ({
    id: `fresh water density ${t} °C`,
    quantity: 'density of fresh water',
    unit: 'kg/m³',
    expected,
    got: freshWaterDensity(273.15 + t),
    within: 0.005,
    origin: 'published',
    source: 'standard density table of air-free water (Handbook of Chemistry and Physics, Landolt–Börnstein)',
  })
  return [
    density(10, 999.702),
    density(15, 999.102),
    density(20, 998.206),
    density(25, 997.048),
    {
      id: 'fresh water viscosity 15 °C, NPL',
      quantity: 'kinematic viscosity of fresh water',
      unit: 'm²/s',
      expected: 1.13902e-6,
      got: kinematicViscosity(288.15),
      withinPart: 1e-3,
      origin: 'published',
      source: 'National Physical Laboratory, Ship Report 142 (1970)',
    },
    {
      id: 'fresh water viscosity 15 °C, ITTC',
      quantity: 'kinematic viscosity of fresh water',
      unit: 'm²/s',
      expected: 1.1386e-6,
      got: kinematicViscosity(288.15),
      withinPart: 1e-3,
      origin: 'memory',
      source: 'ITTC Recommended Procedure 7.5-02-01-03, Fresh water and seawater properties',
    },
    {
      id: 'fresh water viscosity 20 °C, ITTC',
      quantity: 'kinematic viscosity of fresh water',
      unit: 'm²/s',
      expected: 1.0034e-6,
      got: kinematicViscosity(293.15),
      withinPart: 1e-3,
      origin: 'memory',
      source: 'ITTC Recommended Procedure 7.5-02-01-03',
    },
    {
      id: 'sea water density 15 °C, 35 g/kg',
      quantity: 'density of sea water',
      unit: 'kg/m³',
      expected: 1026.021,
      got: seaWaterDensity(288.15, 0.035),
      withinPart: 1e-4,
      origin: 'memory',
      source: `ITTC Recommended Procedure 7.5-02-01-03; formula ${unesco}`,
    },
    {
      id: 'sea water density 5 °C, 35, EOS-80 test value',
      quantity: 'density of sea water',
      unit: 'kg/m³',
      expected: 1027.67547,
      got: seaWaterDensity(278.15, 0.035),
      within: 2e-5,
      origin: 'memory',
      source: `${unesco}, check value at S 35, t 5 °C, one atmosphere`,
    },
    {
      id: 'sea water viscosity 15 °C',
      quantity: 'kinematic viscosity of sea water',
      unit: 'm²/s',
      expected: 1.1892e-6,
      got: kinematicViscosity(288.15, 0.035),
      withinPart: 8e-3,
      origin: 'memory',
      source:
        'ITTC Recommended Procedure 7.5-02-01-03; the salt correction used here is Millero (1974), which lies 0.6 % lower',
    },
  ]
}

export function friction(): Row[] {
  const line = (Re: number, expected: number): Row => ({
    id: `ITTC-57 at Re ${Re.toExponential(0)}`,
    quantity: 'friction coefficient',
    unit: '1',
    expected,
    got: ittc57(Re),
    within: 5e-8,
    origin: 'exact',
    source: 'ITTC (1957) line 0.075/(log10 Re − 2)², evaluated by hand',
  })
  return [
    line(1e6, 4.6875e-3),
    line(1e7, 3e-3),
    line(1e8, 0.075 / 36),
    line(1e9, 0.075 / 49),
    {
      id: 'Schoenherr at Re 3.6e8',
      quantity: 'friction coefficient',
      unit: '1',
      expected: 0.00174,
      got: schoenherr(3.6e8),
      within: 5e-6,
      origin: 'published',
      source: `${savitskyPaper}: CF 0.00174`,
    },
  ]
}
