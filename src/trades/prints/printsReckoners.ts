import type { Reckoner } from '../../base/answers/reckoner.ts'
import { sealReckoners } from './sealReckoners.ts'
import { threadReckoners } from './threadReckoners.ts'

/** Every handbook question of printed parts: threads, seals, reach. */
export const printsReckoners: readonly Reckoner[] = [...threadReckoners, ...sealReckoners]
