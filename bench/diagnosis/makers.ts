/** What makers of faults share: how one comes about, drawn by lot. */
import type { Random } from '../../src/base/numerics/random.ts'
import type { Craft } from '../../src/craft/index.ts'
import type { EngineState, Fault, Hidden } from './hidden.ts'

export type Maker = (rng: Random, craft: Craft) => Fault | undefined

/** Weight and maker of a fault. */
export type Weighed = readonly [number, Maker]

/** One of a list by its weight. */
export const pick = <T>(rng: Random, list: readonly (readonly [number, T])[]): T => {
  let u = rng.next() * list.reduce((a, [w]) => a + w, 0)
  for (const [w, x] of list) {
    u -= w
    if (u <= 0) return x
  }
  return list.at(-1)![1]
}
/** Some engine. */
export const some = (rng: Random, h: Hidden) =>
  h.engines[Math.min(h.engines.length - 1, Math.floor(rng.next() * h.engines.length))]!
export const all = (h: Hidden, f: (e: EngineState) => void) => h.engines.forEach(f)
