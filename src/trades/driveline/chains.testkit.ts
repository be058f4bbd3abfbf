/** Chains of the drive line's own tests, read from text, and a setting as a balance of two 60 cc singles gives it. */
import { craftOf } from '../../craft/craft.testkit.ts'
import { solveTrade } from '../trade.ts'
import { drivelineTrade } from './drivelineTrade.ts'
import type { DriveSetting } from './driveSetting.ts'

export const setting: DriveSetting = {
  states: [
    { name: 'tied up', rotation: 118, torque: 10.6, thrust: 650 },
    { name: 'at top speed', rotation: 124, torque: 10.5, thrust: 310 },
  ],
  most: 172,
  alone: { value: 63, low: 58, high: 68 },
  dragged: { value: 55, low: 50, high: 60 },
  peaks: new Map(),
}

const head = `wakewright: 1
name: Chain
engines:
  - { name: front, kind: peak, displacement: 60 cm³, power: 4 kW, power at: 7500 rpm }
  - { name: rear, kind: peak, displacement: 60 cm³, power: 4 kW, power at: 7500 rpm }
jet:
  rotor: { bore: 105 mm, pitch: 75 mm }
  nozzle: { bore: 58 mm }
hull:
  length: 2.6 m
  beam: 0.8 m
`

/** A chain's lines, and further sections of the file. */
export const chainText = (links: readonly string[], more = ''): string =>
  `${head}shaft:\n${links.map((l) => `  - ${l}`).join('\n')}\n${more}`

/** Two engines with a coupling behind each; `over` adds to both couplings, `shaft` to the shaft. */
export const inLine = (coupling: string, shaft = '', impeller = ''): string[] => [
  '{ kind: engine }',
  `{ kind: coupling, ${coupling} }`,
  '{ kind: engine }',
  `{ kind: coupling, ${coupling} }`,
  `{ kind: shaft${shaft} }`,
  `{ kind: impeller${impeller} }`,
]

export const metal =
  'bolts: M8, number: 6, circle: 60 mm, made: steel, torque: 20 N·m ±1, class: steel 8.8, locking: nut'
export const nylon = 'bolts: M5, number: 4, circle: 40 mm, made: printed nylon, torque: 2 N·m'

/** The trade solved for a chain. */
export const solved = (links: readonly string[], more = '', by: DriveSetting | undefined = setting) =>
  solveTrade(drivelineTrade, craftOf(chainText(links, more)), by)
