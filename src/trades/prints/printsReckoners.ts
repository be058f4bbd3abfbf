import type { Reckoner } from '../../base/answers/reckoner.ts'
import { partReckoners } from './partReckoners.ts'
import { sealReckoners } from './sealReckoners.ts'
import { threadReckoners } from './threadReckoners.ts'

/** Every handbook question of printed parts: threads, seals, reach, and what a part bears. */
export const printsReckoners: readonly Reckoner[] = [...threadReckoners, ...sealReckoners, ...partReckoners]
