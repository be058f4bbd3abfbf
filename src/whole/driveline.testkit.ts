/** Craft of the drive line's tests: two singles in line on one jet, with a chain of one's own. */
import { readFileSync } from 'node:fs'
import { resolve } from 'node:path'
import { type Craft, formatProblem, readCraft } from '../craft/index.ts'

const teal = readFileSync(resolve(import.meta.dirname, '../../demo/teal.yaml'), 'utf8')

/** Teal's two 60 cc singles, crank to crank to impeller without a belt, on a finer pitch; `links` are the chain's lines. */
export function twoInLine(links: readonly string[]): string {
  const text = teal
    .replace('ratio: 1.20', 'ratio: 1.00')
    .replace('pitch: 98 mm', 'pitch: 75 mm')
    .replace(/^shaft:[\s\S]*?\n\n/m, '')
    .replace(/^mounts:[\s\S]*?\n\n/m, '')
  return `${text}\nshaft:\n${links.map((l) => `  - ${l}`).join('\n')}\n`
}

/** Four M5 on a 40 mm circle in printed nylon at 2 N·m, as builders do. */
export const fourM5 = (more = '') =>
  `{ kind: coupling, bolts: M5, number: 4, circle: 40 mm, made: printed nylon, torque: 2 N·m, locking: locker${more} }`

export const builderChain = [
  '{ kind: engine }',
  fourM5(),
  '{ kind: engine }',
  fourM5(),
  '{ kind: shaft }',
  '{ kind: impeller }',
]

/** A craft read from its text; throws with the problems when it does not read. */
export function craftFrom(text: string): Craft {
  const { craft, problems } = readCraft(text, 'test.yaml')
  if (!craft) throw new Error(problems.map(formatProblem).join('\n'))
  return craft
}

export const problemsIn = (text: string): string[] => readCraft(text, 'test.yaml').problems.map(formatProblem)
