import {
  kmh,
  kW,
  litresPerSecond,
  metresPerSecond,
  mm,
  newtons,
  percent,
  portOf,
  ratio,
  revsPerMinute,
} from '../../../base/answers/portMakers.ts'
import { defineReckoner, type Reckoner } from '../../../base/answers/reckoner.ts'
import { freshWaterDensity } from '../../../physics/fluid/water.ts'
import { bestReduction } from '../chooseBlades.ts'
import { bestVelocityRatio, bollardBound, flowFromPull, idealEfficiency } from '../ideal.ts'
import { area, port } from './jetPorts.ts'

const momentum = 'Momentum of the jet, ITTC Recommended Procedures 7.5-02-05-03 (waterjet propulsion)'

/** Reckoners about pull, thrust and the speed of the jet. */
export const thrustReckoners: readonly Reckoner[] = [
  defineReckoner({
    id: 'bollard-bound',
    title: 'Most pull a power can give through a nozzle',
    trade: 'jet',
    says: 'Upper bound of the pull tied up: all shaft power in the jet. Real jets reach 65 to 85 % of it (half to three quarters of the power).',
    inputs: [kW('power', 'at the impeller shaft', 10, 1e6), port.nozzle, port.water],
    outputs: [
      newtons('pull', 'no jet can pull more'),
      newtons('likelyLow', 'with half the power in the jet'),
      newtons('likelyHigh', 'with three quarters of it'),
    ],
    reckon: ({ power, nozzle, water }) => {
      const pull = bollardBound(power, area(nozzle), freshWaterDensity(water))
      return { pull, likelyLow: pull * 0.5 ** (2 / 3), likelyHigh: pull * 0.75 ** (2 / 3) }
    },
    sources: ['F = (4 ρ A P²)^(1/3), derived from momentum and energy of the jet'],
    cautions: [
      'Tie a craft to something that holds, stand clear of rope and jet, and have a second person at the kill switch.',
    ],
  }),
  defineReckoner({
    id: 'flow-from-pull',
    title: 'Flow from a pull on a luggage scale',
    trade: 'jet',
    says: 'Water through the jet, its speed and the power in it, from the pull and the nozzle. With way on, give the wake: the boundary layer brings slower water.',
    inputs: [
      portOf('force', 'kgf')('pull', 'measured', 0.1, 2e4),
      port.nozzle,
      port.speed,
      port.water,
      percent('wake', 'share by which the boundary layer slows the water taken in', 0, 0.3, 0),
    ],
    outputs: [
      litresPerSecond('flow', 'through the nozzle'),
      metresPerSecond('jet', 'speed of the jet'),
      kW('power', 'kinetic power of the jet'),
    ],
    reckon: ({ pull, nozzle, speed, water, wake }) => {
      const rho = freshWaterDensity(water)
      const flow = flowFromPull(pull, area(nozzle), rho, speed, wake)
      const jet = flow / area(nozzle)
      return { flow, jet, power: 0.5 * rho * flow * jet * jet }
    },
    sources: [momentum],
  }),
  defineReckoner({
    id: 'jet-thrust',
    title: 'Thrust of a jet',
    trade: 'jet',
    says: 'Thrust from flow, nozzle and boat speed: the water is taken in moving at boat speed, so thrust falls under way.',
    inputs: [
      port.flow,
      port.nozzle,
      port.speed,
      port.water,
      percent('wake', 'share by which the boundary layer slows the water taken in', 0, 0.3, 0),
    ],
    outputs: [newtons('thrust', 'net of the momentum taken in'), metresPerSecond('jet', 'speed of the jet')],
    reckon: ({ flow, nozzle, speed, water, wake }) => {
      const jet = flow / area(nozzle)
      return { thrust: freshWaterDensity(water) * flow * (jet - (1 - wake) * speed), jet }
    },
    sources: [momentum],
  }),
  defineReckoner({
    id: 'jet-velocity-ratio',
    title: 'Best jet speed for a boat speed',
    trade: 'jet',
    says: 'Jet speed over boat speed with the best efficiency, from the losses of intake and nozzle. Small craft run above it because they are short of nozzle and depth.',
    inputs: [
      kmh('speed', 'speed of the craft', 1, 40),
      percent('ramLoss', 'share of the incoming energy the intake wastes', 0.02, 0.6, 0.22),
      percent('nozzleLoss', 'share of the jet’s energy the nozzle wastes', 0, 0.2, 0.03),
      mm('height', 'nozzle above still water', 0, 0.5, 0.04),
    ],
    outputs: [
      ratio('ratio', 'best jet speed over boat speed'),
      metresPerSecond('jet', 'best jet speed'),
      percent('efficiency', 'jet efficiency there, before the pump’s'),
      percent('ideal', 'efficiency at that ratio without losses'),
    ],
    reckon: ({ speed, ramLoss, nozzleLoss, height }) => {
      const best = bestVelocityRatio({
        ramLoss: ramLoss,
        nozzleLoss: nozzleLoss,
        nozzleHeight: height,
        V: speed,
      })
      return {
        ratio: best.k,
        jet: best.k * speed,
        efficiency: best.efficiency,
        ideal: idealEfficiency(best.k),
      }
    },
    sources: [
      'k = 1 + √(1 - b/a), derived from momentum and energy; ideal efficiency 2/(1 + k), ITTC 7.5-02-05-03',
    ],
  }),
  defineReckoner({
    id: 'jet-reduction',
    title: 'Reduction between engine and jet',
    trade: 'jet',
    says: 'Engine turns per impeller turn that let the engine reach its peak power on a jet whose torque is known at one rotation.',
    inputs: [
      kW('power', 'engine’s peak power', 10, 1e6),
      revsPerMinute('peak', 'rotation of the peak', 5, 400),
      port.torque,
      port.rotation,
      percent('efficiency', 'of belt or gears', 0.7, 1, 0.96),
    ],
    outputs: [
      ratio('ratio', 'engine turns per impeller turn'),
      revsPerMinute('impeller', 'impeller rotation at the peak'),
    ],
    reckon: ({ power, peak, torque, rotation, efficiency }) => {
      const ratio = bestReduction(peak, power, efficiency, torque / rotation ** 2)
      return { ratio, impeller: peak / ratio }
    },
    sources: ['T = k n², P = 2π k n³ for a wetted jet, derived'],
  }),
]
