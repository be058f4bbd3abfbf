import { defineReckoner, type Reckoner } from '../../answers/reckoner.ts'
import { freshWaterDensity, waterViscosity } from '../../fluid/water.ts'
import { ductLoss, grateBlockage, grateLoss } from '../intake.ts'
import { boundaryLayer, captureDepth, energyShare, momentumWake } from '../system.ts'
import { submergenceNeeded } from '../ventilation.ts'
import { area, port } from './ports.ts'

const degree = Math.PI / 180

/** Reckoners about the way the water comes. */
export const intakeReckoners: readonly Reckoner[] = [
  defineReckoner({
    id: 'air-depth',
    title: 'Water an intake needs over it when held still',
    trade: 'jet',
    says: 'Depth below which a vortex draws air into an intake that stands still. For a jet count the shortest way from the surface round the edge of the bottom to the opening.',
    inputs: [
      { name: 'opening', says: 'area of the intake opening', kind: 'area', unit: 'cm²', min: 1e-4, max: 1 },
      port.flow,
    ],
    outputs: [
      { name: 'depth', says: 'of water needed', kind: 'length', unit: 'm' },
      { name: 'froude', says: 'inlet Froude number', kind: 'ratio', unit: '1' },
    ],
    reckon: ({ opening, flow }) => {
      const s = submergenceNeeded(opening!, flow!)
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
      port.mm('bar', 'thickness of a bar across the flow', 5e-4, 0.05),
      port.mm('gap', 'clear opening between bars', 1e-3, 0.2),
      { name: 'shape', says: 'of the bars', kind: 'choice', unit: '', choices: ['round', 'square'] },
      {
        name: 'angle',
        says: 'bars to the flow',
        kind: 'angle',
        unit: 'deg',
        min: 2 * degree,
        max: 90 * degree,
        assumed: 30 * degree,
      },
      { name: 'opening', says: 'area of the intake opening', kind: 'area', unit: 'cm²', min: 1e-4, max: 1 },
      port.flow,
    ],
    outputs: [
      { name: 'loss', says: 'coefficient on the velocity in the opening', kind: 'ratio', unit: '1' },
      { name: 'blocked', says: 'share of the opening', kind: 'ratio', unit: '%' },
      { name: 'head', says: 'lost', kind: 'specificEnergy', unit: 'm of water' },
    ],
    reckon: ({ bar, gap, angle, opening, flow }, { shape }) => {
      const grate = { bar: bar!, gap: gap!, angle: angle!, shape: shape as 'round' | 'square' }
      const loss = grateLoss(grate)
      return { loss, blocked: grateBlockage(grate), head: 0.5 * loss * (flow! / opening!) ** 2 }
    },
    sources: ['O. Kirschmer (1926), ζ = β (s/b)^(4/3) sin δ, from memory'],
  }),
  defineReckoner({
    id: 'duct-loss',
    title: 'What the intake duct costs',
    trade: 'jet',
    says: 'Losses of duct wall, bend and shaft ahead of the impeller, on the velocity in the duct.',
    inputs: [
      port.mm('length', 'of the duct along its centre', 0.02, 3, 0.35),
      port.bore,
      port.mm('shaft', 'diameter of the shaft in the flow', 0, 0.1, 0.015),
      {
        name: 'ramp',
        says: 'roof of the intake to the bottom',
        kind: 'angle',
        unit: 'deg',
        min: 5 * degree,
        max: 60 * degree,
        assumed: 27 * degree,
      },
      port.mm('roughness', 'Ra of the wall', 1e-7, 2e-3, 30e-6),
      port.flow,
      port.water,
    ],
    outputs: [
      { name: 'wall', says: 'friction', kind: 'ratio', unit: '1' },
      { name: 'bend', says: 'bend', kind: 'ratio', unit: '1' },
      { name: 'shaftLoss', says: 'shaft across the flow', kind: 'ratio', unit: '1' },
      { name: 'head', says: 'lost in all', kind: 'specificEnergy', unit: 'm of water' },
    ],
    reckon: ({ length, bore, shaft, ramp, roughness, flow, water }) => {
      const speed = flow! / area(bore!)
      const kinematic = waterViscosity(water!) / freshWaterDensity(water!)
      const loss = ductLoss(
        {
          length: length!,
          diameter: bore!,
          roughness: roughness!,
          shaftDiameter: shaft!,
          ramp: ramp!,
          lipRadius: 0.1 * bore!,
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
      { name: 'speed', says: 'speed of the craft', kind: 'speed', unit: 'km/h', min: 0.5, max: 40 },
      {
        name: 'runUp',
        says: 'wetted bottom ahead of the opening',
        kind: 'length',
        unit: 'm',
        min: 0.05,
        max: 20,
      },
      port.mm('width', 'of the opening', 0.02, 0.8),
      port.flow,
      port.water,
    ],
    outputs: [
      { name: 'thickness', says: 'of the boundary layer', kind: 'length', unit: 'mm' },
      { name: 'depth', says: 'of the water taken in', kind: 'length', unit: 'mm' },
      { name: 'wake', says: 'share by which it is slower', kind: 'ratio', unit: '%' },
      { name: 'energy', says: 'share of its energy left', kind: 'ratio', unit: '%' },
    ],
    reckon: ({ speed, runUp, width, flow, water }) => {
      const delta = boundaryLayer(speed!, runUp!, waterViscosity(water!) / freshWaterDensity(water!))
      const depth = captureDepth(flow!, speed!, 1.3 * width!, delta)
      return { thickness: delta, depth, wake: momentumWake(depth, delta), energy: energyShare(depth, delta) }
    },
    sources: [
      'H. Schlichting, Boundary-Layer Theory: δ = 0.37 x Re^-0.2, 1/7-power profile',
      'ITTC 7.5-02-05-03: capture width 1.3 times the intake’s',
    ],
  }),
]
