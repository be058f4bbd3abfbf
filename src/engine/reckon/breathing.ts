import { defineReckoner, type Port, type Reckoner } from '../../answers/reckoner.ts'
import { burntPetrol, gasConstantOf, soundSpeedOf } from '../../gas/mixture.ts'
import { pistonTravel, sweptVolume } from '../geometry.ts'
import { petalFrequency, petalMaterials } from '../inlet.ts'
import {
  angleArea,
  happyRpm,
  roofDepth,
  skirtDepth,
  timeArea,
  timeAreaTargets,
  windowArea,
} from '../ports.ts'
import { type Scavenging, scavengeCurves, scavengeEfficiency } from '../scavenge.ts'
import { checkRod, port } from './ports.ts'

const degree = Math.PI / 180
const jennings =
  'G. Jennings, Two-Stroke Tuner’s Handbook (1973) and articles: time-areas, quoted second-hand'
const width: Port = {
  name: 'width',
  says: 'of all windows, straight across',
  kind: 'length',
  unit: 'mm',
  min: 0.003,
  max: 0.25,
}
const corner: Port = {
  name: 'corner',
  says: 'corner radius',
  kind: 'length',
  unit: 'mm',
  min: 0,
  max: 0.03,
  assumed: 0,
}
const windows: Port = {
  name: 'windows',
  says: 'number of windows',
  kind: 'count',
  unit: '1',
  min: 1,
  max: 10,
  assumed: 1,
}
const suits: Port[] = [
  { name: 'timeArea', says: 'open area over time per swept volume', kind: 'timeArea', unit: 's/m' },
  {
    name: 'suitsFrom',
    says: 'suits this speed by the high end of the guidance',
    kind: 'rotation',
    unit: 'rpm',
  },
  { name: 'suitsTo', says: 'and this one by the low end', kind: 'rotation', unit: 'rpm' },
]

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
      { name: 'which', says: 'which port', kind: 'choice', unit: '', choices: ['exhaust', 'transfer'] },
      port.bore,
      port.stroke,
      port.rod,
      {
        name: 'opens',
        says: 'after top dead centre',
        kind: 'angle',
        unit: 'deg',
        min: 70 * degree,
        max: 150 * degree,
      },
      width,
      corner,
      windows,
      port.rpm,
    ],
    outputs: suits,
    reckon: ({ bore, stroke, rod, opens, width, corner, windows, rpm }, { which }) => {
      checkRod(stroke!, rod!)
      const crank = { bore: bore!, stroke: stroke!, rod: rod! }
      const height = stroke! - pistonTravel(crank, opens!)
      const w = { width: width!, height, corner: corner!, windows: Math.round(windows!) }
      const area = angleArea(
        (a) => windowArea(w, roofDepth(crank, opens!, height, a)),
        opens!,
        2 * Math.PI - opens!,
      )
      const target = which === 'exhaust' ? timeAreaTargets.exhaust : timeAreaTargets.transfer
      return suited(area, sweptVolume(crank), rpm!, target)
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
      {
        name: 'opens',
        says: 'before top dead centre',
        kind: 'angle',
        unit: 'deg',
        min: 30 * degree,
        max: 110 * degree,
      },
      width,
      { name: 'height', says: 'of the window', kind: 'length', unit: 'mm', min: 0.002, max: 0.06 },
      corner,
      port.rpm,
    ],
    outputs: suits,
    reckon: ({ bore, stroke, rod, opens, width, height, corner, rpm }) => {
      checkRod(stroke!, rod!)
      const crank = { bore: bore!, stroke: stroke!, rod: rod! }
      const w = { width: width!, height: height!, corner: corner!, windows: 1 }
      const area = angleArea((a) => windowArea(w, skirtDepth(crank, opens!, height!, a)), -opens!, opens!)
      return suited(area, sweptVolume(crank), rpm!, timeAreaTargets.inlet)
    },
    sources: [jennings],
  }),
  defineReckoner({
    id: 'wave-speed',
    title: 'Speed of sound in exhaust gas',
    trade: 'engine',
    says: 'What the waves in the pipe travel at, from the gas temperature and the mixture; frozen products of petrol.',
    inputs: [
      {
        name: 'temperature',
        says: 'of the gas, mean along the pipe',
        kind: 'temperature',
        unit: '°C',
        min: 300,
        max: 1500,
      },
      {
        name: 'lambda',
        says: 'air over the air the fuel needs',
        kind: 'ratio',
        unit: '1',
        min: 0.7,
        max: 1.2,
        assumed: 0.87,
      },
    ],
    outputs: [
      { name: 'speed', says: 'of sound', kind: 'speed', unit: 'm/s' },
      { name: 'simple', says: 'by the hand formula with air (1.4, 287)', kind: 'speed', unit: 'm/s' },
    ],
    reckon: ({ temperature, lambda }) => ({
      speed: soundSpeedOf(burntPetrol(lambda!), temperature!),
      simple: Math.sqrt(1.4 * 287 * temperature!),
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
    inputs: [{ name: 'speed', says: 'of sound', kind: 'speed', unit: 'm/s', min: 360, max: 800 }],
    outputs: [
      { name: 'air', says: 'with the constants of air (1.4, 287)', kind: 'temperature', unit: 'K' },
      { name: 'exhaust', says: 'with those of hot exhaust gas (1.32, 295)', kind: 'temperature', unit: 'K' },
    ],
    reckon: ({ speed }) => ({ air: speed! ** 2 / (1.4 * 287), exhaust: speed! ** 2 / (1.32 * 295) }),
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
      {
        name: 'ratio',
        says: 'compression ratio over the whole stroke',
        kind: 'ratio',
        unit: '1',
        min: 3,
        max: 25,
      },
      { ...port.rpm, min: 100 / 60 },
      { name: 'flow', says: 'mass of charge', kind: 'massFlow', unit: 'kg/s', min: 1e-4, max: 1 },
      {
        name: 'temperature',
        says: 'of the charge in the cylinder',
        kind: 'temperature',
        unit: 'K',
        min: 250,
        max: 500,
      },
      {
        name: 'pressure',
        says: 'in the cylinder while scavenging',
        kind: 'pressure',
        unit: 'kPa',
        min: 5e4,
        max: 3e5,
      },
      {
        name: 'gas',
        says: 'gas constant of the charge',
        kind: 'gasConstant',
        unit: 'J/(kg·K)',
        min: 250,
        max: 320,
        assumed: 287.05,
      },
    ],
    outputs: [
      { name: 'ideal', says: 'flow that would just fill the cylinder', kind: 'massFlow', unit: 'kg/s' },
      { name: 'scavengingRatio', says: 'flow over that', kind: 'ratio', unit: '1' },
      { name: 'efficiency', says: 'fresh part of what is shut in', kind: 'ratio', unit: '1' },
      { name: 'trapping', says: 'part of the charge that stays', kind: 'ratio', unit: '1' },
    ],
    reckon: ({ bore, stroke, ratio, rpm, flow, temperature, pressure, gas }) => {
      const swept = sweptVolume({ bore: bore!, stroke: stroke!, rod: 1 })
      const ideal = ((pressure! / (gas! * temperature!)) * (swept * ratio!) * rpm!) / (ratio! - 1)
      const scavengingRatio = flow! / ideal
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
      { name: 'cylinder', says: 'kind', kind: 'choice', unit: '', choices: Object.keys(scavengeCurves) },
      {
        name: 'delivered',
        says: 'volume delivered over cylinder volume',
        kind: 'ratio',
        unit: '1',
        min: 0.05,
        max: 2,
      },
    ],
    outputs: [
      { name: 'efficiency', says: 'fresh part of the volume inside', kind: 'ratio', unit: '1' },
      { name: 'kept', says: 'part of the delivery that stayed', kind: 'ratio', unit: '1' },
    ],
    reckon: ({ delivered }, { cylinder }) => {
      const efficiency = scavengeEfficiency(cylinder as Scavenging, delivered!)
      return { efficiency, kept: Math.min(1, efficiency / delivered!) }
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
      {
        name: 'material',
        says: 'of the petal',
        kind: 'choice',
        unit: '',
        choices: Object.keys(petalMaterials),
      },
      { name: 'length', says: 'free, from clamp to tip', kind: 'length', unit: 'mm', min: 0.005, max: 0.08 },
      { name: 'thickness', says: 'of the petal', kind: 'length', unit: 'mm', min: 5e-5, max: 1e-3 },
    ],
    outputs: [
      { name: 'frequency', says: 'lowest', kind: 'frequency', unit: 'Hz' },
      { name: 'flutters', says: 'from this speed on', kind: 'rotation', unit: 'rpm' },
    ],
    reckon: ({ length, thickness }, { material }) => {
      const frequency = petalFrequency(material as keyof typeof petalMaterials, length!, thickness!)
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
    inputs: [
      {
        name: 'lambda',
        says: 'air over the air the fuel needs',
        kind: 'ratio',
        unit: '1',
        min: 0.6,
        max: 1.5,
      },
    ],
    outputs: [
      { name: 'carbonMonoxide', says: 'CO, by volume', kind: 'ratio', unit: '%' },
      { name: 'carbonDioxide', says: 'CO₂, by volume', kind: 'ratio', unit: '%' },
      { name: 'water', says: 'H₂O, by volume', kind: 'ratio', unit: '%' },
      { name: 'gas', says: 'gas constant', kind: 'gasConstant', unit: 'J/(kg·K)' },
    ],
    reckon: ({ lambda }) => {
      const mix = burntPetrol(lambda!)
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
