import { cm3, count, degrees, metresPerSecond, mm, ratio } from '../../../base/answers/portMakers.ts'
import { defineReckoner, type Reckoner } from '../../../base/answers/reckoner.ts'
import {
  angleOfTravel,
  caseVolumeOfRatio,
  clearanceOfRatio,
  clearanceOfTrapped,
  meanPistonSpeed,
  pistonArea,
  pistonRate,
  pistonTravel,
  sweptVolume,
} from '../geometry.ts'
import { checkRod, port } from './enginePorts.ts'

const kinematics =
  'Slider-crank kinematics, e.g. J. B. Heywood, Internal Combustion Engine Fundamentals (1988), sec. 2.2'
const degree = Math.PI / 180

/** Reckoners about crank, rod, piston and volumes. */
export const crankReckoners: readonly Reckoner[] = [
  defineReckoner({
    id: 'piston-travel',
    title: 'How far down the piston is at a crank angle',
    trade: 'engine',
    says: 'Distance of the crown below its top position. Gudgeon offset is left out.',
    inputs: [port.stroke, port.rod, degrees('angle', 'after top dead centre', 0, 360 * degree)],
    outputs: [mm('travel', 'crown below top')],
    reckon: ({ stroke, rod, angle }) => {
      checkRod(stroke, rod)
      return { travel: pistonTravel({ bore: 1, stroke: stroke, rod: rod }, angle) }
    },
    sources: [kinematics],
  }),
  defineReckoner({
    id: 'port-timing',
    title: 'Port timing from the depth of its roof',
    trade: 'engine',
    says: 'When a port opens, from how far its roof lies below the crown’s top position. Turn a caliper reading into degrees, or check a degree wheel: the two must agree within 1.5°.',
    inputs: [
      port.stroke,
      port.rod,
      mm('depth', 'from the crown’s top position down to the roof', 0.001, 0.12),
    ],
    outputs: [
      degrees('opens', 'after top dead centre'),
      degrees('duration', 'open in all'),
      degrees('perMillimetre', 'change of the opening for one millimetre lower'),
    ],
    reckon: ({ stroke, rod, depth }) => {
      checkRod(stroke, rod)
      if (depth >= stroke) throw new RangeError('depth: below the bottom of the stroke, the port never opens')
      const crank = { bore: 1, stroke: stroke, rod: rod }
      const opens = angleOfTravel(crank, depth)
      return { opens, duration: 2 * (Math.PI - opens), perMillimetre: 1e-3 / pistonRate(crank, opens) }
    },
    sources: [kinematics],
  }),
  defineReckoner({
    id: 'swept-volume',
    title: 'Swept volume of an engine',
    trade: 'engine',
    says: 'From bore, stroke and number of cylinders.',
    inputs: [port.bore, port.stroke, count('cylinders', 'number', 1, 8, 1)],
    outputs: [cm3('swept', 'all cylinders')],
    reckon: ({ bore, stroke, cylinders }) => ({
      swept: sweptVolume({ bore: bore, stroke: stroke, rod: 1 }) * Math.round(cylinders),
    }),
    sources: ['Volume of a cylinder'],
  }),
  defineReckoner({
    id: 'compression-ratios',
    title: 'Compression ratios from the combustion space',
    trade: 'engine',
    says: 'Over the whole stroke, and from where the exhaust closes. The space is what oil fills with the piston at the top, without the plug’s thread.',
    inputs: [
      port.bore,
      port.stroke,
      port.rod,
      port.exhaustOpens,
      cm3('space', 'combustion space at the top', 3e-7, 2e-4),
    ],
    outputs: [
      ratio('geometric', 'whole stroke'),
      ratio('trapped', 'from exhaust closing; pump petrol bears about 7.5'),
    ],
    reckon: ({ bore, stroke, rod, exhaustOpens, space }) => {
      checkRod(stroke, rod)
      const crank = { bore: bore, stroke: stroke, rod: rod }
      const shut = pistonArea(bore) * pistonTravel(crank, exhaustOpens)
      return { geometric: sweptVolume(crank) / space + 1, trapped: shut / space + 1 }
    },
    sources: ['Ratio of volumes; the limit of 7.5 is common practice, no source'],
  }),
  defineReckoner({
    id: 'combustion-space',
    title: 'Combustion space for a compression ratio',
    trade: 'engine',
    says: 'The space to aim for: one that gives the ratio over the whole stroke, and one that gives it from exhaust closing.',
    inputs: [port.bore, port.stroke, port.rod, port.exhaustOpens, ratio('ratio', 'wanted', 4, 18)],
    outputs: [
      cm3('geometric', 'if the ratio is over the whole stroke'),
      cm3('trapped', 'if it is from exhaust closing'),
    ],
    reckon: ({ bore, stroke, rod, exhaustOpens, ratio }) => {
      checkRod(stroke, rod)
      const crank = { bore: bore, stroke: stroke, rod: rod }
      return {
        geometric: clearanceOfRatio(crank, ratio),
        trapped: clearanceOfTrapped(crank, ratio, exhaustOpens),
      }
    },
    sources: ['Ratio of volumes'],
    cautions: [
      'More compression asks for less ignition advance and better fuel: listen for knock and read the plug.',
    ],
  }),
  defineReckoner({
    id: 'crankcase-compression',
    title: 'Crankcase compression ratio',
    trade: 'engine',
    says: 'From the oil that fills case and transfers with the piston at the bottom; and the volume a usual 1.38 would need.',
    inputs: [port.bore, port.stroke, cm3('space', 'case and transfers, piston at the bottom', 5e-6, 3e-3)],
    outputs: [ratio('ratio', 'usually 1.25 to 1.5'), cm3('usual', 'space for 1.38')],
    reckon: ({ bore, stroke, space }) => {
      const crank = { bore: bore, stroke: stroke, rod: 1 }
      return { ratio: sweptVolume(crank) / space + 1, usual: caseVolumeOfRatio(crank, 1.38) }
    },
    sources: ['Ratio of volumes; the usual range is common practice, no source'],
  }),
  defineReckoner({
    id: 'piston-speed',
    title: 'Piston speed',
    trade: 'engine',
    says: 'Mean and greatest speed of the piston. Mean above 18 m/s is hard on an unmodified utility engine, above 22 on any.',
    inputs: [port.stroke, port.rod, port.rpm],
    outputs: [metresPerSecond('mean', 'over a turn'), metresPerSecond('most', 'a little before half stroke')],
    reckon: ({ stroke, rod, rpm }) => {
      checkRod(stroke, rod)
      const crank = { bore: 1, stroke: stroke, rod: rod }
      let most = 0
      for (let k = 0; k <= 720; k++) most = Math.max(most, pistonRate(crank, (Math.PI * k) / 720))
      return { mean: meanPistonSpeed(stroke, rpm * 60), most: most * 2 * Math.PI * rpm }
    },
    sources: [kinematics, 'Limits: common practice, no source'],
  }),
]
