/** Pump map against the full strip model: what a point and a change of pitch cost, and how far they differ. */
import { solveJet } from '../src/trades/jet/jet.ts'
import { referenceJet } from '../src/trades/jet/jetReference.ts'
import { buildPumpMap, jetPoint } from '../src/trades/jet/pumpMap.ts'
import { best, line } from './best.ts'

const spec = referenceJet()
const map = buildPumpMap(spec)
const steep = referenceJet()
let step = 0
const build = best(() => {
  // another pitch each time, as a slider would give
  steep.rotor.pitchLeading = steep.rotor.pitchTrailing = 0.09 + 1e-4 * (step++ % 50)
  buildPumpMap(steep)
}, 60)

const points: [string, number, number][] = [
  ['tied up, wetted', 80, 0],
  ['under way', 95, 8],
  ['cavitating', 110, 0],
  ['choked', 135, 0],
]
const repeat = 200
for (const [name, n, V] of points) {
  const full = best(() => solveJet(spec, n, V), 60)
  const fast =
    best(() => {
      for (let i = 0; i < repeat; i++) jetPoint(map, spec, n, V)
    }) / repeat
  const off = 100 * Math.abs(jetPoint(map, spec, n, V).T / solveJet(spec, n, V).T - 1)
  line(`${name}: full model`, full, full, 'itself')
  line(`${name}: map (torque differs ${off.toFixed(4)} %)`, fast, full, 'the full model')
}
line(
  'building the map',
  build,
  best(() => solveJet(spec, 80, 0), 60),
  'one point of the full model',
)
