import { type Effect, effectsOf, leverPaths } from '../whole/breath/breathEffects.ts'
import { Cancelled, defineJob } from './job.ts'
import { craftOf, type PipeSearchOrder } from './pipeSearchJob.ts'

type LeversOrder = Pick<PipeSearchOrder, 'text' | 'tried' | 'engine'>

/** What a small move of each input does to the power peak of one two-stroke, the strongest first. */
export const breathLeversJob = defineJob<LeversOrder, Effect[]>('breath-levers', (order, context) => {
  const craft = craftOf(order)
  const found = effectsOf(craft, order.engine, leverPaths(craft, order.engine), {
    progress: (part, says) => context.progress(part, says),
    cancelled: () => context.cancelled(),
  })
  if (!found) throw new Cancelled()
  return found
})
