/**
 * Do the engines hang on the way up? They bog where their curve has a valley: the impeller meets it there at a lower steady speed
 * than the one above the valley, or takes nearly all of it. A load that simply meets the engines at the end of their climb is no bog,
 * however low that is. (Several roots of one torque balance, and which is reached from idle: shaftRoots.ts.)
 */
import { jetPoint } from '../../trades/jet/pumpMap.ts'
import { idleOf, type Unit, unitRoots } from './propulsionModel.ts'
import { impellerDrive } from './shaft.ts'

/** share of the torque from which the engines hardly climb any more: common practice, no source */
export const hardlyClimbs = 0.95

export interface Bog {
  /** most of the engines' torque that the impeller takes in a valley below where they settle; NaN when there is no valley */
  ratio: number
  /** where, engine rotation, rev/s */
  rotation: number
  /** the impeller holds them below a valley that they would run on beyond */
  held: boolean
}

const none: Bog = { ratio: Number.NaN, rotation: Number.NaN, held: false }

/** The worst valley of one unit tied up at full throttle. */
export function bogOf(unit: Unit): Bog {
  if (!unit.shaft.engines.some((e) => e.running)) return none
  const stable = unitRoots(unit, 0).filter((r) => r.stable)
  const reached = stable.find((r) => r.reachable)
  if (!reached) return none
  const above = stable.filter((r) => r.rotation > reached.rotation).at(-1)
  const { ratio } = unit.shaft
  if (above) {
    // between the two the load is above the engines: the crest is what the throttle would have to carry them over
    const crest = crestOf(unit, reached.rotation, above.rotation)
    return { ratio: crest.share, rotation: reached.rotation * ratio, held: true }
  }
  const valley = valleyOf(unit, idleOf(unit), reached.rotation)
  return valley ? { ratio: valley.share, rotation: valley.rotation * ratio, held: false } : none
}

interface Share {
  share: number
  rotation: number
}

const points = 60

function sharesOf(unit: Unit, from: number, to: number): Share[] {
  return Array.from({ length: points + 1 }, (_, i) => {
    const n = from + ((to - from) * i) / points
    const drive = impellerDrive(unit.shaft, n)
    return { rotation: n, share: drive > 0 ? jetPoint(unit.map, unit.spec, n, 0).T / drive : Number.NaN }
  }).filter((s) => Number.isFinite(s.share))
}

function crestOf(unit: Unit, from: number, to: number): Share {
  return sharesOf(unit, from, to).reduce((a, b) => (b.share > a.share ? b : a), {
    share: 1,
    rotation: from,
  })
}

/** The highest crest of the share that falls again before the engines settle, by more than the scan's own grain. */
function valleyOf(unit: Unit, from: number, to: number): Share | undefined {
  const shares = sharesOf(unit, from, to)
  let worst: Share | undefined
  shares.forEach((s, i) => {
    const least = Math.min(...shares.slice(i + 1).map((x) => x.share))
    if (least < s.share - 0.005 && !(worst && worst.share >= s.share)) worst = s
  })
  return worst
}
