import {
  joulesPerKg,
  kPa,
  metres,
  metresPerSecond,
  mm,
  percent,
  ratio,
  revsPerMinute,
} from '../../../base/answers/portMakers.ts'
import { defineReckoner, type Reckoner } from '../../../base/answers/reckoner.ts'
import { atmosphericPressure } from '../../../physics/fluid/atmosphere.ts'
import { saturationPressure } from '../../../physics/fluid/vapour.ts'
import { freshWaterDensity, gravity } from '../../../physics/fluid/water.ts'
import { bladeCavitationNumber, suctionSpecificSpeed, tipSpeedCeiling } from '../cavitation.ts'
import { usPerSpecificSpeed } from '../ideal.ts'
import { annulusOf, port } from './jetPorts.ts'

const inducers = 'NASA SP-8052, Liquid Rocket Engine Turbopump Inducers (1971), eqs 2-7 and §2.1.5'

/** Reckoners about pressure at the impeller and cavitation. */
export const suctionReckoners: readonly Reckoner[] = [
  defineReckoner({
    id: 'vapour-pressure',
    title: 'Vapour pressure of water and pressure of the air',
    trade: 'jet',
    says: 'What stands between the water and boiling at the impeller: air pressure at an altitude less vapour pressure.',
    inputs: [port.water, metres('altitude', 'of the water above the sea', -420, 5000, 100)],
    outputs: [
      kPa('vapour', 'saturation pressure'),
      kPa('air', 'standard atmosphere'),
      metres('margin', 'as height of water'),
    ],
    reckon: ({ water, altitude }) => {
      const vapour = saturationPressure(water)
      const air = atmosphericPressure(altitude)
      return { vapour, air, margin: (air - vapour) / (gravity * freshWaterDensity(water)) }
    },
    sources: ['IAPWS-IF97, eq. 30', 'ISO 2533:1975, Standard Atmosphere'],
  }),
  defineReckoner({
    id: 'suction-head',
    title: 'Suction head at the impeller',
    trade: 'jet',
    says: 'Net positive suction head available at the top of the impeller, from air pressure, depth, speed and the losses of the intake.',
    inputs: [
      port.water,
      metres('altitude', 'of the water above the sea', -420, 5000, 100),
      mm('depth', 'top of the impeller below still water; negative above', -0.5, 1, 0),
      port.speed,
      percent('ramLoss', 'share of the incoming energy the intake wastes', 0.02, 0.6, 0.22),
      ratio('ductLoss', 'loss of the duct on its velocity', 0, 1, 0.25),
      metresPerSecond('axial', 'speed of the water into the rotor', 0, 20, 6),
    ],
    outputs: [joulesPerKg('energy', 'g · NPSH'), metres('npsh', 'as height of water')],
    reckon: ({ water, altitude, depth, speed, ramLoss, ductLoss, axial }) => {
      const energy =
        (atmosphericPressure(altitude) - saturationPressure(water)) / freshWaterDensity(water) +
        gravity * depth +
        0.5 * (1 - ramLoss) * speed ** 2 -
        0.5 * ductLoss * axial ** 2
      return { energy, npsh: energy / gravity }
    },
    sources: ['Definition of NPSH, ISO 17769-1; intake bookkeeping of ITTC 7.5-02-05-03'],
  }),
  defineReckoner({
    id: 'blade-cavitation',
    title: 'How near the blades are to cavitation',
    trade: 'jet',
    says: 'Blade cavitation number against the numbers where an impeller loses 3 % of its head and where it breaks down. Breakdown is 2.5 times the ideal limit of the blade angle, an engineering default; measure the knee to know better.',
    inputs: [
      port.bore,
      port.hub,
      port.pitch,
      mm('edgeRadius', 'radius of the leading edge', 0, 0.01, 0.75e-3),
      port.rotation,
      port.flow,
      joulesPerKg('suction', 'g · NPSH available', 1, 500, 97),
    ],
    outputs: [
      ratio('number', 'blade cavitation number'),
      ratio('threePercent', 'number at 3 % head loss'),
      ratio('breakdown', 'number at breakdown'),
      ratio('margin', 'number over that of 3 % loss; above 1.3 nothing is lost'),
      ratio('suctionSpecific', 'suction specific speed, no unit; 4 to 4.4 for long life'),
      ratio('suctionSpecificUs', 'the same, US'),
    ],
    reckon: ({ bore, hub, pitch, edgeRadius, rotation, flow, suction }) => {
      const axial = flow / annulusOf(bore, hub)
      const tip = Math.PI * bore * rotation
      const breakdown = 2.5 * Math.tan(Math.atan2(pitch, Math.PI * bore) / 2) ** 2 + 20 * edgeRadius
      const number = bladeCavitationNumber(suction, axial, tip)
      const specific = suctionSpecificSpeed(rotation, flow, suction)
      return {
        number,
        threePercent: 1.6 * breakdown,
        breakdown,
        margin: number / (1.6 * breakdown),
        suctionSpecific: specific,
        suctionSpecificUs: specific * usPerSpecificSpeed,
      }
    },
    sources: [inducers, 'Long-life limit of suction specific speed: common practice, no source'],
  }),
  defineReckoner({
    id: 'tip-speed-ceiling',
    title: 'Fastest an impeller may turn before it cavitates',
    trade: 'jet',
    says: 'Tip speed and rotation at which the blades reach a cavitation number, for a flow coefficient. Ask with the number of 3 % head loss for the useful limit, with that of breakdown for the end.',
    inputs: [
      port.bore,
      ratio('number', 'blade cavitation number allowed', 0.01, 1, 0.09),
      ratio('flowCoefficient', 'axial over tip speed; 0.13 to 0.25 in small jets', 0.05, 0.5, 0.17),
      joulesPerKg('suction', 'g · NPSH available', 1, 500, 97),
    ],
    outputs: [metresPerSecond('tipSpeed', 'of the blades'), revsPerMinute('rotation', 'of the impeller')],
    reckon: ({ bore, number, flowCoefficient, suction }) => {
      const tipSpeed = tipSpeedCeiling(suction, number, flowCoefficient)
      return { tipSpeed, rotation: tipSpeed / (Math.PI * bore) }
    },
    sources: [inducers],
  }),
]
