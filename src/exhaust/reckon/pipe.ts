/** Reckoners of pipe sizes: tuned length, proportions, cones. */
import { defineReckoner, type Port, type Reckoner } from '../../answers/reckoner.ts'
import { conePattern, type Pipe, proportionedPipe, taperedPipe } from '../proportions.ts'
import { stockBore } from '../shape.ts'
import {
  classes,
  classFigures,
  firstCut,
  type PipeClass,
  soundSpeed,
  tunedLength,
  tunedRotation,
} from '../tuning.ts'

const blair = 'G. P. Blair, Design and Simulation of Two-Stroke Engines (SAE R-161, 1996), the pipe chapter'
const jennings =
  'G. Jennings, Two-Stroke Tuner’s Handbook (1973), from memory but for the diffuser’s area ratio of 6.25'
const degree = Math.PI / 180
const hot =
  'A pipe that is new to an engine may run it hotter: richen first, and look at plug and piston crown after short runs.'

const open: Port = {
  name: 'open',
  says: 'crank angle the exhaust port is open in all',
  kind: 'angle',
  unit: 'deg',
  min: 100 * degree,
  max: 220 * degree,
}
const rotation: Port = {
  name: 'rotation',
  says: 'speed to tune for',
  kind: 'rotation',
  unit: 'rpm',
  min: 16,
  max: 400,
}
const kind: Port = {
  name: 'class',
  says: 'what the engine is built for; sets gas temperature and widths',
  kind: 'choice',
  unit: '',
  choices: classes,
}
const length = (name: string, says: string, min = 0.001, max = 3): Port => ({
  name,
  says,
  kind: 'length',
  unit: 'mm',
  min,
  max,
})
const size = (name: string, says: string): Port => ({ name, says, kind: 'length', unit: 'mm' })
const portBore = length('port', 'diameter of a circle as large as the uncovered exhaust window', 0.005, 0.08)
const tuned = length('tuned', 'tuned length', 0.2, 3)

/** Reckoners of pipe sizes. */
export const pipeReckoners: readonly Reckoner[] = [
  defineReckoner({
    id: 'tuned-length',
    title: 'Tuned length of an exhaust pipe',
    trade: 'exhaust',
    says: 'From the piston face to the start of the stinger, so that the wave is back while the port is open. Simulated power peaks come in 5 to 8 % below the speed asked for: the second length is cut for that.',
    inputs: [open, rotation, kind],
    outputs: [
      size('length', 'by the handbook'),
      size('first', 'to cut first, 6.5 % shorter'),
      { name: 'soundSpeed', says: 'of gas at the class temperature', kind: 'speed', unit: 'm/s' },
    ],
    reckon: (g, words) => {
      const c = soundSpeed(classFigures[words['class'] as PipeClass].temperature)
      const l = tunedLength(g['open']!, g['rotation']!, c)
      return { length: l, first: firstCut * l, soundSpeed: c }
    },
    sources: [blair, 'this project’s own simulation of a 125 cm³ engine'],
    cautions: [hot],
  }),
  defineReckoner({
    id: 'tuned-speed',
    title: 'Speed that a pipe is tuned to',
    trade: 'exhaust',
    says: 'The handbook law turned round: measure a pipe from the piston face to the start of the stinger.',
    inputs: [open, tuned, kind],
    outputs: [{ name: 'rotation', says: 'speed it is tuned to', kind: 'rotation', unit: 'rpm' }],
    reckon: (g, words) => ({
      rotation: tunedRotation(
        g['open']!,
        g['tuned']!,
        soundSpeed(classFigures[words['class'] as PipeClass].temperature),
      ),
    }),
    sources: [blair],
  }),
  defineReckoner({
    id: 'pipe-proportions',
    title: 'A first pipe from a tuned length',
    trade: 'exhaust',
    says: 'Header, three diffuser cones, belly, baffle and stinger as shares of the tuned length and multiples of the port. The header counts from the piston face.',
    inputs: [
      tuned,
      portBore,
      kind,
      {
        name: 'horn',
        says: 'exponent of the diffuser: 1.25 wide, 2 peaky',
        kind: 'ratio',
        unit: '',
        min: 0.8,
        max: 2.5,
        assumed: 1.5,
      },
    ],
    outputs: [
      ...['header', 'diffuser1', 'diffuser2', 'diffuser3', 'belly', 'baffle', 'stinger'].map((p) =>
        size(`${p}Length`, `length of ${p}`),
      ),
      ...['header', 'diffuser1', 'diffuser2', 'belly'].map((p) =>
        size(`${p}Bore`, `bore at the end of ${p}`),
      ),
      size('stingerBore', 'bore of the stinger'),
      size('stingerTube', 'nearest bore of tube that is sold'),
    ],
    reckon: (g, words) => {
      const pipe = proportionedPipe({
        tunedLength: g['tuned']!,
        portDiameter: g['port']!,
        kind: words['class'] as PipeClass,
        horn: g['horn']!,
      })
      return { ...sizesOf(pipe), stingerTube: stockBore(pipe.stinger.bore) }
    },
    sources: [blair, 'horn exponent from memory'],
    cautions: [hot],
  }),
  defineReckoner({
    id: 'tapered-pipe',
    title: 'A first pipe from tapers',
    trade: 'exhaust',
    says: 'Straight header in diameters, one diffuser of fixed taper to 2.5 diameters, a baffle twice as steep. The tuned length ends half-way down the complete baffle cone: not the length of the other method.',
    inputs: [
      tuned,
      portBore,
      {
        name: 'headerDiameters',
        says: 'header over its bore: 6 peaky to 11 wide',
        kind: 'ratio',
        unit: '',
        min: 4,
        max: 14,
        assumed: 8,
      },
      {
        name: 'diffuserAngle',
        says: 'included angle of the diffuser; 5 to 9 degrees work',
        kind: 'angle',
        unit: 'deg',
        min: 3 * degree,
        max: 16 * degree,
        assumed: 8 * degree,
      },
      {
        name: 'baffleAngle',
        says: 'included angle of the baffle',
        kind: 'angle',
        unit: 'deg',
        min: 8 * degree,
        max: 40 * degree,
        assumed: 16 * degree,
      },
    ],
    outputs: [
      ...['header', 'diffuser', 'belly', 'baffle', 'stinger'].map((p) =>
        size(`${p}Length`, `length of ${p}`),
      ),
      size('headerBore', 'bore of the header'),
      size('bellyBore', 'bore of the belly'),
      size('stingerBore', 'bore of the stinger'),
    ],
    reckon: (g) => {
      const pipe = taperedPipe({
        tunedLength: g['tuned']!,
        portDiameter: g['port']!,
        headerDiameters: g['headerDiameters']!,
        diffuserAngle: g['diffuserAngle']!,
        baffleAngle: g['baffleAngle']!,
      })
      const {
        headerLength,
        diffuserLength,
        bellyLength,
        baffleLength,
        stingerLength,
        headerBore,
        bellyBore,
        stingerBore,
      } = sizesOf(pipe) as Record<string, number>
      return {
        headerLength: headerLength!,
        diffuserLength: diffuserLength!,
        bellyLength: bellyLength!,
        baffleLength: baffleLength!,
        stingerLength: stingerLength!,
        headerBore: headerBore!,
        bellyBore: bellyBore!,
        stingerBore: stingerBore!,
      }
    },
    sources: [jennings],
    cautions: [hot],
  }),
  defineReckoner({
    id: 'cone-pattern',
    title: 'Flat pattern of a cone',
    trade: 'exhaust',
    says: 'The ring sector to cut for one cone, on the middle of the sheet; add a lap or a gap for the weld.',
    inputs: [
      length('length', 'of the cone along its axis'),
      length('from', 'diameter at one end', 0.004, 0.4),
      length('to', 'diameter at the other end', 0.004, 0.5),
    ],
    outputs: [
      size('outer', 'outer radius of the sector'),
      size('inner', 'inner radius of the sector'),
      { name: 'angle', says: 'angle of the sector', kind: 'angle', unit: 'deg' },
    ],
    reckon: (g) => {
      if (Math.abs(g['from']! - g['to']!) < 1e-6)
        throw new RangeError('to: the same as from; a tube unrolls to a rectangle, π times its diameter wide')
      return conePattern(g['length']!, g['from']!, g['to']!)
    },
    sources: ['Developable surfaces, elementary geometry'],
  }),
]

function sizesOf(pipe: Pipe): Record<string, number> {
  const out: Record<string, number> = {}
  for (const s of pipe.segments) {
    const name = s.name.replace(' ', '')
    out[`${name}Length`] = s.length
    if (name !== 'baffle' && name !== 'diffuser3' && name !== 'diffuser') out[`${name}Bore`] = s.d1
  }
  out['stingerLength'] = pipe.stinger.length
  out['stingerBore'] = pipe.stinger.bore
  return out
}
