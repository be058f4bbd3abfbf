/** Handbook questions of water, drag and running up to speed. */
import { defineReckoner, type Port, type Reckoner } from '../answers/reckoner.ts'
import { ittc57 } from '../fluid/friction.ts'
import { gravity, kinematicViscosity, seaWaterDensity, seaWaterViscosity, waterAt } from '../fluid/water.ts'
import type { Stance } from './float/rider.ts'
import { airDrag, riderDragArea, stances } from './resistance/air.ts'
import { dragReckoners } from './resistance/reckoners.ts'
import { criticalSpeed, froude, volumetricFroude } from './resistance/spec.ts'

const temperaturePort: Port = {
  name: 'temperature',
  says: 'Temperature of the water.',
  kind: 'temperature',
  unit: '°C',
  min: 273.15,
  max: 313.15,
  assumed: 288.15,
}
const salinityPort: Port = {
  name: 'salinity',
  says: 'Salt in the water, by mass: 0 for a lake, 3.5 % for the ocean.',
  kind: 'ratio',
  unit: '%',
  min: 0,
  max: 0.042,
  assumed: 0,
}
const speed: Port = {
  name: 'speed',
  says: 'Speed through the water.',
  kind: 'speed',
  unit: 'm/s',
  min: 0.05,
  max: 40,
}

const waterSources = [
  'UNESCO 1981, International Equation of State of Seawater 1980',
  'Korson, Drost-Hansen and Millero 1969, Viscosity of water at various temperatures',
  'Millero 1974, Seawater as a multicomponent electrolyte solution',
]

const water = defineReckoner({
  id: 'water',
  title: 'Density and viscosity of water',
  trade: 'hull',
  says: 'Fresh or sea water at atmospheric pressure, 0 to 40 °C.',
  inputs: [temperaturePort, salinityPort],
  outputs: [
    { name: 'density', says: 'Mass of a cubic metre.', kind: 'density', unit: 'kg/m³' },
    { name: 'viscosity', says: 'Dynamic viscosity.', kind: 'viscosity', unit: 'mPa·s' },
    {
      name: 'kinematicViscosity',
      says: 'Viscosity over density.',
      kind: 'kinematicViscosity',
      unit: 'mm²/s',
    },
  ],
  reckon: ({ temperature, salinity }) => ({
    density: seaWaterDensity(temperature!, salinity!),
    viscosity: seaWaterViscosity(temperature!, salinity!),
    kinematicViscosity: kinematicViscosity(temperature!, salinity!),
  }),
  sources: waterSources,
})

const friction = defineReckoner({
  id: 'ittc57',
  title: 'Friction of a wetted bottom (ITTC 1957 line)',
  trade: 'hull',
  says: 'Friction coefficient and drag of a smooth wetted surface. Below a Reynolds number of about a million part of the flow is laminar and the true drag is less.',
  inputs: [
    speed,
    {
      name: 'length',
      says: 'Wetted length in the direction of motion.',
      kind: 'length',
      unit: 'm',
      min: 0.02,
      max: 30,
    },
    { name: 'area', says: 'Wetted area.', kind: 'area', unit: 'm²', min: 1e-4, max: 100, assumed: 1 },
    {
      name: 'roughness',
      says: 'Allowance added to the coefficient: 0 polished, 0.0004 painted, 0.001 riveted or bare foam.',
      kind: 'ratio',
      unit: '1',
      min: 0,
      max: 0.005,
      assumed: 0,
    },
    temperaturePort,
    salinityPort,
  ],
  outputs: [
    { name: 'reynolds', says: 'Reynolds number on the length.', kind: 'count', unit: '1' },
    { name: 'coefficient', says: 'Friction coefficient, allowance included.', kind: 'ratio', unit: '1' },
    { name: 'drag', says: 'Frictional drag.', kind: 'force', unit: 'N' },
  ],
  reckon: (g) => {
    const w = waterAt(g.temperature!, g.salinity!)
    const reynolds = (g.speed! * g.length!) / w.kinematicViscosity
    const coefficient = ittc57(reynolds) + g.roughness!
    return { reynolds, coefficient, drag: 0.5 * w.density * g.speed! ** 2 * g.area! * coefficient }
  },
  sources: ['ITTC 1957, 8th International Towing Tank Conference, correlation line', ...waterSources],
})

const regime = defineReckoner({
  id: 'froude',
  title: 'Froude numbers and the speed of the hull’s own wave',
  trade: 'hull',
  says: 'Which regime a craft is in: below a volumetric Froude number of 1 it displaces, to about 2.4 it climbs its own wave, above that it planes.',
  inputs: [
    speed,
    { name: 'length', says: 'Waterline length.', kind: 'length', unit: 'm', min: 0.3, max: 30 },
    { name: 'mass', says: 'All aboard.', kind: 'mass', unit: 'kg', min: 10, max: 1e5 },
    { name: 'beam', says: 'Chine beam.', kind: 'length', unit: 'm', min: 0.1, max: 10, assumed: 0.7 },
    temperaturePort,
  ],
  outputs: [
    {
      name: 'byLength',
      says: 'Froude number on the length; the first hump of drag is near 0.5.',
      kind: 'ratio',
      unit: '1',
    },
    {
      name: 'byVolume',
      says: 'Froude number on the cube root of the displaced volume.',
      kind: 'ratio',
      unit: '1',
    },
    { name: 'byBeam', says: 'Froude number on the beam, used in planing.', kind: 'ratio', unit: '1' },
    {
      name: 'waveSpeed',
      says: 'Speed of a wave as long as the hull: beyond it a displacement hull must climb.',
      kind: 'speed',
      unit: 'm/s',
    },
    { name: 'planingSpeed', says: 'Speed at a volumetric Froude number of 2.4.', kind: 'speed', unit: 'm/s' },
    {
      name: 'waveLength',
      says: 'Length of the wave the craft makes at its speed.',
      kind: 'length',
      unit: 'm',
    },
  ],
  reckon: (g) => {
    const volume = g.mass! / seaWaterDensity(g.temperature!, 0)
    return {
      byLength: froude(g.speed!, g.length!),
      byVolume: volumetricFroude(g.speed!, volume),
      byBeam: froude(g.speed!, g.beam!),
      waveSpeed: Math.sqrt((gravity * g.length!) / (2 * Math.PI)),
      planingSpeed: 2.4 * Math.sqrt(gravity * Math.cbrt(volume)),
      waveLength: (2 * Math.PI * g.speed! ** 2) / gravity,
    }
  },
  sources: ['Froude similarity; deep-water wave speed √(gλ/2π), linear theory (Airy 1845)'],
})

const shallow = defineReckoner({
  id: 'shallow-water',
  title: 'Wave speed of shallow water',
  trade: 'hull',
  says: 'The speed of long waves over the bottom. Within 30 % of it, in water shallower than half the hull, drag can be tens of per cent above the deep-water value.',
  inputs: [
    { name: 'depth', says: 'Depth of the water.', kind: 'length', unit: 'm', min: 0.05, max: 100 },
    { ...speed, assumed: 2 },
  ],
  outputs: [
    { name: 'critical', says: 'Wave speed at this depth.', kind: 'speed', unit: 'm/s' },
    {
      name: 'ratio',
      says: 'Speed over wave speed; 0.7 to 1.3 is the band to stay out of.',
      kind: 'ratio',
      unit: '1',
    },
  ],
  reckon: (g) => ({ critical: criticalSpeed(g.depth!), ratio: g.speed! / criticalSpeed(g.depth!) }),
  sources: ['√(g h), linear long-wave theory (Airy 1845)'],
})

const air = defineReckoner({
  id: 'air-drag',
  title: 'Air drag of a rider',
  trade: 'hull',
  says: 'Drag of a person on a low craft from stance, size, speed and head wind.',
  inputs: [
    { name: 'stance', says: 'How the rider is.', kind: 'choice', unit: '', choices: Object.keys(stances) },
    speed,
    {
      name: 'wind',
      says: 'Head wind; a following wind is negative.',
      kind: 'speed',
      unit: 'm/s',
      min: -20,
      max: 30,
      assumed: 0,
    },
    {
      name: 'stature',
      says: 'Height of the rider.',
      kind: 'length',
      unit: 'm',
      min: 1,
      max: 2.3,
      assumed: 1.75,
    },
    { name: 'mass', says: 'Mass of the rider.', kind: 'mass', unit: 'kg', min: 20, max: 200, assumed: 80 },
    {
      name: 'airDensity',
      says: 'Density of the air.',
      kind: 'density',
      unit: 'kg/m³',
      min: 0.5,
      max: 1.6,
      assumed: 1.225,
    },
  ],
  outputs: [
    { name: 'dragArea', says: 'Drag coefficient times frontal area.', kind: 'area', unit: 'm²' },
    { name: 'drag', says: 'Air drag.', kind: 'force', unit: 'N' },
    { name: 'power', says: 'Power it takes at this speed.', kind: 'power', unit: 'W' },
  ],
  reckon: (g, w) => {
    const dragArea = riderDragArea(w.stance as Stance, g.stature!, g.mass!)
    const drag = airDrag(dragArea, g.speed!, g.airDensity!, g.wind!)
    return { dragArea, drag, power: drag * g.speed! }
  },
  sources: [
    'Drag area of a cross-country skier, 1988: 0.65 ± 0.05 m² upright, 0.27 ± 0.03 m² half squat',
    'Kneeling, sitting and prone: judged between those, no source',
    'Du Bois and Du Bois 1916, body surface for the scale with size',
  ],
})

const runUp = defineReckoner({
  id: 'run-up',
  title: 'Time and distance to speed under constant thrust',
  trade: 'hull',
  says: 'A craft whose drag grows with the square of speed, from rest. Good for a first look; a hump makes it slower.',
  inputs: [
    { name: 'mass', says: 'All aboard.', kind: 'mass', unit: 'kg', min: 10, max: 1e5 },
    { name: 'thrust', says: 'Thrust, held constant.', kind: 'force', unit: 'N', min: 1, max: 1e5 },
    { name: 'topSpeed', says: 'Steady speed it reaches.', kind: 'speed', unit: 'm/s', min: 0.5, max: 40 },
    {
      name: 'part',
      says: 'How much of the top speed to reach.',
      kind: 'ratio',
      unit: '%',
      min: 0.05,
      max: 0.999,
      assumed: 0.9,
    },
    {
      name: 'addedMass',
      says: 'Water that has to be moved along, of the mass.',
      kind: 'ratio',
      unit: '%',
      min: 0,
      max: 0.3,
      assumed: 0.05,
    },
  ],
  outputs: [
    { name: 'time', says: 'Time taken.', kind: 'time', unit: 's' },
    { name: 'distance', says: 'Distance covered.', kind: 'length', unit: 'm' },
  ],
  reckon: (g) => {
    const m = g.mass! * (1 + g.addedMass!)
    const scale = (m * g.topSpeed!) / g.thrust!
    return {
      time: scale * Math.atanh(g.part!),
      distance: -0.5 * scale * g.topSpeed! * Math.log(1 - g.part! ** 2),
    }
  },
  sources: ['Exact: V = Vm tanh(T t / m Vm), s = (m/2k) ln[1/(1 − (V/Vm)²)]'],
})

const coast = defineReckoner({
  id: 'coast-down',
  title: 'Drag from a coast-down',
  trade: 'hull',
  says: 'Shut the engine, time how long the craft takes from one speed to a lower one on a phone video. Drag is taken as growing with the square of speed between them; water dragged through the jet is included.',
  inputs: [
    { name: 'mass', says: 'All aboard.', kind: 'mass', unit: 'kg', min: 10, max: 1e5 },
    { name: 'from', says: 'Speed at the start.', kind: 'speed', unit: 'm/s', min: 0.2, max: 40 },
    { name: 'to', says: 'Speed at the end.', kind: 'speed', unit: 'm/s', min: 0.1, max: 39 },
    { name: 'time', says: 'Time between them.', kind: 'time', unit: 's', min: 0.05, max: 600 },
    {
      name: 'addedMass',
      says: 'Water that moves along, of the mass: 8 % slow, 2 % planing.',
      kind: 'ratio',
      unit: '%',
      min: 0,
      max: 0.3,
      assumed: 0.05,
    },
  ],
  outputs: [
    { name: 'dragFrom', says: 'Drag at the higher speed.', kind: 'force', unit: 'N' },
    { name: 'dragTo', says: 'Drag at the lower speed.', kind: 'force', unit: 'N' },
    {
      name: 'distance',
      says: 'Distance covered meanwhile: a check against the tape.',
      kind: 'length',
      unit: 'm',
    },
  ],
  reckon: (g) => {
    if (!(g.to! < g.from!)) throw new RangeError(`to: ${g.to} m/s must be below from, ${g.from} m/s`)
    const m = g.mass! * (1 + g.addedMass!)
    const k = (m * (1 / g.to! - 1 / g.from!)) / g.time!
    return {
      dragFrom: k * g.from! ** 2,
      dragTo: k * g.to! ** 2,
      distance: (m / k) * Math.log(g.from! / g.to!),
    }
  },
  sources: ['Exact for R = kV²: k = m (1/V₂ − 1/V₁)/t, s = (m/k) ln(V₁/V₂)'],
  cautions: ['Keep a look-out and a clear run: a craft without thrust does not steer with a jet.'],
})

export const hullReckoners: readonly Reckoner[] = [
  water,
  friction,
  regime,
  shallow,
  air,
  runUp,
  coast,
  ...dragReckoners,
]
