/** A part larger than the printer's bed, cut in pieces that are pinned together again. Dowels of 5 mm and their room: common practice, no source. */
import type { Rings, Solid, Workbench } from './kernel.ts'

type Three = readonly [number, number, number]

/** dowel radius, how deep it goes into each half, room on the radius, and wall it needs round it; m */
const dowel = { radius: 2.5e-3, deep: 8e-3, room: 0.1e-3, wall: 1.5e-3 }
/** no part is cut in more pieces than this */
const mostPieces = 12

export interface SplitPiece {
  solid: Solid
  /** holes for dowels in it */
  dowels: number
}

const sizeOf = (s: Solid): Three => {
  const { min, max } = s.boundingBox()
  return [max[0] - min[0], max[1] - min[1], max[2] - min[2]]
}

/** The two places furthest apart of an outline drawn in far enough for a dowel; none where it is too thin. */
function dowelPlaces(b: Workbench, outline: Rings): readonly (readonly [number, number])[] {
  const room = b.widened(outline, -(dowel.radius + dowel.wall)).flat()
  if (room.length === 0) return []
  const far = (from: readonly [number, number]) =>
    room.reduce((best, p) =>
      Math.hypot(p[0] - from[0], p[1] - from[1]) > Math.hypot(best[0] - from[0], best[1] - from[1])
        ? p
        : best,
    )
  const one = far(room[0]!)
  const two = far(one)
  const apart = Math.hypot(one[0] - two[0], one[1] - two[1])
  return apart > 4 * dowel.radius ? [one, two] : [one]
}

/** Turns the axis that is cut across upright, and back. */
const upright = (b: Workbench, s: Solid, axis: number, back: boolean): Solid => {
  const q = (back ? -1 : 1) * (Math.PI / 2)
  return axis === 0 ? b.turned(s, 0, -q, 0) : axis === 1 ? b.turned(s, q, 0, 0) : s
}

/** The part in pieces that each go on the bed (m), halved across their longest overlong side; itself where it fits. RangeError past a dozen pieces. */
export function splitForBed(b: Workbench, solid: Solid, bed: Three): readonly SplitPiece[] {
  const done: SplitPiece[] = []
  const open: SplitPiece[] = [{ solid, dowels: 0 }]
  while (open.length > 0) {
    const piece = open.pop()!
    const size = sizeOf(piece.solid)
    const over = size.map((s, i) => s / bed[i]!)
    const axis = over.indexOf(Math.max(...over))
    if (over[axis]! <= 1) {
      done.push(piece)
      continue
    }
    if (done.length + open.length + 2 > mostPieces)
      throw new RangeError(
        `bed: ${Math.round(1e3 * bed[axis]!)} mm, the part would come to more than ${mostPieces} pieces`,
      )
    const stood = upright(b, piece.solid, axis, false)
    const { min, max } = stood.boundingBox()
    const z = (min[2] + max[2]) / 2
    const places = dowelPlaces(b, b.level(stood, z))
    const holes = places.map(([x, y]) =>
      b.moved(b.bore(dowel.radius + dowel.room, 2 * dowel.deep, z - dowel.deep), x, y, 0),
    )
    const drilled = holes.length > 0 ? b.cut(stood, ...holes) : stood
    for (const half of b.parted(drilled, z))
      open.push({ solid: upright(b, half, axis, true), dowels: piece.dowels + holes.length })
  }
  return done
}
