import { type CraftFiles, giveFiles } from '../craft/index.ts'
import type { SolvedCurves } from '../trades/engine/enginesFromCraft.ts'
import { type Calibration, calibrate } from '../whole/calibrate/calibrate.ts'
import { trustedReadings, unfitted } from '../whole/calibrate/calibrateSays.ts'
import { craftLog } from '../whole/log/craftLog.ts'
import { MapStore } from '../whole/push/craftModel.ts'
import { solveBalance } from '../whole/push/solveBalance.ts'
import { defineJob } from './job.ts'
import { craftOf } from './pipeSearchJob.ts'

export interface CalibrateOrder {
  /** the craft file, what it names, and its log */
  text: string
  files?: CraftFiles
  log: string
  solved?: SolvedCurves
}

/** The models fitted to the runs since the last change; undefined where none left a reading. */
export const calibrateJob = defineJob<CalibrateOrder, Calibration | undefined>('calibrate', (order) => {
  const filed = craftOf(order)
  const readings = trustedReadings(craftLog(filed, order.log))
  if (readings.length === 0) return undefined
  const craft = unfitted(filed)
  if (order.files) giveFiles(craft, order.files)
  const setting = { maps: new MapStore(), ...(order.solved ? { solved: order.solved } : {}) }
  return calibrate(craft, solveBalance(craft, { ...setting, oneDead: false }), readings, setting)
})
