import { type CraftFiles, giveFiles } from '../craft/index.ts'
import { FloatCalledOff, type FloatReport, floatReport } from '../trades/float/floatReport.ts'
import { Cancelled, defineJob } from './job.ts'
import { craftOf } from './pipeSearchJob.ts'

export interface FloatOrder {
  /** the craft file */
  text: string
  /** tried values by path, SI */
  tried?: Readonly<Record<string, number | string | boolean>>
  /** what the craft names, tried or not, such as its hull mesh */
  files?: CraftFiles
}

/** How the craft floats: loads, righting arms, rider's room, leak, foam, findings. */
export const floatJob = defineJob<FloatOrder, FloatReport>('float', (order, context) => {
  try {
    const craft = craftOf(order)
    if (order.files) giveFiles(craft, order.files)
    return floatReport(
      craft,
      (part, says) => context.progress(part, says),
      () => context.cancelled(),
    )
  } catch (error) {
    throw error instanceof FloatCalledOff ? new Cancelled() : error
  }
})
