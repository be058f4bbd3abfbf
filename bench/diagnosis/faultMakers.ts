/** The faults of a simulated session, drawn by lot. */
import type { Random } from '../../src/base/numerics/random.ts'
import type { Craft } from '../../src/craft/index.ts'
import { craftMakers } from './craftMakers.ts'
import { engineMakers } from './engineMakers.ts'
import { fuelMakers } from './fuelMakers.ts'
import type { Fault } from './hidden.ts'
import { pick, type Weighed } from './makers.ts'

/** Weight and maker of every fault a session may have. */
const makers: readonly Weighed[] = [...engineMakers, ...fuelMakers, ...craftMakers]

/** Faults of a session: one in six has two, one in twelve three. */
export function drawFaults(rng: Random, craft: Craft): Fault[] {
  const u = rng.next()
  const count = u < 1 / 12 ? 3 : u < 1 / 12 + 1 / 6 ? 2 : 1
  const out: Fault[] = []
  for (let tries = 0; out.length < count && tries < 50; tries++) {
    const f = pick(rng, makers)(rng, craft)
    if (!f || out.some((o) => o.cause === f.cause)) continue
    if ((count > 1 && f.cause === 'as-designed') || (out.length > 0 && f.cause === 'as-designed')) continue
    out.push(f)
  }
  return out
}
