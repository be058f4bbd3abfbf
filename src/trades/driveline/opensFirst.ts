/**
 * Which link of the chain opens first, and what would then be heard: engines in front of it race without load, those behind it drive the jet
 * alone. Pure, for reading runs: an opening between the engines and one towards the jet differ by their place.
 */
import type { Range } from '../../base/answers/solved.ts'
import type { DriveAnswer, Part } from './driveAnswer.ts'
import type { DriveChain } from './driveLinks.ts'
import type { DriveSetting } from './driveSetting.ts'

/** What is heard when one link has let go. */
export interface Opened {
  /** craft path of the link, and its name */
  path: string
  name: string
  /** 0 to 1: how often it is the first of the chain to go */
  share: number
  where: 'between the engines' | 'towards the jet'
  /** indices under engines of those that run free, and of those that still drive the jet */
  free: readonly number[]
  driving: readonly number[]
  /** rev/s up to which the free ones race */
  races: number
  /** rev/s of the ones that drive on; absent where none does, or where no root was handed */
  drives?: Range
}

/** Every place of the chain that may open, likeliest first, by what the balance's roots say is then heard. */
export function opensFirst(chain: DriveChain, answer: DriveAnswer, setting: DriveSetting): Opened[] {
  return answer.inOrder.map((part) => openedAt(chain, part, setting)).sort((a, b) => b.share - a.share)
}

function openedAt(chain: DriveChain, part: Part, setting: DriveSetting): Opened {
  const running = (from: number, to: number) =>
    chain.engines
      .slice(from, to)
      .filter((e) => e.running)
      .map((e) => e.engine)
  const free = running(0, part.place + 1)
  const driving = running(part.place + 1, chain.engines.length)
  // the handed root is of all engines but one
  const known = driving.length > 0 && free.length === 1 ? setting.alone : undefined
  return {
    path: part.of.path,
    name: part.of.name,
    share: part.first,
    where: driving.length > 0 ? 'between the engines' : 'towards the jet',
    free,
    driving,
    races: setting.most,
    ...(known ? { drives: known } : {}),
  }
}
