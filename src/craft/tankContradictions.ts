/** What in the tanks of a craft file contradicts something else in it: more liquid than they hold, liquid counted twice. */
import { formatQuantity } from '../base/units/format.ts'
import { type Contradiction, failing, shown, type Test } from './contradiction.ts'
import type { Craft } from './schema/craftSchema.ts'
import { countedTwice, tankCapacity, tankLiquid } from './tankRoom.ts'

const litres = (v: number) => formatQuantity(v, 'volume', 'L', 3)

export function inTanks(craft: Craft): Contradiction[] {
  const { tanks, hull, weights } = craft
  const found: Contradiction[] = []
  for (const [i, t] of tanks.entries()) {
    const most = tankCapacity(t)
    const tests: Test[] = []
    if (t.liquid) {
      const { value } = t.liquid
      tests.push([
        value > most * (1 + 1e-9),
        t.liquid,
        'L',
        `no more than the ${litres(most)} that ${t.name} holds`,
      ])
      tests.push([
        value <= most &&
          t.filled.source !== 'assumed' &&
          Math.abs(t.filled.value * most - value) > 0.02 * most,
        t.filled,
        '%',
        `one of the two, or both alike: ${shown(t.liquid, 'L')} fills ${Math.round((100 * value) / most)} % of the ${litres(most)} it holds`,
      ])
    }
    const { neck } = t
    if (neck?.bore)
      tests.push([
        neck.thread === 'outside' && neck.bore.value >= neck.overCrests.value,
        neck.bore,
        'mm',
        `less than the ${shown(neck.overCrests, 'mm')} over the crests outside it`,
      ])
    const [forward, port] = t.foot
    tests.push([
      forward.value > 1.3 * hull.length.value || forward.value < -0.3 * hull.length.value,
      forward,
      'm',
      `a place on or near the hull of ${shown(hull.length, 'm')}`,
    ])
    tests.push([
      Math.abs(port.value) > hull.beam.value,
      port,
      'm',
      `a place on or near the hull, ${shown(hull.beam, 'm')} wide`,
    ])
    found.push(...failing(tests))
    if (tanks.findIndex((other) => other.name === t.name) < i)
      found.push({
        path: `tanks.${i}.name`,
        found: `a second tank called ${t.name}`,
        expected: 'a name for each tank',
        severity: 'warning',
      })
  }
  for (const i of countedTwice(craft)) {
    const w = weights[i]!
    const mass = tanks.reduce((m, t) => m + t.density.value * tankLiquid(t).value, 0)
    found.push({
      path: `weights.${i}.mass`,
      found: `${w.name}, ${shown(w.mass, 'kg')}`,
      expected: `the empty tank only: ${formatQuantity(mass, 'mass', 'kg', 2)} of liquid is counted from the tanks already`,
      severity: 'warning',
    })
  }
  return found
}
