import { defineReckoner, type Reckoner } from '../../answers/reckoner.ts'
import { freshWaterDensity, gravity, waterViscosity } from '../../fluid/water.ts'
import { bestReduction } from '../choose.ts'
import { cordierDiameter, fallbackAt, fallbackPump, stepUp } from '../fallback.ts'
import {
  affinity,
  bestVelocityRatio,
  bollardBound,
  flowFromPull,
  idealEfficiency,
  metricPerSpecificSpeed,
  specificSpeed,
  usPerSpecificSpeed,
} from '../ideal.ts'
import { ductLoss, grateBlockage, grateLoss } from '../intake.ts'
import { boundaryLayer, captureDepth, energyShare, momentumWake } from '../system.ts'
import { submergenceNeeded } from '../ventilation.ts'
import { annulusOf, area, port } from './ports.ts'

const momentum = 'Momentum of the jet, ITTC Recommended Procedures 7.5-02-05-03 (waterjet propulsion)'
const degree = Math.PI / 180

/** Reckoners about flow, thrust and the way the water comes. */
export const flowReckoners: readonly Reckoner[] = [
  defineReckoner({
    id: 'bollard-bound',
    title: 'Most pull a power can give through a nozzle',
    trade: 'jet',
    says: 'Upper bound of the pull tied up: all shaft power in the jet. Real jets reach 65 to 85 % of it (half to three quarters of the power).',
    inputs: [
      { name: 'power', says: 'at the impeller shaft', kind: 'power', unit: 'kW', min: 10, max: 1e6 },
      port.nozzle,
      port.water,
    ],
    outputs: [
      { name: 'pull', says: 'no jet can pull more', kind: 'force', unit: 'N' },
      { name: 'likelyLow', says: 'with half the power in the jet', kind: 'force', unit: 'N' },
      { name: 'likelyHigh', says: 'with three quarters of it', kind: 'force', unit: 'N' },
    ],
    reckon: ({ power, nozzle, water }) => {
      const pull = bollardBound(power!, area(nozzle!), freshWaterDensity(water!))
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
    says: 'Water through the jet, its speed and the power in it, from the pull and the nozzle. With way on, the boundary layer’s wake is left out.',
    inputs: [
      { name: 'pull', says: 'measured', kind: 'force', unit: 'kgf', min: 0.1, max: 2e4 },
      port.nozzle,
      port.speed,
      port.water,
    ],
    outputs: [
      { name: 'flow', says: 'through the nozzle', kind: 'volumeFlow', unit: 'L/s' },
      { name: 'jet', says: 'speed of the jet', kind: 'speed', unit: 'm/s' },
      { name: 'power', says: 'kinetic power of the jet', kind: 'power', unit: 'kW' },
    ],
    reckon: ({ pull, nozzle, speed, water }) => {
      const rho = freshWaterDensity(water!)
      const flow = flowFromPull(pull!, area(nozzle!), rho, speed!)
      const jet = flow / area(nozzle!)
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
      port.ratio('wake', 'share by which the boundary layer slows the water taken in', 0, 0.3, 0, '%'),
    ],
    outputs: [
      { name: 'thrust', says: 'net of the momentum taken in', kind: 'force', unit: 'N' },
      { name: 'jet', says: 'speed of the jet', kind: 'speed', unit: 'm/s' },
    ],
    reckon: ({ flow, nozzle, speed, water, wake }) => {
      const jet = flow! / area(nozzle!)
      return { thrust: freshWaterDensity(water!) * flow! * (jet - (1 - wake!) * speed!), jet }
    },
    sources: [momentum],
  }),
  defineReckoner({
    id: 'jet-velocity-ratio',
    title: 'Best jet speed for a boat speed',
    trade: 'jet',
    says: 'Jet speed over boat speed with the best efficiency, from the losses of intake and nozzle. Small craft run above it because they are short of nozzle and depth.',
    inputs: [
      { name: 'speed', says: 'speed of the craft', kind: 'speed', unit: 'km/h', min: 1, max: 40 },
      port.ratio('ramLoss', 'share of the incoming energy the intake wastes', 0.02, 0.6, 0.22, '%'),
      port.ratio('nozzleLoss', 'share of the jet’s energy the nozzle wastes', 0, 0.2, 0.03, '%'),
      port.mm('height', 'nozzle above still water', 0, 0.5, 0.04),
    ],
    outputs: [
      { name: 'ratio', says: 'best jet speed over boat speed', kind: 'ratio', unit: '1' },
      { name: 'jet', says: 'best jet speed', kind: 'speed', unit: 'm/s' },
      { name: 'efficiency', says: 'jet efficiency there, before the pump’s', kind: 'ratio', unit: '%' },
      { name: 'ideal', says: 'efficiency at that ratio without losses', kind: 'ratio', unit: '%' },
    ],
    reckon: ({ speed, ramLoss, nozzleLoss, height }) => {
      const best = bestVelocityRatio({
        ramLoss: ramLoss!,
        nozzleLoss: nozzleLoss!,
        nozzleHeight: height!,
        V: speed!,
      })
      return {
        ratio: best.k,
        jet: best.k * speed!,
        efficiency: best.efficiency,
        ideal: idealEfficiency(best.k),
      }
    },
    sources: [
      'k = 1 + √(1 - b/a), derived from momentum and energy; ideal efficiency 2/(1 + k), ITTC 7.5-02-05-03',
    ],
  }),
  defineReckoner({
    id: 'specific-speed',
    title: 'Specific speeds of a pump',
    trade: 'jet',
    says: 'Shape number of a pump at a duty, in three systems, and the diameter well-made pumps of that duty have. Axial pumps lie between 2 and 5.',
    inputs: [port.rotation, port.flow, port.head],
    outputs: [
      { name: 'specific', says: 'ω√Q/(gH)^¾, no unit', kind: 'ratio', unit: '1' },
      { name: 'us', says: 'rpm, US gal/min, ft', kind: 'ratio', unit: '1' },
      { name: 'metric', says: 'rpm, m³/s, m', kind: 'ratio', unit: '1' },
      { name: 'diameter', says: 'Cordier’s diameter', kind: 'length', unit: 'mm' },
    ],
    reckon: ({ rotation, flow, head }) => {
      const specific = specificSpeed(rotation!, flow!, head!)
      return {
        specific,
        us: specific * usPerSpecificSpeed,
        metric: specific * metricPerSpecificSpeed,
        diameter: (cordierDiameter(specific) * Math.sqrt(flow!)) / head! ** 0.25,
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
      { name: 'value', says: 'the number to convert', kind: 'ratio', unit: '1', min: 1e-3, max: 1e6 },
      { name: 'from', says: 'its system', kind: 'choice', unit: '', choices: ['no unit', 'US', 'metric'] },
    ],
    outputs: [
      { name: 'specific', says: 'no unit', kind: 'ratio', unit: '1' },
      { name: 'us', says: 'rpm, US gal/min, ft', kind: 'ratio', unit: '1' },
      { name: 'metric', says: 'rpm, m³/s, m', kind: 'ratio', unit: '1' },
    ],
    reckon: ({ value }, { from }) => {
      const per = from === 'US' ? usPerSpecificSpeed : from === 'metric' ? metricPerSpecificSpeed : 1
      const specific = value! / per
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
      port.ratio('rotation', 'new rotation over old', 0.1, 10, 1),
      port.ratio('size', 'new size over old', 0.2, 5, 1),
    ],
    outputs: [
      { name: 'flow', says: 'factor on flow', kind: 'ratio', unit: '1' },
      { name: 'head', says: 'factor on head', kind: 'ratio', unit: '1' },
      { name: 'torque', says: 'factor on torque', kind: 'ratio', unit: '1' },
      { name: 'power', says: 'factor on power', kind: 'ratio', unit: '1' },
    ],
    reckon: ({ rotation, size }) => ({ ...affinity(rotation!, size!) }),
    sources: ['Affinity laws: Q ~ nD³, gH ~ n²D², T ~ n²D⁵, P ~ n³D⁵'],
  }),
  defineReckoner({
    id: 'screw-slip',
    title: 'How far the water lags behind the screw',
    trade: 'jet',
    says: 'Flow over what the pitch would pass without load. Small jets run best at 60 to 75 %; near 100 % the pump gives no head, below 45 % its blades stall.',
    inputs: [port.flow, port.rotation, port.pitch, port.bore, port.hub],
    outputs: [
      { name: 'advance', says: 'flow per screw advance', kind: 'ratio', unit: '%' },
      { name: 'slip', says: 'what is missing', kind: 'ratio', unit: '%' },
      { name: 'axial', says: 'speed of the water into the rotor', kind: 'speed', unit: 'm/s' },
    ],
    reckon: ({ flow, rotation, pitch, bore, hub }) => {
      const axial = flow! / annulusOf(bore!, hub!)
      const advance = axial / (rotation! * pitch!)
      return { advance, slip: 1 - advance, axial }
    },
    sources: ['J = c/(nP), derived'],
  }),
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
  defineReckoner({
    id: 'jet-reduction',
    title: 'Reduction between engine and jet',
    trade: 'jet',
    says: 'Engine turns per impeller turn that let the engine reach its peak power on a jet whose torque is known at one rotation.',
    inputs: [
      { name: 'power', says: 'engine’s peak power', kind: 'power', unit: 'kW', min: 10, max: 1e6 },
      { name: 'peak', says: 'rotation of the peak', kind: 'rotation', unit: 'rpm', min: 5, max: 400 },
      port.torque,
      port.rotation,
      port.ratio('efficiency', 'of belt or gears', 0.7, 1, 0.96, '%'),
    ],
    outputs: [
      { name: 'ratio', says: 'engine turns per impeller turn', kind: 'ratio', unit: '1' },
      { name: 'impeller', says: 'impeller rotation at the peak', kind: 'rotation', unit: 'rpm' },
    ],
    reckon: ({ power, peak, torque, rotation, efficiency }) => {
      const ratio = bestReduction(peak!, power!, efficiency!, torque! / rotation! ** 2)
      return { ratio, impeller: peak! / ratio }
    },
    sources: ['T = k n², P = 2π k n³ for a wetted jet, derived'],
  }),
  defineReckoner({
    id: 'euler-head',
    title: 'Head from blade speed and swirl',
    trade: 'jet',
    says: 'Work of a blade row on water that comes without swirl and leaves along a direction at an angle to the plane of rotation.',
    inputs: [
      { name: 'bladeSpeed', says: 'at that radius', kind: 'speed', unit: 'm/s', min: 0.5, max: 150 },
      { name: 'axial', says: 'flow velocity', kind: 'speed', unit: 'm/s', min: 0.1, max: 60 },
      {
        name: 'outflow',
        says: 'relative flow to the plane of rotation',
        kind: 'angle',
        unit: 'deg',
        min: 5 * degree,
        max: 90 * degree,
      },
    ],
    outputs: [
      { name: 'swirl', says: 'given to the water', kind: 'speed', unit: 'm/s' },
      { name: 'work', says: 'on each kilogram', kind: 'specificEnergy', unit: 'J/kg' },
      { name: 'lift', says: 'as height of water', kind: 'length', unit: 'm' },
    ],
    reckon: ({ bladeSpeed, axial, outflow }) => {
      const swirl = bladeSpeed! - axial! / Math.tan(outflow!)
      const work = bladeSpeed! * swirl
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
      port.ratio('specific', 'specific speed, no unit; 3 is usual for small jets', 1, 10, 3, '1'),
      {
        name: 'finish',
        says: 'of the blades',
        kind: 'choice',
        unit: '',
        choices: ['tight metal', 'sanded print', 'raw print'],
      },
      port.water,
    ],
    outputs: [
      { name: 'flow', says: 'at best efficiency', kind: 'volumeFlow', unit: 'L/s' },
      { name: 'head', says: 'there', kind: 'specificEnergy', unit: 'm of water' },
      { name: 'torque', says: 'there', kind: 'torque', unit: 'N·m' },
      { name: 'power', says: 'there', kind: 'power', unit: 'kW' },
    ],
    reckon: ({ bore, rotation, specific, water }, { finish }) => {
      const pump = fallbackPump(specific!, finish as 'tight metal' | 'sanded print' | 'raw print')
      const at = fallbackAt(pump, pump.flow)
      const torque = freshWaterDensity(water!) * at.torque * rotation! ** 2 * bore! ** 5
      return {
        flow: pump.flow * rotation! * bore! ** 3,
        head: pump.head * (rotation! * bore!) ** 2,
        torque,
        power: 2 * Math.PI * rotation! * torque,
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
      port.ratio('efficiency', 'of the pump that is known', 0.2, 0.95, 0.75, '%'),
      port.mm('chord', 'blade length of the known pump', 0.01, 1),
      { name: 'speed', says: 'water over its blades', kind: 'speed', unit: 'm/s', min: 2, max: 80 },
      port.mm('roughness', 'Ra of its blades', 1e-7, 5e-4, 12e-6),
      port.ratio('size', 'new size over old', 0.2, 5, 1),
      port.mm('newRoughness', 'Ra of the new blades', 1e-7, 5e-4, 2e-6),
      port.water,
    ],
    outputs: [
      {
        name: 'efficiency',
        says: 'of the new pump at the same rotation over size',
        kind: 'ratio',
        unit: '%',
      },
    ],
    reckon: ({ efficiency, chord, speed, roughness, size, newRoughness, water }) => {
      const kinematic = waterViscosity(water!) / freshWaterDensity(water!)
      const now = { chord: chord!, speed: speed!, kinematic, roughness: roughness! }
      const next = { chord: chord! * size!, speed: speed!, kinematic, roughness: newRoughness! }
      return { efficiency: Math.max(0, stepUp(efficiency!, now, next)) }
    },
    sources: [
      '1 - η₂ = (1 - η₁)(0.3 + 0.7 C_f2/C_f1), form of Ackeret; friction of smooth and rough plates: Schlichting, Boundary-Layer Theory',
    ],
  }),
]
