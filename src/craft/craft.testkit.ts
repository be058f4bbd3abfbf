import { readFileSync } from 'node:fs'
import { resolve } from 'node:path'
import { formatProblem } from './problem.ts'
import { readCraft } from './read.ts'
import type { Craft } from './schema/craftSchema.ts'

const root = resolve(import.meta.dirname, '../..')

export const rootFile = (name: string): string => readFileSync(resolve(root, name), 'utf8')

export const heron = rootFile('demo/heron.yaml')
export const teal = rootFile('demo/teal.yaml')

/** a full craft that stays as it is, whatever becomes of the demos */
export const full = rootFile('src/craft/fixtures/version1.yaml')

/** the least that can be read; tests put lines into it */
export const least = `wakewright: 1
name: Least
engines:
  - { kind: peak, displacement: 60 cm³, power: 4 kW, power at: 7500 rpm }
jet:
  rotor: { bore: 105 mm, pitch: 95 mm }
  nozzle: { bore: 58 mm }
hull:
  length: 2.6 m
  beam: 0.8 m
`

/** a two-stroke with a pipe, for the fields the demos do not use */
export const twoStroke = least.replace(
  /engines:\n.*\n/,
  `engines:
  - name: single
    kind: two-stroke
    bore: 54 mm (measured)
    stroke: 54.5 mm (measured)
    tune: sport
    ports:
      exhaust: { opens: 92 deg ±1 (measured), width: 38 mm }
      transfers: { opens: 118 deg, width: 85 mm }
    inlet: { kind: reed }
    exhaust:
      pipe:
        - { length: 60 mm, from: 40 mm, to: 42 mm }
        - { length: 250 mm, from: 42 mm, to: 90 mm, bend: 45 deg }
        - { length: 180 mm, from: 90 mm, to: 24 mm }
      stinger: { length: 200 mm, bore: 24 mm }
      muffler: { length: 300 mm, width: 90 mm }
      outlet: { length: 80 mm, bore: 22 mm, flap: yes }
`,
)

export function craftOf(text: string): Craft {
  const { craft, problems } = readCraft(text, 'test.yaml')
  if (!craft) throw new Error(problems.map(formatProblem).join('\n'))
  return craft
}

export const problemsOf = (text: string): string[] => readCraft(text, 'x.yaml').problems.map(formatProblem)

/** A demo craft, read. */
export const demoCraft = (name: 'heron' | 'teal' | 'dabchick'): Craft =>
  craftOf(rootFile(`demo/${name}.yaml`))

/** The text of a craft file without one of its sections: for tests that change what the section leans on. */
export const withoutSection = (text: string, name: string): string =>
  text.replace(new RegExp(`\\n${name}:[^\\n]*(\\n([ #][^\\n]*)?(?=\\n|$))*`), '\n')
