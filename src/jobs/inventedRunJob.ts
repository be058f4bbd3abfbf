import { type InventedOrder, inventedRun } from '../trades/sound/invented.ts'
import { defineJob } from './job.ts'

export interface InventedAnswer {
  samples: Float32Array
  rate: number
  /** what truly happened, s and engine index */
  events: { kind: string; time: number; engine: number }[]
}

/** A made-up recording of a craft's engines. */
export const inventedRunJob = defineJob('invented-run', (order: InventedOrder, context): InventedAnswer => {
  context.progress(0, 'Making up a run')
  const { samples, rate, script } = inventedRun(order)
  return { samples, rate, events: script.events }
})
