/** Handbook questions of shafts, bearings and mounts. */
import {
  choice,
  count,
  gigapascals,
  hertz,
  kilograms,
  megapascals,
  metres,
  mm,
  newtonMetres,
  newtons,
  percent,
  plainRatio,
  revsPerMinute,
} from '../../base/answers/portMakers.ts'
import { defineReckoner, type Reckoner } from '../../base/answers/reckoner.ts'
import { src } from './driveSay.ts'
import { bearingLife, bearingNames, bearingOf, equivalentLoad, ratingFor } from './rollingBearings.ts'
import { frequencyOfSag, mountStiffness, ownFrequency, passes } from './rubberMounts.ts'
import {
  bendStress,
  type ShaftMetalName,
  sectionInertia,
  shaftAllows,
  shaftFor,
  shaftMetalNames,
  shaftMetalOf,
  shockStress,
  twistStiffness,
  twistStress,
} from './shaftStress.ts'
import { twoMass } from './torsionChain.ts'
import { plainWhirl, whirlByDunkerley, whirlByRayleigh, whirlSpeed } from './whirl.ts'

const metal = choice('metal', 'Of the shaft.', shaftMetalNames)
const metalOf = (name: string) => shaftMetalOf(name as ShaftMetalName)
const diameter = mm('diameter', 'Of the shaft.', 2e-3, 0.3)
const bore = mm('bore', 'Of a hollow shaft.', 0, 0.29, 0)

function solidOrHollow(g: { diameter: number; bore: number }): void {
  if (g.bore >= g.diameter) throw new RangeError('bore: must be smaller than diameter')
}

const stress = defineReckoner({
  id: 'shaft-stress',
  title: 'Shaft in twist and bending',
  trade: 'driveline',
  says: 'Stress and twist of a round shaft, both loads together by the code for shafting, and the diameter it asks for. Shock factors 1.5 for a single cylinder.',
  inputs: [
    metal,
    diameter,
    bore,
    mm('length', 'That twists.', 0.01, 10),
    newtonMetres('torque', 'Twisting it.', 0, 1e5),
    newtonMetres('moment', 'Bending it.', 0, 1e5, 0),
    plainRatio('torqueFactor', 'Shock on the torque.', 1, 3, 1.5),
    plainRatio('momentFactor', 'Shock on the bending.', 1, 3, 1.5),
    choice('keyway', 'A keyway in it.', ['yes', 'no']),
  ],
  outputs: [
    megapascals('twist', 'Shear stress of the torque alone.'),
    megapascals('bend', 'Bending stress alone.'),
    megapascals('both', 'Greatest shear stress of both with shock.'),
    megapascals('allowed', 'By the code.'),
    { name: 'angle', says: 'It twists by.', kind: 'angle', unit: 'deg' },
    mm('wanted', 'Diameter, solid, that the code asks for.'),
  ],
  reckon: (g, w) => {
    solidOrHollow(g)
    const m = metalOf(w.metal)
    const allowed = shaftAllows(m, w.keyway === 'yes')
    return {
      twist: twistStress(g.torque, g.diameter, g.bore),
      bend: bendStress(g.moment, g.diameter, g.bore),
      both: shockStress(g, g.diameter, g.bore),
      allowed,
      angle: g.torque / twistStiffness(m.shear, g.length, g.diameter, g.bore),
      wanted: shaftFor(g, allowed),
    }
  },
  sources: [src.shafts],
})

const whirling = defineReckoner({
  id: 'shaft-whirl',
  title: 'Whirling shaft with an overhung impeller',
  trade: 'driveline',
  says: 'Speed at which a shaft on two bearings with a mass behind the last one whirls; stay under three quarters of it. Wet impellers count 1.2 to 1.7 times their mass. Gyroscopic stiffening left out.',
  inputs: [
    metal,
    diameter,
    bore,
    mm('span', 'Between the bearings.', 0.02, 5),
    mm('overhang', 'From the last bearing to the middle of the mass.', 0, 1, 0),
    kilograms('mass', 'That hangs there.', 0, 50, 0),
    {
      name: 'seat',
      says: 'Stiffness of each bearing in its housing.',
      kind: 'stiffness',
      unit: 'N/mm',
      min: 1e4,
      max: 1e12,
      assumed: 1e10,
    },
  ],
  outputs: [
    revsPerMinute('whirls', 'It whirls at.'),
    revsPerMinute('stay', 'Stay under.'),
    revsPerMinute('alone', 'The span alone.'),
    revsPerMinute('least', 'A bound from below, each mass by itself.'),
    revsPerMinute('most', 'A bound from above, by the shape its weight bends it to.'),
  ],
  reckon: (g, w) => {
    solidOrHollow(g)
    const m = metalOf(w.metal)
    const shaft = { metal: m, ...g }
    const found = whirlSpeed(shaft)
    if (!found.converged) throw new RangeError('span: no whirling speed is found for these sizes')
    return {
      whirls: found.value,
      stay: 0.75 * found.value,
      alone: plainWhirl(shaft),
      least: whirlByDunkerley(shaft),
      most: whirlByRayleigh(shaft),
    }
  },
  sources: [src.whirl],
})

const torsion = defineReckoner({
  id: 'torsion-frequency',
  title: 'Two turning masses on a shaft',
  trade: 'driveline',
  says: 'Frequency at which engine and impeller swing against each other through the shaft between them, and the speeds at which one and two pulses a turn meet it; run a fifth or more away from both.',
  inputs: [
    {
      name: 'front',
      says: 'Inertia of engine and flywheel.',
      kind: 'inertia',
      unit: 'kg·m²',
      min: 1e-7,
      max: 10,
    },
    {
      name: 'rear',
      says: 'Inertia of the impeller with its water.',
      kind: 'inertia',
      unit: 'kg·m²',
      min: 1e-7,
      max: 10,
    },
    diameter,
    bore,
    mm('length', 'That twists.', 0.01, 10),
    metal,
    {
      name: 'coupling',
      says: 'Stiffness of a rubber coupling in the line; very large for none.',
      kind: 'rotationalStiffness',
      unit: 'N·m/rad',
      min: 1,
      max: 1e12,
      assumed: 1e9,
    },
  ],
  outputs: [
    hertz('frequency', 'Against each other.'),
    { name: 'stiffness', says: 'Of shaft and coupling.', kind: 'rotationalStiffness', unit: 'N·m/rad' },
    revsPerMinute('one', 'Where one pulse a turn meets it.'),
    revsPerMinute('two', 'Where two pulses a turn meet it.'),
  ],
  reckon: (g, w) => {
    solidOrHollow(g)
    const shaft = twistStiffness(metalOf(w.metal).shear, g.length, g.diameter, g.bore)
    const stiffness = 1 / (1 / shaft + 1 / g.coupling)
    const frequency = twoMass(g.front, g.rear, stiffness)
    return { frequency, stiffness, one: frequency, two: frequency / 2 }
  },
  sources: [src.chain],
})

const bearing = defineReckoner({
  id: 'bearing-life',
  title: 'Life of a ball bearing under thrust',
  trade: 'driveline',
  says: 'Hours that nine in ten deep-groove bearings reach under a side load and a thrust. Water that gets in ends them long before.',
  inputs: [
    choice('bearing', 'Number on it.', bearingNames),
    newtons('radial', 'Side load.', 0, 1e5),
    newtons('axial', 'Thrust.', 0, 1e5),
    revsPerMinute('rotation', 'It turns at.', 1, 600),
  ],
  outputs: [
    { name: 'life', says: 'Nine in ten.', kind: 'time', unit: 'h' },
    newtons('load', 'That counts.'),
    percent('ofStatic', 'Thrust of the static rating; keep under a quarter.'),
    newtons('wanted', 'Dynamic rating that lasts 300 hours under it.'),
  ],
  reckon: (g, w) => {
    const b = bearingOf(w.bearing)
    const load = equivalentLoad(g.radial, g.axial, b.static)
    if (!(load > 0)) throw new RangeError('radial: a bearing without any load has no life to reckon')
    return {
      life: bearingLife(b.dynamic, load, g.rotation),
      load,
      ofStatic: g.axial / b.static,
      wanted: ratingFor(load, 300 * 3600, g.rotation),
    }
  },
  sources: [src.iso281],
})

const mounts = defineReckoner({
  id: 'mount-isolation',
  title: 'Engine on rubber mounts',
  trade: 'driveline',
  says: 'Stiffness of round rubber mounts, where the engine bounces on them, and what part of the shaking at a firing frequency passes. Rubber shaken is taken 1.35 times as stiff as pressed slowly.',
  inputs: [
    kilograms('mass', 'Of what stands on them.', 0.1, 1000),
    count('number', 'Of mounts.', 1, 24, 4),
    mm('across', 'Of one mount.', 5e-3, 0.3),
    mm('height', 'Of its rubber.', 3e-3, 0.3),
    plainRatio('hardness', 'Degrees Shore A.', 20, 80, 55),
    choice('loaded', 'How the weight works.', ['pressed', 'sheared']),
    hertz('shakes', 'Firing frequency.', 1, 1000),
    plainRatio('damping', 'Part of critical.', 0, 0.5, 0.08),
  ],
  outputs: [
    { name: 'stiffness', says: 'Of all mounts, pressed slowly.', kind: 'stiffness', unit: 'N/mm' },
    hertz('bounces', 'It bounces at.'),
    percent('passes', 'Part of the shaking that passes.'),
    mm('sags', 'Under the weight.'),
  ],
  reckon: (g, w) => {
    const one = mountStiffness({ across: g.across, height: g.height, shore: g.hardness })
    const stiffness = g.number * one[w.loaded as 'pressed' | 'sheared']
    const bounces = ownFrequency(1.35 * stiffness, g.mass)
    return {
      stiffness,
      bounces,
      passes: passes(g.shakes / bounces, g.damping),
      sags: (9.80665 * g.mass) / stiffness,
    }
  },
  sources: [src.rubber],
})

const sag = defineReckoner({
  id: 'mount-sag',
  title: 'Mounts by how far they sag',
  trade: 'driveline',
  says: 'Where an engine bounces on its mounts, from how far they settle when it is set down; nothing else need be known.',
  inputs: [
    mm('sag', 'They settle by.', 1e-5, 0.1),
    hertz('shakes', 'Firing frequency.', 1, 1000),
    plainRatio('damping', 'Part of critical.', 0, 0.5, 0),
  ],
  outputs: [hertz('bounces', 'It bounces at.'), percent('passes', 'Part of the shaking that passes.')],
  reckon: (g) => {
    const bounces = frequencyOfSag(g.sag)
    return { bounces, passes: passes(g.shakes / bounces, g.damping) }
  },
  sources: [src.rubber],
})

const stub = defineReckoner({
  id: 'misaligned-shaft',
  title: 'Shaft bolted up out of line',
  trade: 'driveline',
  says: 'What two halves bolted face to face, out of line by a little, bend into a shaft and push on its nearest bearing at every turn.',
  inputs: [
    metal,
    diameter,
    bore,
    metres('length', 'From the coupling to the next bearing.', 0.02, 5),
    mm('off', 'Out of line.', 1e-6, 0.05),
  ],
  outputs: [
    newtons('force', 'On the bearing.'),
    newtonMetres('moment', 'At the coupling.'),
    megapascals('stress', 'Bending stress there, once a turn each way.'),
    gigapascals('modulus', 'Of the metal.'),
  ],
  reckon: (g, w) => {
    solidOrHollow(g)
    const { modulus } = metalOf(w.metal)
    const force = (3 * modulus * sectionInertia(g.diameter, g.bore) * g.off) / g.length ** 3
    const moment = force * g.length
    return { force, moment, stress: bendStress(moment, g.diameter, g.bore), modulus }
  },
  sources: ['Cantilever: elementary mechanics'],
})

export const lineReckoners: readonly Reckoner[] = [stress, whirling, torsion, bearing, mounts, sag, stub]
