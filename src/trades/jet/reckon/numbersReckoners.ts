import {
  choice,
  degrees,
  joulesPerKg,
  kW,
  litresPerSecond,
  metres,
  metresOfWater,
  metresPerSecond,
  mm,
  newtonMetres,
  percent,
  ratio,
} from '../../../base/answers/portMakers.ts'
import { defineReckoner, type Reckoner } from '../../../base/answers/reckoner.ts'
import { freshWaterDensity, gravity, waterViscosity } from '../../../physics/fluid/water.ts'
import { cordierDiameter, fallbackAt, fallbackPump, stepUp } from '../fallback.ts'
import { affinity, metricPerSpecificSpeed, specificSpeed, usPerSpecificSpeed } from '../ideal.ts'
import { annulusOf, port } from './jetPorts.ts'

const degree = Math.PI / 180

/** Reckoners about the pump as a whole: shape numbers, scaling, what an unknown one should do. */
export const numbersReckoners: readonly Reckoner[] = [
  defineReckoner({
    id: 'specific-speed',
    title: 'Specific speeds of a pump',
    trade: 'jet',
    says: 'Shape number of a pump at a duty, in three systems, and the diameter well-made pumps of that duty have. Axial pumps lie between 2 and 5.',
    inputs: [port.rotation, port.flow, port.head],
    outputs: [
      ratio('specific', 'ω√Q/(gH)^¾, no unit'),
      ratio('us', 'rpm, US gal/min, ft'),
      ratio('metric', 'rpm, m³/s, m'),
      mm('diameter', 'Cordier’s diameter'),
    ],
    reckon: ({ rotation, flow, head }) => {
      const specific = specificSpeed(rotation, flow, head)
      return {
        specific,
        us: specific * usPerSpecificSpeed,
        metric: specific * metricPerSpecificSpeed,
        diameter: (cordierDiameter(specific) * Math.sqrt(flow)) / head ** 0.25,
      }
    },
    sources: ['Hydraulic Institute; ISO 17769-1; O. Cordier (1953)'],
  }),
  defineReckoner({
    id: 'specific-speed-convert',
    title: 'Specific speed from one system to the others',
    trade: 'jet',
    says: 'Converts specific speed or suction specific speed; both take the same factors.',
    inputs: [
      ratio('value', 'the number to convert', 1e-3, 1e6),
      choice('from', 'its system', ['no unit', 'US', 'metric']),
    ],
    outputs: [
      ratio('specific', 'no unit'),
      ratio('us', 'rpm, US gal/min, ft'),
      ratio('metric', 'rpm, m³/s, m'),
    ],
    reckon: ({ value }, { from }) => {
      const per = from === 'US' ? usPerSpecificSpeed : from === 'metric' ? metricPerSpecificSpeed : 1
      const specific = value / per
      return { specific, us: specific * usPerSpecificSpeed, metric: specific * metricPerSpecificSpeed }
    },
    sources: ['Unit arithmetic; NIST SP 811 (2008) for gallon and foot'],
  }),
  defineReckoner({
    id: 'pump-affinity',
    title: 'The same pump faster or larger',
    trade: 'jet',
    says: 'How flow, head, torque and power change when rotation or size changes and nothing cavitates.',
    inputs: [
      ratio('rotation', 'new rotation over old', 0.1, 10, 1),
      ratio('size', 'new size over old', 0.2, 5, 1),
    ],
    outputs: [
      ratio('flow', 'factor on flow'),
      ratio('head', 'factor on head'),
      ratio('torque', 'factor on torque'),
      ratio('power', 'factor on power'),
    ],
    reckon: ({ rotation, size }) => ({ ...affinity(rotation, size) }),
    sources: ['Affinity laws: Q ~ nD³, gH ~ n²D², T ~ n²D⁵, P ~ n³D⁵'],
  }),
  defineReckoner({
    id: 'screw-slip',
    title: 'How far the water lags behind the screw',
    trade: 'jet',
    says: 'Flow over what the pitch would pass without load. Small jets run best at 60 to 75 %; near 100 % the pump gives no head, below 45 % its blades stall.',
    inputs: [port.flow, port.rotation, port.pitch, port.bore, port.hub],
    outputs: [
      percent('advance', 'flow per screw advance'),
      percent('slip', 'what is missing'),
      metresPerSecond('axial', 'speed of the water into the rotor'),
    ],
    reckon: ({ flow, rotation, pitch, bore, hub }) => {
      const axial = flow / annulusOf(bore, hub)
      const advance = axial / (rotation * pitch)
      return { advance, slip: 1 - advance, axial }
    },
    sources: ['J = c/(nP), derived'],
  }),
  defineReckoner({
    id: 'euler-head',
    title: 'Head from blade speed and swirl',
    trade: 'jet',
    says: 'Work of a blade row on water that comes without swirl and leaves along a direction at an angle to the plane of rotation.',
    inputs: [
      metresPerSecond('bladeSpeed', 'at that radius', 0.5, 150),
      metresPerSecond('axial', 'flow velocity', 0.1, 60),
      degrees('outflow', 'relative flow to the plane of rotation', 5 * degree, 90 * degree),
    ],
    outputs: [
      metresPerSecond('swirl', 'given to the water'),
      joulesPerKg('work', 'on each kilogram'),
      metres('lift', 'as height of water'),
    ],
    reckon: ({ bladeSpeed, axial, outflow }) => {
      const swirl = bladeSpeed - axial / Math.tan(outflow)
      const work = bladeSpeed * swirl
      return { swirl, work, lift: work / gravity }
    },
    sources: ['Euler’s equation of turbomachines'],
  }),
  defineReckoner({
    id: 'unknown-pump',
    title: 'What a pump of unknown blades should do',
    trade: 'jet',
    says: 'Best flow, head and torque of a pump of a given size and rotation if it was chosen well for its specific speed. Good to a quarter; measure the pull to know better.',
    inputs: [
      port.bore,
      port.rotation,
      ratio('specific', 'specific speed, no unit; 3 is usual for small jets', 1, 10, 3),
      choice('finish', 'of the blades', ['tight metal', 'sanded print', 'raw print']),
      port.water,
    ],
    outputs: [
      litresPerSecond('flow', 'at best efficiency'),
      metresOfWater('head', 'there'),
      newtonMetres('torque', 'there'),
      kW('power', 'there'),
    ],
    reckon: ({ bore, rotation, specific, water }, { finish }) => {
      const pump = fallbackPump(specific, finish as 'tight metal' | 'sanded print' | 'raw print')
      const at = fallbackAt(pump, pump.flow)
      const torque = freshWaterDensity(water) * at.torque * rotation ** 2 * bore ** 5
      return {
        flow: pump.flow * rotation * bore ** 3,
        head: pump.head * (rotation * bore) ** 2,
        torque,
        power: 2 * Math.PI * rotation * torque,
      }
    },
    sources: [
      'O. Cordier (1953), best diameters of pumps; efficiency by finish: engineering default of this project',
    ],
  }),
  defineReckoner({
    id: 'efficiency-step-up',
    title: 'Efficiency of the same pump larger or smoother',
    trade: 'jet',
    says: 'Efficiency carried from one pump to another of the same shape but other size, speed or finish. The tip gap never scales and is not in it.',
    inputs: [
      percent('efficiency', 'of the pump that is known', 0.2, 0.95, 0.75),
      mm('chord', 'blade length of the known pump', 0.01, 1),
      metresPerSecond('speed', 'water over its blades', 2, 80),
      mm('roughness', 'Ra of its blades', 1e-7, 5e-4, 12e-6),
      ratio('size', 'new size over old', 0.2, 5, 1),
      mm('newRoughness', 'Ra of the new blades', 1e-7, 5e-4, 2e-6),
      port.water,
    ],
    outputs: [percent('efficiency', 'of the new pump at the same rotation over size')],
    reckon: ({ efficiency, chord, speed, roughness, size, newRoughness, water }) => {
      const kinematic = waterViscosity(water) / freshWaterDensity(water)
      const now = { chord: chord, speed: speed, kinematic, roughness: roughness }
      const next = { chord: chord * size, speed: speed, kinematic, roughness: newRoughness }
      return { efficiency: Math.max(0, stepUp(efficiency, now, next)) }
    },
    sources: [
      '1 - η₂ = (1 - η₁)(0.3 + 0.7 C_f2/C_f1), form of Ackeret; friction of smooth and rough plates: Schlichting, Boundary-Layer Theory',
    ],
  }),
]
