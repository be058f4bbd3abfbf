import {
  celsius,
  choice,
  count,
  degrees,
  hertz,
  kelvins,
  kgPerSecond,
  kPa,
  metresPerSecond,
  mm,
  percent,
  portOf,
  ratio,
  revsPerMinute,
} from '../../../base/answers/portMakers.ts'
import { defineReckoner, type Reckoner } from '../../../base/answers/reckoner.ts'
import { burntPetrol, gasConstantOf, soundSpeedOf } from '../../../physics/gas/mixture.ts'
import { pistonTravel, sweptVolume } from '../geometry.ts'
import { petalFrequency, petalMaterials } from '../inletFlow.ts'
import {
  angleArea,
  happyRpm,
  roofDepth,
  skirtDepth,
  timeArea,
  timeAreaTargets,
  windowArea,
} from '../portAreas.ts'
import { type Scavenging, scavengeCurves, scavengeEfficiency } from '../scavenge.ts'
import { checkRod, port } from './enginePorts.ts'

const degree = Math.PI / 180
const jennings =
  'G. Jennings, Two-Stroke Tuner’s Handbook (1973) and articles: time-areas, quoted second-hand'
const width = mm('width', 'of all windows, straight across', 0.003, 0.25)
const corner = mm('corner', 'corner radius', 0, 0.03, 0)
const windows = count('windows', 'number of windows', 1, 10, 1)
const suits = [
  portOf('timeArea', 's/m')('timeArea', 'open area over time per swept volume'),
  revsPerMinute('suitsFrom', 'suits this speed by the high end of the guidance'),
  revsPerMinute('suitsTo', 'and this one by the low end'),
] as const

function suited(area: number, swept: number, rpm: number, target: { low: number; high: number }) {
  return {
    timeArea: timeArea(area, swept, rpm * 60),
    suitsFrom: happyRpm(area, swept, target.high) / 60,
    suitsTo: happyRpm(area, swept, target.low) / 60,
  }
}

/** Reckoners about ports, scavenging and what the pipe hears. */
export const breathingReckoners: readonly Reckoner[] = [
  defineReckoner({
    id: 'port-time-area',
    title: 'Time-area of an exhaust or transfer port, and the rpm it suits',
    trade: 'engine',
    says: 'The best handbook check of mismatched ports: each port suits a speed; the lowest of them holds the engine back. The port is taken open down to the crown at the bottom.',
    inputs: [
      choice('which', 'which port', ['exhaust', 'transfer']),
      port.bore,
      port.stroke,
      port.rod,
      degrees('opens', 'after top dead centre', 70 * degree, 150 * degree),
      width,
      corner,
      windows,
      port.rpm,
    ],
    outputs: suits,
    reckon: ({ bore, stroke, rod, opens, width, corner, windows, rpm }, { which }) => {
      checkRod(stroke, rod)
      const crank = { bore: bore, stroke: stroke, rod: rod }
      const height = stroke - pistonTravel(crank, opens)
      const w = { width: width, height, corner: corner, windows: Math.round(windows) }
      const area = angleArea(
        (a) => windowArea(w, roofDepth(crank, opens, height, a)),
        opens,
        2 * Math.PI - opens,
      )
      const target = which === 'exhaust' ? timeAreaTargets.exhaust : timeAreaTargets.transfer
      return suited(area, sweptVolume(crank), rpm, target)
    },
    sources: [jennings],
  }),
  defineReckoner({
    id: 'inlet-time-area',
    title: 'Time-area of a piston-port inlet, and the rpm it suits',
    trade: 'engine',
    says: 'For an inlet window that the skirt opens, the same length before and after top dead centre.',
    inputs: [
      port.bore,
      port.stroke,
      port.rod,
      degrees('opens', 'before top dead centre', 30 * degree, 110 * degree),
      width,
      mm('height', 'of the window', 0.002, 0.06),
      corner,
      port.rpm,
    ],
    outputs: suits,
    reckon: ({ bore, stroke, rod, opens, width, height, corner, rpm }) => {
      checkRod(stroke, rod)
      const crank = { bore: bore, stroke: stroke, rod: rod }
      const w = { width: width, height: height, corner: corner, windows: 1 }
      const area = angleArea((a) => windowArea(w, skirtDepth(crank, opens, height, a)), -opens, opens)
      return suited(area, sweptVolume(crank), rpm, timeAreaTargets.inlet)
    },
    sources: [jennings],
  }),
  defineReckoner({
    id: 'wave-speed',
    title: 'Speed of sound in exhaust gas',
    trade: 'engine',
    says: 'What the waves in the pipe travel at, from the gas temperature and the mixture; frozen products of petrol.',
    inputs: [
      celsius('temperature', 'of the gas, mean along the pipe', 300, 1500),
      ratio('lambda', 'air over the air the fuel needs', 0.7, 1.2, 0.87),
    ],
    outputs: [
      metresPerSecond('speed', 'of sound'),
      metresPerSecond('simple', 'by the hand formula with air (1.4, 287)'),
    ],
    reckon: ({ temperature, lambda }) => ({
      speed: soundSpeedOf(burntPetrol(lambda), temperature),
      simple: Math.sqrt(1.4 * 287 * temperature),
    }),
    sources: [
      'a = √(γ R T) with the heat capacities of NASA TM-4513 (1993)',
      'Water-gas constant 3.5: J. B. Heywood (1988), sec. 4.9',
    ],
  }),
  defineReckoner({
    id: 'wave-temperature',
    title: 'Gas temperature behind a wave speed',
    trade: 'engine',
    says: 'Handbooks quote a wave speed for the pipe (1700 ft/s is a favourite); this is the gas temperature it stands for.',
    inputs: [metresPerSecond('speed', 'of sound', 360, 800)],
    outputs: [
      kelvins('air', 'with the constants of air (1.4, 287)'),
      kelvins('exhaust', 'with those of hot exhaust gas (1.32, 295)'),
    ],
    reckon: ({ speed }) => ({ air: speed ** 2 / (1.4 * 287), exhaust: speed ** 2 / (1.32 * 295) }),
    sources: ['a = √(γ R T)'],
  }),
  defineReckoner({
    id: 'charging-by-mixing',
    title: 'Scavenging by perfect mixing from a measured air flow',
    trade: 'engine',
    says: 'Scavenging ratio, efficiency and trapping of a two-stroke whose charge mixes at once with what is in the cylinder: the cautious bound.',
    inputs: [
      { ...port.bore, max: 0.3 },
      { ...port.stroke, max: 0.4 },
      ratio('ratio', 'compression ratio over the whole stroke', 3, 25),
      { ...port.rpm, min: 100 / 60 },
      kgPerSecond('flow', 'mass of charge', 1e-4, 1),
      kelvins('temperature', 'of the charge in the cylinder', 250, 500),
      kPa('pressure', 'in the cylinder while scavenging', 5e4, 3e5),
      portOf('gasConstant', 'J/(kg·K)')('gas', 'gas constant of the charge', 250, 320, 287.05),
    ],
    outputs: [
      kgPerSecond('ideal', 'flow that would just fill the cylinder'),
      ratio('scavengingRatio', 'flow over that'),
      ratio('efficiency', 'fresh part of what is shut in'),
      ratio('trapping', 'part of the charge that stays'),
    ],
    reckon: ({ bore, stroke, ratio, rpm, flow, temperature, pressure, gas }) => {
      const swept = sweptVolume({ bore: bore, stroke: stroke, rod: 1 })
      const ideal = ((pressure / (gas * temperature)) * (swept * ratio) * rpm) / (ratio - 1)
      const scavengingRatio = flow / ideal
      const efficiency = 1 - Math.exp(-scavengingRatio)
      return { ideal, scavengingRatio, efficiency, trapping: efficiency / scavengingRatio }
    },
    sources: ['Perfect mixing, SE = 1 - exp(-SR), e.g. Heywood (1988), sec. 6.6'],
  }),
  defineReckoner({
    id: 'scavenging-curve',
    title: 'Scavenging efficiency of a kind of cylinder',
    trade: 'engine',
    says: 'Volume of fresh charge inside for a volume delivered, and what leaves by the exhaust at that moment, for four kinds of cylinder.',
    inputs: [
      choice('cylinder', 'kind', Object.keys(scavengeCurves)),
      ratio('delivered', 'volume delivered over cylinder volume', 0.05, 2),
    ],
    outputs: [
      ratio('efficiency', 'fresh part of the volume inside'),
      ratio('kept', 'part of the delivery that stayed'),
    ],
    reckon: ({ delivered }, { cylinder }) => {
      const efficiency = scavengeEfficiency(cylinder as Scavenging, delivered)
      return { efficiency, kept: Math.min(1, efficiency / delivered) }
    },
    sources: [
      'G. P. Blair, Design and Simulation of Two-Stroke Engines (1996), single-cycle rig curves, from memory',
    ],
  }),
  defineReckoner({
    id: 'reed-frequency',
    title: 'Lowest frequency of a reed petal',
    trade: 'engine',
    says: 'And the rpm from which it flutters, four fifths of that frequency.',
    inputs: [
      choice('material', 'of the petal', Object.keys(petalMaterials)),
      mm('length', 'free, from clamp to tip', 0.005, 0.08),
      mm('thickness', 'of the petal', 5e-5, 1e-3),
    ],
    outputs: [hertz('frequency', 'lowest'), revsPerMinute('flutters', 'from this speed on')],
    reckon: ({ length, thickness }, { material }) => {
      const frequency = petalFrequency(material as keyof typeof petalMaterials, length, thickness)
      return { frequency, flutters: 0.8 * frequency }
    },
    sources: [
      'Cantilever, 3.516/(2π L²) √(E t²/12ρ), W. T. Thomson, Theory of Vibration (1981)',
      'Four fifths: common practice, no source',
    ],
  }),
  defineReckoner({
    id: 'burnt-gas',
    title: 'What petrol burns to',
    trade: 'engine',
    says: 'Wet composition of the exhaust and its gas constant for an air ratio. Rich mixtures leave carbon monoxide: per cents of it at full throttle.',
    inputs: [ratio('lambda', 'air over the air the fuel needs', 0.6, 1.5)],
    outputs: [
      percent('carbonMonoxide', 'CO, by volume'),
      percent('carbonDioxide', 'CO₂, by volume'),
      percent('water', 'H₂O, by volume'),
      portOf('gasConstant', 'J/(kg·K)')('gas', 'gas constant'),
    ],
    reckon: ({ lambda }) => {
      const mix = burntPetrol(lambda)
      return {
        carbonMonoxide: mix.CO ?? 0,
        carbonDioxide: mix.CO2 ?? 0,
        water: mix.H2O ?? 0,
        gas: gasConstantOf(mix),
      }
    },
    sources: ['Element balance of C8H18 with the water-gas constant 3.5, Heywood (1988), sec. 4.9'],
    cautions: [
      'Carbon monoxide kills without smell or warning: run engines in the open, outlet downwind and away from people.',
    ],
  }),
]
