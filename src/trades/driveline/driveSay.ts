/** How the sentences of the drive line name things, and the sources several of them share. */
import { inCount, inNewtons, inTimes, inTorque, ranged } from '../../base/answers/amounts.ts'
import { type Amount, type Sentence, say } from '../../base/answers/sentence.ts'
import type { Range } from '../../base/answers/solved.ts'
import type { Part } from './driveAnswer.ts'
import type { Joint, Locking } from './driveLinks.ts'
import type { Stage } from './jointRelax.ts'

export const src = {
  vdi: 'VDI 2230 part 1 (2015): tightening, embedding, springs of a joint',
  junker: 'G. H. Junker, New criteria for self-loosening of fasteners under vibration, SAE 690055 (1969)',
  iso898: 'ISO 898-1 and ISO 3506-1: strength of bolts',
  creep: 'Creep and long-term bearing pressure of printed plastics: common practice, no source',
  strip: 'FED-STD-H28/2B: shear areas of threads, from memory',
  locker: 'Makers’ guidance on anaerobic thread-locker and plastics, from memory',
  chain: 'J. P. Den Hartog, Mechanical Vibrations: chains of turning masses',
  shafts: 'ASME code for transmission shafting (B17c, 1927), from memory',
  keys: 'DIN 6885 keys, from memory; pressures by common practice, no source',
  whirl: 'S. P. Timoshenko, Vibration Problems in Engineering: whirling',
  iso281: 'ISO 281: life of rolling bearings; ratings from memory',
  rubber: 'A. N. Gent (1958) and P. B. Lindley: stiffness of rubber blocks',
  practice: 'common practice, no source',
} as const

/** when in a joint's life it begins to slip */
export const slipsWhen: Readonly<Record<Stage, string>> = {
  tightened: 'slips from the first turn',
  minutes: 'slips within the first minutes',
  day: 'slips within a day of running',
  season: 'slips before a season is over',
}

/** "4 M5 in printed nylon" */
export const boltsOf = (j: Joint): string =>
  `${j.number} ${j.bolt.size} ${j.sleeves ? `through sleeves in ${j.made}` : `in ${j.made}`}`

/** what locking is called in a sentence */
export const lockingWord: Readonly<Record<Locking, string>> = {
  none: 'nothing',
  locker: 'thread-locker',
  'spring washer': 'a spring washer',
  nut: 'a nut with a nylon ring',
  'wedge washers': 'wedge-locking washers',
  wire: 'locking wire',
}

export const times = (r: Range): Amount => ranged(inTimes, r)
export const pulls = (r: Range): Amount => ranged(inNewtons, r, 10)

/** "peaks of 44 N·m (21 to 90 N·m) on a mean of 5.3 N·m" */
export const peaksOf = (p: Part): Sentence =>
  say`peaks of ${ranged(inTorque, p.peak)} on a mean of ${inTorque(p.mean)}`

export const first = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1)

/** a life in hours, to two figures */
export const inHours = (life: Range): Sentence => {
  const hours = { value: life.value / 3600, low: life.low / 3600, high: life.high / 3600 }
  return say`${{ ...ranged((v) => inCount(v, 10), hours), digits: 2 }} hours`
}

export const driveCautions = [
  'Plug leads off before a hand goes near the shaft; what turns catches cord, sleeve and hair.',
  'A guard over couplings and belt: a part that lets go flies.',
  'No petrol or locker near ABS, ASA or PC; gloves and fresh air with both.',
]

export const driveMethod = [
  'Each cylinder’s torque over a turn comes from its simulated peak pressure, or from one that fits the torque of the balance; piston and small end shake it at twice the turn.',
  'Engines, couplings, shaft and impeller swing as masses on springs: what of the pulses reaches a link depends on what lies before and behind it. How two cranks stand to each other is drawn from all angles.',
  'A bolt pulls what its torque leaves after friction; faces embed, plastic creeps and yields under the head, warm more than cold. What is left holds the halves by friction.',
  'All doubts are drawn together 128 times; a margin is the middle of the draws with the ends of nineteen in twenty.',
]
