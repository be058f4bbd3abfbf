/** Handbook questions of cords, cables and starters. */
import {
  choice,
  cm3,
  degrees,
  metres,
  mm,
  newtonMetres,
  newtons,
  percent,
  plainRatio,
  ratio,
  revsPerMinute,
} from '../../base/answers/portMakers.ts'
import { defineReckoner, type Reckoner } from '../../base/answers/reckoner.ts'
import { breakingForce, type CordMaterial, capstan, cordStretch } from './capstan.ts'
import { cylinderOf, turnOver } from './starterPull.ts'
import { cableFriction, cablePull } from './throttleCable.ts'

const euler = 'Capstan rule T₂/T₁ = e^{μθ}, L. Euler 1762; any mechanics text'

const rope = defineReckoner({
  id: 'capstan',
  title: 'A cord round a corner',
  trade: 'controls',
  says: 'What a cord or cable loses where it goes round something that does not turn.',
  inputs: [
    degrees('wrap', 'Angle it turns through in all.', 0, 20 * Math.PI),
    ratio('friction', 'Bare metal 0.3, plastic 0.2, a lined cable 0.15.', 0, 2, 0.2),
    newtons('pull', 'At the near end.', 0, 1e6, 100),
  ],
  outputs: [
    ratio('times', 'Force at the far end over that at the near one.'),
    newtons('far', 'At the far end.'),
  ],
  reckon: (g) => {
    const times = capstan(g.friction, g.wrap)
    return { times, far: times * g.pull }
  },
  sources: [euler],
})

const cord = defineReckoner({
  id: 'starter-cord',
  title: 'A starter cord: turns, speed, stretch',
  trade: 'controls',
  says: 'How often and how fast a pull turns the crank, what of it the cord’s stretch takes, and how far it is from breaking.',
  inputs: [
    choice('material', 'Of the cord.', ['nylon', 'polyester', 'aramid']),
    mm('drum', 'Diameter of the drum at the bottom of its groove.', 0.01, 0.5),
    mm('thickness', 'Of the cord.', 1e-3, 0.02, 4e-3),
    metres('length', 'From the drum to the handle.', 0, 10, 0.8),
    metres('pull', 'How far the handle goes.', 0.05, 3, 0.8),
    newtons('force', 'At the handle.', 1, 3000, 150),
  ],
  outputs: [
    ratio('turns', 'Of the crank in one pull.'),
    revsPerMinute('rotation', 'With the hand at 2 m/s.'),
    percent('lost', 'Part of the pull that goes into stretch.'),
    ratio('margin', 'Breaking force, new and without a knot, over the pull.'),
  ],
  reckon: (g, words) => {
    const material = words.material as CordMaterial
    const round = Math.PI * (g.drum + g.thickness)
    return {
      turns: g.pull / round,
      rotation: 2 / round,
      lost: cordStretch(material, g.thickness, g.length + g.pull, g.force) / g.pull,
      margin: breakingForce(material, g.thickness) / g.force,
    }
  },
  sources: ['Drum circumference; stretch and breaking force of braided cord: makers’ tables, from memory'],
})

const cable = defineReckoner({
  id: 'throttle-cable',
  title: 'A throttle cable: finger and spring',
  trade: 'controls',
  says: 'Force at the finger, and whether the spring brings the lever back through the friction of its bends.',
  inputs: [
    degrees('bends', 'All bends added up.', 0, 8 * Math.PI),
    choice('liner', 'Plastic tube inside the outer, or none.', ['plastic', 'none']),
    newtons('spring', 'Return spring at the carburettor.', 0.01, 300),
    newtons('lever', 'Drag of the lever itself, at the cable.', 0, 100, 2),
    plainRatio('ratio', 'Finger travel over cable travel.', 0.5, 12, 2.5),
  ],
  outputs: [
    ratio('times', 'Force at one end over the other.'),
    newtons('finger', 'Held by the finger.'),
    ratio('back', 'Spring at the lever over the lever’s drag; 2 is wanted.'),
    newtons('wanted', 'Spring that brings twice the drag.'),
  ],
  reckon: (g, words) => {
    const a = cablePull({
      bends: g.bends,
      friction: cableFriction[words.liner as keyof typeof cableFriction],
      spring: g.spring,
      lever: g.lever,
      ratio: g.ratio,
    })
    return { times: a.times, finger: a.finger, back: a.back, wanted: a.springWanted }
  },
  sources: [euler, 'Friction of control cables: common practice, no source'],
})

const starter = defineReckoner({
  id: 'starter-pull',
  title: 'The pull over compression',
  trade: 'controls',
  says: 'What turns a two-stroke over by its volume and trapped compression: torque slow and quick, and the pull on a drum.',
  inputs: [
    cm3('volume', 'Of one cylinder.', 5e-6, 1e-3),
    ratio('ratio', 'Trapped compression.', 2, 15, 6.8),
    mm('drum', 'Diameter of the starter’s drum.', 0.01, 0.5, 0.06),
  ],
  outputs: [
    newtonMetres('peak', 'Highest torque, turned slowly.'),
    newtonMetres('mean', 'Mean over half a turn.'),
    newtons('slow', 'Pull on the drum, slow.'),
    newtons('quick', 'Pull on the drum, quick.'),
  ],
  reckon: (g) => {
    const t = turnOver(cylinderOf(g.volume, g.ratio))
    return { peak: t.peak, mean: t.mean, slow: (2 * t.peak) / g.drum, quick: (2 * t.mean) / g.drum }
  },
  sources: ['Slider-crank, polytropic compression 1.3 from exhaust closing at 95°, friction 0.9 bar'],
  cautions: ['A starter that kicks back breaks fingers: no turn of the cord round the hand.'],
})

export const controlsReckoners: readonly Reckoner[] = [rope, cord, cable, starter]
