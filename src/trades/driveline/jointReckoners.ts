/** Handbook questions of bolted joints: preload, plastic under a head, threads that strip, flanges, clamped hubs, keys. */
import {
  celsius,
  choice,
  count,
  gigapascals,
  megapascals,
  mm,
  newtonMetres,
  newtons,
  percent,
  plainRatio,
} from '../../base/answers/portMakers.ts'
import { defineReckoner, type Reckoner } from '../../base/answers/reckoner.ts'
import { boltSizes } from '../../craft/schema/boltSizes.ts'
import { boltFriction, mostPreload, nutFactor, preloadOf, usualTorque } from './boltTorque.ts'
import { src } from './driveSay.ts'
import { clampTorque, flangeTorque, keyFor, keyStress, rubRadius, setScrewTorque } from './frictionGrip.ts'
import { creepRatio, pressureStood, relaxed } from './jointRelax.ts'
import { bearingArea, boltOf, classNames, classOf, stressArea } from './metricBolts.ts'
import { partDataOf, partNames } from './partMaterials.ts'
import { boltThreadArea, insertHolds, lengthThatHolds, nutThreadArea } from './threadStrip.ts'

const size = choice('size', 'Metric coarse bolt.', boltSizes)
const strength = choice('class', 'Strength on its head.', classNames)

const preload = defineReckoner({
  id: 'bolt-preload',
  title: 'Pull of a tightened bolt',
  trade: 'driveline',
  says: 'What a torque leaves in a bolt, with the scatter of friction from slippery to dry, and what its threads and class bear. On plastic the plastic decides, not this.',
  inputs: [
    size,
    strength,
    newtonMetres('torque', 'On the wrench.', 0.05, 400),
    plainRatio('friction', 'Of thread and head, oiled 0.1 to dry 0.22.', 0.05, 0.5, 0.16),
  ],
  outputs: [
    newtons('pull', 'In the bolt.'),
    newtons('least', 'Where friction is high.'),
    newtons('most', 'Where it is low.'),
    plainRatio('nutFactor', 'K of T = K F d.'),
    newtons('bears', 'Pull at nine tenths of its yield stress with the twist of tightening.'),
    newtonMetres('usual', 'Torque to three quarters of the proof load.'),
  ],
  reckon: (g, w) => {
    const b = boltOf(w.size)
    const c = classOf(w.class)
    return {
      pull: preloadOf(b, g.torque, g.friction),
      least: preloadOf(b, g.torque, (g.friction * boltFriction.high) / boltFriction.value),
      most: preloadOf(b, g.torque, (g.friction * boltFriction.low) / boltFriction.value),
      nutFactor: nutFactor(b, g.friction),
      bears: mostPreload(b, c, g.friction),
      usual: usualTorque(b, c),
    }
  },
  sources: [src.vdi, src.iso898],
  cautions: ['No torque for steel joints on plastic without metal sleeves.'],
})

const onPlastic = defineReckoner({
  id: 'joint-in-plastic',
  title: 'Bolt head on plastic',
  trade: 'driveline',
  says: 'The most a bolt can go on pulling through a plastic part, whatever its torque: what the plastic under head or washer stands for a time at a temperature.',
  inputs: [
    size,
    choice('washer', 'Under the head.', ['none', 'plain', 'wide']),
    choice('made', 'What the head sits on.', partNames),
    celsius('temperature', 'Of the part.', 253, 400, 296.15),
    {
      name: 'time',
      says: 'How long it must last.',
      kind: 'time',
      unit: 'h',
      min: 60,
      max: 1e8,
      assumed: 3.6e6,
    },
  ],
  outputs: [
    megapascals('stands', 'Pressure it stands that long.'),
    newtons('pull', 'Of one bolt, at most.'),
    percent('ofUsual', 'Of what the bolt is tightened to between metals, steel 8.8.'),
  ],
  reckon: (g, w) => {
    const b = boltOf(w.size)
    const stands = pressureStood(partDataOf(w.made), g.time / 3600, g.temperature)
    const pull = stands * bearingArea(b, w.washer as 'none' | 'plain' | 'wide')
    return { stands, pull, ofUsual: pull / (0.75 * classOf('steel 8.8').proof * stressArea(b)) }
  },
  sources: [src.creep],
})

const relaxation = defineReckoner({
  id: 'joint-relaxation',
  title: 'Pull left after creep',
  trade: 'driveline',
  says: 'Part of a bolt’s pull that is left when a soft layer under it has crept; a long bolt or a disc spring gives more and so keeps more.',
  inputs: [
    size,
    mm('length', 'Of bolt between head and nut.', 1e-3, 0.3),
    mm('soft', 'Thickness of the soft layer.', 5e-4, 0.2),
    { name: 'area', says: 'Of it under pressure.', kind: 'area', unit: 'mm²', min: 1e-6, max: 0.01 },
    gigapascals('modulus', 'Of the soft layer.', 1e7, 1e11),
    plainRatio('creep', 'Creep strain of a thousand hours over the elastic one.', 0, 5, 0.75),
    {
      name: 'time',
      says: 'Since it was tightened.',
      kind: 'time',
      unit: 'h',
      min: 60,
      max: 1e8,
      assumed: 3.6e6,
    },
    celsius('temperature', 'Of the layer.', 253, 400, 296.15),
    {
      name: 'spring',
      says: 'Give of a disc spring under the head.',
      kind: 'length',
      unit: 'mm',
      min: 0,
      max: 0.01,
      assumed: 0,
    },
  ],
  outputs: [percent('left', 'Of the pull.'), plainRatio('crept', 'Creep by then over the elastic strain.')],
  reckon: (g, w) => {
    const b = boltOf(w.size)
    // the disc spring's give is told for a kilonewton
    const bolt = g.length / (205e9 * stressArea(b)) + g.spring / 1e3
    const soft = g.soft / (g.modulus * g.area)
    const crept = creepRatio(g.creep, g.time / 3600, g.temperature)
    return { left: relaxed({ bolt, soft, hard: 0 }, crept), crept }
  },
  sources: [src.vdi, src.creep],
})

const strip = defineReckoner({
  id: 'thread-strip',
  title: 'Thread that strips',
  trade: 'driveline',
  says: 'What a length of thread holds before it strips out of its nut or part, and the length at which the bolt breaks first. For printed parts take half of the shear strength, across the layers.',
  inputs: [
    size,
    strength,
    mm('engaged', 'Length of thread that holds.', 5e-4, 0.1),
    megapascals('shear', 'Shear strength of what it is tapped into.', 1e6, 1e9, 140e6),
  ],
  outputs: [
    newtons('strips', 'Pull that strips it.'),
    newtons('breaks', 'Pull that breaks the bolt.'),
    mm('enough', 'Length at which the bolt breaks first.'),
    { name: 'nutArea', says: 'Of the part’s thread in shear.', kind: 'area', unit: 'mm²' },
    { name: 'boltArea', says: 'Of the bolt’s thread in shear.', kind: 'area', unit: 'mm²' },
  ],
  reckon: (g, w) => {
    const b = boltOf(w.size)
    const { breaks } = classOf(w.class)
    return {
      strips: nutThreadArea(b, g.engaged) * g.shear,
      breaks: stressArea(b) * breaks,
      enough: lengthThatHolds(b, breaks, g.shear),
      nutArea: nutThreadArea(b, g.engaged),
      boltArea: boltThreadArea(b, g.engaged),
    }
  },
  sources: [src.strip],
})

const insert = defineReckoner({
  id: 'insert-pull-out',
  title: 'Insert in a printed part',
  trade: 'driveline',
  says: 'Pull that draws a heat-set insert out of plastic. Set it from the far side, so that the bolt pulls it into the part.',
  inputs: [
    mm('across', 'Outside of the insert.', 1e-3, 0.05),
    mm('length', 'Of the insert.', 1e-3, 0.05),
    megapascals('shear', 'Shear strength of the plastic across its layers.', 1e6, 1e8, 11e6),
  ],
  outputs: [newtons('holds', 'At most.'), mm('boss', 'Diameter of the boss round it, at least.')],
  reckon: (g) => ({ holds: insertHolds(g.across, g.length, g.shear), boss: 2 * g.across }),
  sources: [src.practice],
})

const flange = defineReckoner({
  id: 'flange-coupling',
  title: 'Bolted flange by friction',
  trade: 'driveline',
  says: 'Torque that two faces hold by friction alone. Against a single cylinder compare it with the peak, three to six times the mean, and with what is left of the pull.',
  inputs: [
    newtons('pull', 'Of one bolt.', 1, 1e6),
    count('number', 'Of bolts.', 1, 48, 4),
    mm('inside', 'Radius inside the faces.', 0, 0.5),
    mm('outside', 'Radius outside.', 1e-3, 0.5),
    plainRatio('friction', 'Clean metal 0.15, oily 0.12, plastic 0.2.', 0.02, 1, 0.15),
    count('faces', 'That rub.', 1, 8, 1),
  ],
  outputs: [newtonMetres('holds', 'Torque.'), mm('radius', 'At which it rubs.')],
  reckon: (g) => {
    if (g.inside >= g.outside) throw new RangeError('inside: must be smaller than outside')
    const radius = rubRadius(g.inside, g.outside)
    return { holds: flangeTorque(g.friction, g.faces, g.pull * g.number, radius), radius }
  },
  sources: ['J. E. Shigley, Mechanical Engineering Design: disc clutch, even pressure'],
})

const clamp = defineReckoner({
  id: 'clamp-hub',
  title: 'Clamped hub or set screws',
  trade: 'driveline',
  says: 'Torque a split hub holds by the pull of its screws, between gripping along two lines and evenly all round; and what the same screws hold as set screws.',
  inputs: [
    newtons('pull', 'Of one screw.', 1, 1e6),
    count('number', 'Of screws.', 1, 12, 2),
    mm('diameter', 'Of the shaft.', 2e-3, 0.2),
    plainRatio('friction', 'Hub on shaft.', 0.02, 1, 0.15),
  ],
  outputs: [
    newtonMetres('lines', 'Along two lines: count on this.'),
    newtonMetres('even', 'Evenly all round.'),
    newtonMetres('setScrews', 'As set screws that bite.'),
  ],
  reckon: (g) => {
    const { lines, even } = clampTorque(g.friction, g.pull * g.number, g.diameter)
    return { lines, even, setScrews: setScrewTorque(g.pull * g.number, g.diameter) }
  },
  sources: [
    'J. E. Shigley, Mechanical Engineering Design: holding power of set screws, from memory',
    src.practice,
  ],
})

const key = defineReckoner({
  id: 'shaft-key',
  title: 'Key in a shaft',
  trade: 'driveline',
  says: 'Pressure on the flank of a parallel key and shear through it, and what torque the flank stands in a hub of some material. With a single cylinder use the peak torque.',
  inputs: [
    mm('diameter', 'Of the shaft.', 6e-3, 0.045),
    mm('length', 'Of key in the hub.', 3e-3, 0.2),
    newtonMetres('torque', 'At its peak.', 0.01, 5000),
    choice('made', 'What the hub’s keyway is cut in.', partNames),
  ],
  outputs: [
    megapascals('flank', 'Pressure on the flank.'),
    megapascals('shear', 'Through the key.'),
    newtonMetres('stands', 'Torque that the flank stands again and again.'),
    mm('width', 'Of the key.'),
    mm('height', 'Of the key.'),
  ],
  reckon: (g, w) => {
    const k = keyFor(g.diameter)
    const s = keyStress(g.torque, g.diameter, g.length, k)
    return { ...s, stands: (g.torque * partDataOf(w.made).flank) / s.flank, ...k }
  },
  sources: [src.keys],
})

export const jointReckoners: readonly Reckoner[] = [
  preload,
  onPlastic,
  relaxation,
  strip,
  insert,
  flange,
  clamp,
  key,
]
