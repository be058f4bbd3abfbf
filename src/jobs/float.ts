import { FloatCalledOff, type FloatReport, floatReport } from '../hull/floatReport.ts'
import type { Mesh } from '../solid/mesh.ts'
import { Cancelled, defineJob } from './job.ts'
import { craftOf } from './pipeSearch.ts'

export interface FloatOrder {
  /** the craft file */
  text: string
  /** tried values by path, SI */
  tried?: Readonly<Record<string, number | string | boolean>>
  /** the hull as a closed mesh in body axes, m, in place of the file's own measures */
  mesh?: Mesh
}

/** How the craft floats: loads, righting arms, rider's room, leak, foam, findings. */
export const floatJob = defineJob<FloatOrder, FloatReport>('float', (order, context) => {
  try {
    return floatReport(
      craftOf(order),
      order.mesh,
      (part, says) => context.progress(part, says),
      () => context.cancelled(),
    )
  } catch (error) {
    throw error instanceof FloatCalledOff ? new Cancelled() : error
  }
})
