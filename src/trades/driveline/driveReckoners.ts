import type { Reckoner } from '../../base/answers/reckoner.ts'
import { jointReckoners } from './jointReckoners.ts'
import { lineReckoners } from './lineReckoners.ts'

/** Every handbook question of the drive line. */
export const driveReckoners: readonly Reckoner[] = [...jointReckoners, ...lineReckoners]
