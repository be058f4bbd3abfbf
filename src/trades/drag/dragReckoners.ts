/** Handbook questions of water, drag and running up to speed. */
import {
  celsius,
  count,
  kgPerCubicMetre,
  kilograms,
  metres,
  metresPerSecond,
  millipascalSeconds,
  newtons,
  percent,
  ratio,
  seconds,
  squareMetres,
  squareMillimetresPerSecond,
} from '../../base/answers/portMakers.ts'
import { defineReckoner, type Reckoner } from '../../base/answers/reckoner.ts'
import type { Stance } from '../../hull/aboard/riderBody.ts'
import { ittc57 } from '../../physics/fluid/friction.ts'
import {
  gravity,
  kinematicViscosity,
  seaWaterDensity,
  seaWaterViscosity,
  waterAt,
} from '../../physics/fluid/water.ts'
import { airDrag, riderDragArea, stances } from './air.ts'
import { criticalSpeed, froude, volumetricFroude } from './hullSpec.ts'
import { dragReckoners } from './resistanceReckoners.ts'

const temperaturePort = celsius('temperature', 'Temperature of the water.', 273.15, 313.15, 288.15)
const salinityPort = percent(
  'salinity',
  'Salt in the water, by mass: 0 for a lake, 3.5 % for the ocean.',
  0,
  0.042,
  0,
)
const speed = metresPerSecond('speed', 'Speed through the water.', 0.05, 40)

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
    kgPerCubicMetre('density', 'Mass of a cubic metre.'),
    millipascalSeconds('viscosity', 'Dynamic viscosity.'),
    squareMillimetresPerSecond('kinematicViscosity', 'Viscosity over density.'),
  ],
  reckon: ({ temperature, salinity }) => ({
    density: seaWaterDensity(temperature, salinity),
    viscosity: seaWaterViscosity(temperature, salinity),
    kinematicViscosity: kinematicViscosity(temperature, salinity),
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
    metres('length', 'Wetted length in the direction of motion.', 0.02, 30),
    squareMetres('area', 'Wetted area.', 1e-4, 100, 1),
    ratio(
      'roughness',
      'Allowance added to the coefficient: 0 polished, 0.0004 painted, 0.001 riveted or bare foam.',
      0,
      0.005,
      0,
    ),
    temperaturePort,
    salinityPort,
  ],
  outputs: [
    count('reynolds', 'Reynolds number on the length.'),
    ratio('coefficient', 'Friction coefficient, allowance included.'),
    newtons('drag', 'Frictional drag.'),
  ],
  reckon: (g) => {
    const w = waterAt(g.temperature, g.salinity)
    const reynolds = (g.speed * g.length) / w.kinematicViscosity
    const coefficient = ittc57(reynolds) + g.roughness
    return { reynolds, coefficient, drag: 0.5 * w.density * g.speed ** 2 * g.area * coefficient }
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
    metres('length', 'Waterline length.', 0.3, 30),
    kilograms('mass', 'All aboard.', 10, 1e5),
    metres('beam', 'Chine beam.', 0.1, 10, 0.7),
    temperaturePort,
  ],
  outputs: [
    ratio('byLength', 'Froude number on the length; the first hump of drag is near 0.5.'),
    ratio('byVolume', 'Froude number on the cube root of the displaced volume.'),
    ratio('byBeam', 'Froude number on the beam, used in planing.'),
    metresPerSecond(
      'waveSpeed',
      'Speed of a wave as long as the hull: beyond it a displacement hull must climb.',
    ),
    metresPerSecond('planingSpeed', 'Speed at a volumetric Froude number of 2.4.'),
    metres('waveLength', 'Length of the wave the craft makes at its speed.'),
  ],
  reckon: (g) => {
    const volume = g.mass / seaWaterDensity(g.temperature, 0)
    return {
      byLength: froude(g.speed, g.length),
      byVolume: volumetricFroude(g.speed, volume),
      byBeam: froude(g.speed, g.beam),
      waveSpeed: Math.sqrt((gravity * g.length) / (2 * Math.PI)),
      planingSpeed: 2.4 * Math.sqrt(gravity * Math.cbrt(volume)),
      waveLength: (2 * Math.PI * g.speed ** 2) / gravity,
    }
  },
  sources: ['Froude similarity; deep-water wave speed √(gλ/2π), linear theory (Airy 1845)'],
})

const shallow = defineReckoner({
  id: 'shallow-water',
  title: 'Wave speed of shallow water',
  trade: 'hull',
  says: 'The speed of long waves over the bottom. Within 30 % of it, in water shallower than half the hull, drag can be tens of per cent above the deep-water value.',
  inputs: [metres('depth', 'Depth of the water.', 0.05, 100), { ...speed, assumed: 2 }],
  outputs: [
    metresPerSecond('critical', 'Wave speed at this depth.'),
    ratio('ratio', 'Speed over wave speed; 0.7 to 1.3 is the band to stay out of.'),
  ],
  reckon: (g) => ({ critical: criticalSpeed(g.depth), ratio: g.speed / criticalSpeed(g.depth) }),
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
    metresPerSecond('wind', 'Head wind; a following wind is negative.', -20, 30, 0),
    metres('stature', 'Height of the rider.', 1, 2.3, 1.75),
    kilograms('mass', 'Mass of the rider.', 20, 200, 80),
    kgPerCubicMetre('airDensity', 'Density of the air.', 0.5, 1.6, 1.225),
  ],
  outputs: [
    squareMetres('dragArea', 'Drag coefficient times frontal area.'),
    newtons('drag', 'Air drag.'),
    { name: 'power', says: 'Power it takes at this speed.', kind: 'power', unit: 'W' },
  ],
  reckon: (g, w) => {
    const dragArea = riderDragArea(w.stance as Stance, g.stature, g.mass)
    const drag = airDrag(dragArea, g.speed, g.airDensity, g.wind)
    return { dragArea, drag, power: drag * g.speed }
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
    kilograms('mass', 'All aboard.', 10, 1e5),
    newtons('thrust', 'Thrust, held constant.', 1, 1e5),
    metresPerSecond('topSpeed', 'Steady speed it reaches.', 0.5, 40),
    percent('part', 'How much of the top speed to reach.', 0.05, 0.999, 0.9),
    percent('addedMass', 'Water that has to be moved along, of the mass.', 0, 0.3, 0.05),
  ],
  outputs: [seconds('time', 'Time taken.'), metres('distance', 'Distance covered.')],
  reckon: (g) => {
    const m = g.mass * (1 + g.addedMass)
    const scale = (m * g.topSpeed) / g.thrust
    return {
      time: scale * Math.atanh(g.part),
      distance: -0.5 * scale * g.topSpeed * Math.log(1 - g.part ** 2),
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
    kilograms('mass', 'All aboard.', 10, 1e5),
    metresPerSecond('from', 'Speed at the start.', 0.2, 40),
    metresPerSecond('to', 'Speed at the end.', 0.1, 39),
    seconds('time', 'Time between them.', 0.05, 600),
    percent('addedMass', 'Water that moves along, of the mass: 8 % slow, 2 % planing.', 0, 0.3, 0.05),
  ],
  outputs: [
    newtons('dragFrom', 'Drag at the higher speed.'),
    newtons('dragTo', 'Drag at the lower speed.'),
    metres('distance', 'Distance covered meanwhile: a check against the tape.'),
  ],
  reckon: (g) => {
    if (!(g.to < g.from)) throw new RangeError(`to: ${g.to} m/s must be below from, ${g.from} m/s`)
    const m = g.mass * (1 + g.addedMass)
    const k = (m * (1 / g.to - 1 / g.from)) / g.time
    return {
      dragFrom: k * g.from ** 2,
      dragTo: k * g.to ** 2,
      distance: (m / k) * Math.log(g.from / g.to),
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
