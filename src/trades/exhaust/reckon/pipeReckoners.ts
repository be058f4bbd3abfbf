/** Reckoners of pipe sizes: tuned length, proportions, cones. */
import { choice, degrees, metresPerSecond, mm, revsPerMinute } from '../../../base/answers/portMakers.ts'
import { defineReckoner, type Reckoner } from '../../../base/answers/reckoner.ts'
import { stockBore } from '../pipeShape.ts'
import { type Pipe, proportionedPipe, taperedPipe } from '../proportions.ts'
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

const open = degrees('open', 'crank angle the exhaust port is open in all', 100 * degree, 220 * degree)
const rotation = revsPerMinute('rotation', 'speed to tune for', 16, 400)
const kind = choice('class', 'what the engine is built for; sets gas temperature and widths', classes)
const portBore = mm('port', 'diameter of a circle as large as the uncovered exhaust window', 0.005, 0.08)
const tuned = mm('tuned', 'tuned length', 0.2, 3)

const taperedParts = ['header', 'diffuser', 'belly', 'baffle', 'stinger'] as const
type TaperedPart = (typeof taperedParts)[number]

/** Reckoners of pipe sizes. */
export const pipeReckoners: readonly Reckoner[] = [
  defineReckoner({
    id: 'tuned-length',
    title: 'Tuned length of an exhaust pipe',
    trade: 'exhaust',
    says: 'From the piston face to the start of the stinger, so that the wave is back while the port is open. Simulated power peaks come in 5 to 8 % below the speed asked for: the second length is cut for that.',
    inputs: [open, rotation, kind],
    outputs: [
      mm('length', 'by the handbook'),
      mm('first', 'to cut first, 6.5 % shorter'),
      metresPerSecond('soundSpeed', 'of gas at the class temperature'),
    ],
    reckon: (g, words) => {
      const c = soundSpeed(classFigures[words.class as PipeClass].temperature)
      const l = tunedLength(g.open, g.rotation, c)
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
    outputs: [revsPerMinute('rotation', 'speed it is tuned to')],
    reckon: (g, words) => ({
      rotation: tunedRotation(
        g.open,
        g.tuned,
        soundSpeed(classFigures[words.class as PipeClass].temperature),
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
        mm(`${p}Length`, `length of ${p}`),
      ),
      ...['header', 'diffuser1', 'diffuser2', 'belly'].map((p) => mm(`${p}Bore`, `bore at the end of ${p}`)),
      mm('stingerBore', 'bore of the stinger'),
      mm('stingerTube', 'nearest bore of tube that is sold'),
    ],
    reckon: (g, words) => {
      const pipe = proportionedPipe({
        tunedLength: g.tuned,
        portDiameter: g.port,
        kind: words.class as PipeClass,
        horn: g.horn,
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
      degrees(
        'diffuserAngle',
        'included angle of the diffuser; 5 to 9 degrees work',
        3 * degree,
        16 * degree,
        8 * degree,
      ),
      degrees('baffleAngle', 'included angle of the baffle', 8 * degree, 40 * degree, 16 * degree),
    ],
    outputs: [
      ...taperedParts.map((p) => mm(`${p}Length`, `length of ${p}`)),
      mm('headerBore', 'bore of the header'),
      mm('bellyBore', 'bore of the belly'),
      mm('stingerBore', 'bore of the stinger'),
    ],
    reckon: (g) => {
      const pipe = taperedPipe({
        tunedLength: g.tuned,
        portDiameter: g.port,
        headerDiameters: g.headerDiameters,
        diffuserAngle: g.diffuserAngle,
        baffleAngle: g.baffleAngle,
      })
      // a tapered pipe has just these five parts
      return sizesOf(pipe) as Record<
        `${TaperedPart}Length` | 'headerBore' | 'bellyBore' | 'stingerBore',
        number
      >
    },
    sources: [jennings],
    cautions: [hot],
  }),
]

type PipeSize = `${string}Length` | `${string}Bore`

/** Every length and the bores that a builder needs, by the segment's name. */
function sizesOf(pipe: Pipe): Record<PipeSize, number> {
  const out: Record<PipeSize, number> = {}
  for (const s of pipe.segments) {
    const name = s.name.replace(' ', '')
    out[`${name}Length`] = s.length
    if (name !== 'baffle' && name !== 'diffuser3' && name !== 'diffuser') out[`${name}Bore`] = s.d1
  }
  out['stingerLength'] = pipe.stinger.length
  out['stingerBore'] = pipe.stinger.bore
  return out
}
