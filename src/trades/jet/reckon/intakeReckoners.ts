import {
  choice,
  cm2,
  degrees,
  kmh,
  metres,
  metresOfWater,
  mm,
  percent,
  ratio,
} from '../../../base/answers/portMakers.ts'
import { defineReckoner, type Reckoner } from '../../../base/answers/reckoner.ts'
import { freshWaterDensity, waterViscosity } from '../../../physics/fluid/water.ts'
import { ductLoss, grateBlockage, grateLoss } from '../intakeFlow.ts'
import { boundaryLayer, captureDepth, energyShare, momentumWake } from '../system.ts'
import { submergenceNeeded } from '../ventilation.ts'
import { area, port } from './jetPorts.ts'

const degree = Math.PI / 180

/** Reckoners about the way the water comes. */
export const intakeReckoners: readonly Reckoner[] = [
  defineReckoner({
    id: 'air-depth',
    title: 'Water an intake needs over it when held still',
    trade: 'jet',
    says: 'Depth below which a vortex draws air into an intake that stands still. For a jet count the shortest way from the surface round the edge of the bottom to the opening.',
    inputs: [cm2('opening', 'area of the intake opening', 1e-4, 1), port.flow],
    outputs: [metres('depth', 'of water needed'), ratio('froude', 'inlet Froude number')],
    reckon: ({ opening, flow }) => {
      const s = submergenceNeeded(opening, flow)
      return { depth: s.needed, froude: s.froude }
    },
    sources: ['ANSI/HI 9.8, Rotodynamic Pumps for Pump Intake Design: S = D (1 + 2.3 Fr)'],
  }),
  defineReckoner({
    id: 'grate-loss',
    title: 'What a grate costs',
    trade: 'jet',
    says: 'Head lost in the bars of an intake grate. Weed multiplies it by two to four.',
    inputs: [
      mm('bar', 'thickness of a bar across the flow', 5e-4, 0.05),
      mm('gap', 'clear opening between bars', 1e-3, 0.2),
      choice('shape', 'of the bars', ['round', 'square']),
      degrees('angle', 'bars to the flow', 2 * degree, 90 * degree, 30 * degree),
      cm2('opening', 'area of the intake opening', 1e-4, 1),
      port.flow,
    ],
    outputs: [
      ratio('loss', 'coefficient on the velocity in the opening'),
      percent('blocked', 'share of the opening'),
      metresOfWater('head', 'lost'),
    ],
    reckon: ({ bar, gap, angle, opening, flow }, { shape }) => {
      const grate = { bar: bar, gap: gap, angle: angle, shape: shape as 'round' | 'square' }
      const loss = grateLoss(grate)
      return { loss, blocked: grateBlockage(grate), head: 0.5 * loss * (flow / opening) ** 2 }
    },
    sources: ['O. Kirschmer (1926), ζ = β (s/b)^(4/3) sin δ, from memory'],
  }),
  defineReckoner({
    id: 'duct-loss',
    title: 'What the intake duct costs',
    trade: 'jet',
    says: 'Losses of duct wall, bend and shaft ahead of the impeller, on the velocity in the duct.',
    inputs: [
      mm('length', 'of the duct along its centre', 0.02, 3, 0.35),
      port.bore,
      mm('shaft', 'diameter of the shaft in the flow', 0, 0.1, 0.015),
      degrees('ramp', 'roof of the intake to the bottom', 5 * degree, 60 * degree, 27 * degree),
      mm('roughness', 'Ra of the wall', 1e-7, 2e-3, 30e-6),
      port.flow,
      port.water,
    ],
    outputs: [
      ratio('wall', 'friction'),
      ratio('bend', 'bend'),
      ratio('shaftLoss', 'shaft across the flow'),
      metresOfWater('head', 'lost in all'),
    ],
    reckon: ({ length, bore, shaft, ramp, roughness, flow, water }) => {
      const speed = flow / area(bore)
      const kinematic = waterViscosity(water) / freshWaterDensity(water)
      const loss = ductLoss(
        {
          length: length,
          diameter: bore,
          roughness: roughness,
          shaftDiameter: shaft,
          ramp: ramp,
          lipRadius: 0.1 * bore,
        },
        speed,
        kinematic,
      )
      return {
        wall: loss.wall,
        bend: loss.bend,
        shaftLoss: loss.shaft,
        head: 0.5 * (loss.wall + loss.bend + loss.shaft) * speed * speed,
      }
    },
    sources: ['S. E. Haaland (1983), pipe friction; bend and shaft: engineering defaults of this project'],
  }),
  defineReckoner({
    id: 'jet-wake',
    title: 'Boundary layer taken into a flush intake',
    trade: 'jet',
    says: 'Thickness of the slow water along the bottom, how deep the intake drinks, and how much slower and poorer the water taken in is.',
    inputs: [
      kmh('speed', 'speed of the craft', 0.5, 40),
      metres('runUp', 'wetted bottom ahead of the opening', 0.05, 20),
      mm('width', 'of the opening', 0.02, 0.8),
      port.flow,
      port.water,
    ],
    outputs: [
      mm('thickness', 'of the boundary layer'),
      mm('depth', 'of the water taken in'),
      percent('wake', 'share by which it is slower'),
      percent('energy', 'share of its energy left'),
    ],
    reckon: ({ speed, runUp, width, flow, water }) => {
      const delta = boundaryLayer(speed, runUp, waterViscosity(water) / freshWaterDensity(water))
      const depth = captureDepth(flow, speed, 1.3 * width, delta)
      return { thickness: delta, depth, wake: momentumWake(depth, delta), energy: energyShare(depth, delta) }
    },
    sources: [
      'H. Schlichting, Boundary-Layer Theory: δ = 0.37 x Re^-0.2, 1/7-power profile',
      'ITTC 7.5-02-05-03: capture width 1.3 times the intake’s',
    ],
  }),
]
