/** Thirty craft for the coverage of ranges: the demos, and seeded variations of five kinds of craft, right ones and wrong ones. */
import { readFileSync } from 'node:fs'
import { resolve } from 'node:path'
import { type Random, seededRandom } from '../../src/base/numerics/random.ts'
import { type Craft, readCraft, whatIf } from '../../src/craft/index.ts'
import type { SolvedCurves } from '../../src/trades/engine/enginesFromCraft.ts'
import { answerEngines } from '../../src/whole/breath/engineAnswers.ts'

export interface CoveredCraft {
  name: string
  craft: Craft
  solved?: SolvedCurves | undefined
}

const demo = (name: string) => readFileSync(resolve(import.meta.dirname, `../../demo/${name}.yaml`), 'utf8')

function craftOf(text: string): Craft {
  const { craft, problems } = readCraft(text)
  if (!craft) throw new Error(problems.map((p) => p.says).join('\n'))
  return craft
}

/** every engine block replaced by `block` */
const withEngines = (text: string, block: string) =>
  text.replace(/^engines:\n(?: .*\n)+/m, `engines:\n${block}`)

const small = (name: string) => `  - name: ${name}
    kind: peak
    displacement: 50 cm³ (maker)
    power: 2.6 kW ±0.4 (guess)
    power at: 7200 rpm ±300 (guess)
    temper: mild
`
const motor = `  - name: motor
    kind: electric
    torque per current: 0.11 N·m/A (maker)
    most current: 130 A (maker)
    voltage: 62 V (measured)
    resistance: 45 mohm (guess)
`

const kinds: readonly (readonly [name: string, craft: () => Craft])[] = [
  ['sled, belt', () => craftOf(demo('heron'))],
  ['two in line, belt', () => craftOf(demo('teal'))],
  [
    'board, two in line, direct',
    () =>
      whatIf(craftOf(withEngines(demo('teal'), small('front') + small('rear'))), {
        'drive.ratio': 1,
        'jet.rotor.pitch': 0.062,
        'jet.nozzle.bore': 0.05,
      }),
  ],
  ['electric', () => whatIf(craftOf(withEngines(demo('heron'), motor)), { 'drive.ratio': 1 })],
  ['a jet each', () => craftOf(demo('teal').replace('arrangement: one shaft', 'arrangement: a jet each'))],
]

/** A craft a builder might have made, or made wrong: pitch up to a third off, the rest less. */
function varied(craft: Craft, random: Random): Craft {
  const now: Record<string, number> = {
    'jet.rotor.pitch': craft.jet.rotor.pitch.value * random.between(0.72, 1.25),
    'jet.nozzle.bore': craft.jet.nozzle.bore.value * random.between(0.92, 1.08),
    'jet.rotor.gap': craft.jet.rotor.gap.value * random.between(0.7, 2),
    'rider.mass': random.between(60, 105),
    'hull.deadrise': random.between(0.03, 0.2),
    'weights.0.mass': craft.weights[0]!.mass.value * random.between(0.8, 1.4),
    'place.water temperature': random.between(278, 300),
  }
  if (craft.drive.ratio.value !== 1) now['drive.ratio'] = craft.drive.ratio.value * random.between(0.85, 1.15)
  return whatIf(craft, now)
}

/** `count` craft (30 unless told), always the same ones. */
export function coveredCrafts(count = 30): CoveredCraft[] {
  const dabchick = craftOf(demo('dabchick'))
  const out: CoveredCraft[] = [
    { name: 'Heron', craft: craftOf(demo('heron')) },
    { name: 'Teal', craft: craftOf(demo('teal')) },
    { name: 'Dabchick, simulated engine', craft: dabchick, solved: answerEngines(dabchick)?.solved },
  ]
  const random = seededRandom(20)
  for (let i = 0; out.length < count; i++) {
    const [kind, make] = kinds[i % kinds.length]!
    out.push({ name: `${kind} ${Math.floor(i / kinds.length) + 1}`, craft: varied(make(), random) })
  }
  return out.slice(0, count)
}
