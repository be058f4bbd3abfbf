/** Printed solids at print quality: a threaded cap within 0.3 s, an impeller at 0.03 mm within 1 s; the kernel's own start apart. */

import { makeSolid } from '../src/trades/prints/solids/makeSolid.ts'
import { threadOrder } from '../src/trades/prints/solids/threadParts.ts'
import { metricThread } from '../src/trades/prints/threadForms.ts'
import { line } from './best.ts'

async function timed(shape: string, values: Record<string, number>): Promise<number> {
  let least = Number.POSITIVE_INFINITY
  for (let i = 0; i < 3; i++) {
    const from = performance.now()
    await makeSolid({ shape, values }, { chord: 0.03e-3 })
    least = Math.min(least, performance.now() - from)
  }
  return least
}

const before = performance.now()
await makeSolid({ shape: 'printer gauge', values: {} })
const start = performance.now() - before
line('kernel loaded and a first plain solid', start, 1000, 'a second')
const cap = threadOrder(metricThread(28e-3, 1.5e-3))
line('screw cap M28 × 1.5', await timed('screw cap', { ...cap, seat: 22e-3 }), 300, 'its target')
line('screw hatch, 110 mm', await timed('screw hatch', {}), 300, 'the target of a cap')
line('impeller, 120 mm, three blades', await timed('impeller', {}), 1000, 'its target')
