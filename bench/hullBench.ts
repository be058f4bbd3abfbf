/** Speed of the drag curve: rider optimised by the search over wetted length, against trying 40 places one by one. */
import { readFileSync } from 'node:fs'
import { resolve } from 'node:path'
import { cubicAt, pchip } from '../src/base/numerics/interpolate.ts'
import { readCraft } from '../src/craft/index.ts'
import { dragAt, dragCurve, prepareDrag } from '../src/trades/drag/drag.ts'
import { hullFromCraft } from '../src/trades/drag/dragFromCraft.ts'
import { runUp } from '../src/trades/drag/run.ts'
import { best, line } from './best.ts'

const text = readFileSync(resolve(import.meta.dirname, '../demo/heron.yaml'), 'utf8')
const { spec, loading, conditions } = hullFromCraft(readCraft(text).craft!)
const model = prepareDrag(spec, loading, conditions)
const speeds = Array.from({ length: 60 }, (_, i) => 0.2 * (i + 1))
const [aft, fore] = loading.riderRange

const grid = best(() => {
  for (const speed of speeds) {
    let least = Number.POSITIVE_INFINITY
    for (let i = 0; i < 40; i++)
      least = Math.min(least, dragAt(model, speed, { riderAt: aft + ((fore - aft) * i) / 39 }).drag)
  }
}, 5)
const quick = best(() => void dragCurve(model, speeds), 30)
line('60 speeds, 40 rider places tried at each', grid, grid, 'itself')
line('60 speeds, best rider place by search', quick, grid, 'the 40 places')
line(
  '60 speeds, rider fixed',
  best(() => void dragCurve(model, speeds, { riderAt: 0.95 }), 30),
  grid,
  'the 40 places',
)
line(
  'one-off work for a hull and its loading',
  best(() => void prepareDrag(spec, loading, conditions), 30),
  quick,
  'the curve',
)
const drag = pchip([0, ...speeds], [0, ...dragCurve(model, speeds).map((p) => p.drag)])
line(
  'run up to speed, 20 ms steps',
  best(
    () =>
      void runUp(
        model,
        (V) => 400 - 12 * V,
        (V) => cubicAt(drag, V),
      ),
    20,
  ),
  quick,
  'the curve',
)
