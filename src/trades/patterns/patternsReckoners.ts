/** Handbook questions of flat patterns. */
import type { Reckoner } from '../../base/answers/reckoner.ts'
import { pipeReckoners } from './patternsReckonersPipes.ts'
import { sheetReckoners } from './patternsReckonersSheet.ts'

export const patternReckoners: readonly Reckoner[] = [...pipeReckoners, ...sheetReckoners]
