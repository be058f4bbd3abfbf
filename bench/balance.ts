/** Speed of the main job: quick and full answers in a warm process, and a whole look from a cold one. */
import { spawnSync } from 'node:child_process'
import { existsSync, readFileSync } from 'node:fs'
import { resolve } from 'node:path'
import { readCraft, whatIf } from '../src/craft/index.ts'
import { solveJet } from '../src/trades/jet/jet.ts'
import { jetPoint } from '../src/trades/jet/pumpMap.ts'
import { MapStore, modelFromCraft } from '../src/whole/push/craftModel.ts'
import { solveBalance } from '../src/whole/push/solveBalance.ts'
import { best, line, median } from './best.ts'

const root = resolve(import.meta.dirname, '..')
const text = readFileSync(resolve(root, 'demo/heron.yaml'), 'utf8')
const craft = readCraft(text).craft!
const maps = new MapStore()
const unit = modelFromCraft(craft, maps).units[0]!

const direct = best(() => void solveJet(unit.spec, 75, 3), 40)
line('one jet point with the strip model at every flow tried', direct, direct, 'itself')
line(
  'one jet point from the pump map',
  best(() => {
    for (let i = 0; i < 100; i++) jetPoint(unit.map, unit.spec, 75 + 0.01 * i, 3)
  }) / 100,
  direct,
  'the strip model',
)
const full = best(() => void solveBalance(craft, { maps: new MapStore() }), 5)
line('full answer with ranges and changes', full, full, 'itself')
line(
  'quick answer, pitch moved (new pump map each time), median',
  median((i) => {
    const tried = whatIf(craft, { 'jet.rotor.pitch': 0.09 + 0.0005 * i })
    solveBalance(tried, { maps, ranges: false, pitches: false })
  }),
  full,
  'the full answer',
)
line(
  'quick answer, nozzle moved, median',
  median((i) => {
    const tried = whatIf(craft, { 'jet.nozzle.bore': 0.06 + 0.0002 * i })
    solveBalance(tried, { maps, ranges: false, pitches: false })
  }),
  full,
  'the full answer',
)
const main = resolve(root, 'dist/cli/main.js')
if (existsSync(main)) {
  const node = (args: string[]) => () => void spawnSync(process.execPath, args, { cwd: root })
  const empty = best(node(['-e', '0']), 7)
  line('an empty node process', empty, empty, 'itself')
  line(
    'whole look at a craft from a cold process',
    best(node([main, 'look', 'demo/heron.yaml', '--json']), 7),
    empty,
    'an empty process',
  )
}
