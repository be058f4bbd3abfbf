/**
 * What a plan of fifteen minutes on the water is worth, over craft drawn at random round the three demo craft.
 * Run: npx tsx bench/planBench.ts [--from SEED] [--count N] [--keep FILE] [--merge FILE,FILE]
 */
import { readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { type Random, seededRandom } from '../src/base/numerics/random.ts'
import { type Craft, readCraft, setValue } from '../src/craft/index.ts'
import { runPlan } from '../src/whole/plan/runPlan.ts'
import { MapStore } from '../src/whole/push/craftModel.ts'
import { solveBalance } from '../src/whole/push/solveBalance.ts'

const option = (name: string, usual: string) => {
  const i = process.argv.indexOf(`--${name}`)
  return i < 0 ? usual : (process.argv[i + 1] ?? usual)
}
const texts = ['heron', 'teal', 'sandpiper'].map((name) =>
  readFileSync(join(import.meta.dirname, `../demo/${name}.yaml`), 'utf8'),
)
const read = (text: string): Craft => {
  const { craft } = readCraft(text)
  if (!craft) throw new Error('a drawn craft does not read')
  return craft
}

/** A craft as somebody might have built it. */
function drawn(text: string, rng: Random): Craft {
  const { jet, weights } = read(text)
  const mm = (metres: number) => `${(1000 * metres).toFixed(1)} mm`
  const values: Record<string, string> = {
    'jet.rotor.pitch': mm(rng.between(0.75, 1.25) * jet.rotor.pitch.value),
    'jet.nozzle.bore': mm(rng.between(0.85, 1.08) * jet.nozzle.bore.value),
    'rider.mass': `${rng.between(45, 110).toFixed(0)} kg ±2`,
    'weights.0.mass': `${(rng.between(0.7, 1.5) * weights[0]!.mass.value).toFixed(1)} kg`,
    'place.altitude': `${rng.between(0, 2000).toFixed(0)} m`,
    'place.water temperature': `${rng.between(4, 28).toFixed(1)} °C`,
  }
  return read(Object.entries(values).reduce((t, [path, value]) => setValue(t, path, value), text))
}

interface Row {
  before: number
  after: number
  minutes: number
  /** s the plan took to reckon */
  took: number
}
const from = Number(option('from', '1'))
const count = Number(option('count', '20'))
const merge = option('merge', '')
const rows: Row[] = merge ? merge.split(',').flatMap((f) => JSON.parse(readFileSync(f, 'utf8')) as Row[]) : []
for (let i = 0; !merge && i < count; i++) {
  const craft = drawn(texts[i % texts.length]!, seededRandom(from + i))
  const maps = new MapStore()
  const balance = solveBalance(craft, { maps })
  const t = performance.now()
  const { before, after, minutes } = runPlan(craft, balance, { maps })
  rows.push({ before: before.cause, after: after.cause, minutes, took: (performance.now() - t) / 1000 })
}
const mean = (pick: (r: Row) => number) => rows.reduce((s, r) => s + pick(r), 0) / rows.length
const least = (pick: (r: Row) => number) => Math.min(...rows.map(pick))
console.log(
  `${rows.length} craft: first cause right before ${mean((r) => r.before).toFixed(2)}, after ${mean((r) => r.after).toFixed(2)} ` +
    `(least ${least((r) => r.after).toFixed(2)}), ${mean((r) => r.minutes).toFixed(1)} min (most ${-least((r) => -r.minutes)}), ` +
    `plan in ${mean((r) => r.took).toFixed(2)} s`,
)
const keep = option('keep', '')
if (keep) writeFileSync(keep, JSON.stringify(rows))
