/** The lines of a craft's own hull mesh that its sketch draws: silhouette, plan, chine, sections. */
import type { Craft } from '../../craft/index.ts'
import { stationFromPoints } from '../../hull/lines/stations.ts'
import { hullMeshFromCraft } from '../../hull/mesh/hullFromCraft.ts'
import { halfOutline, thinned } from '../../physics/solid/halfOutline.ts'
import { boundsOf, type Mesh } from '../../physics/solid/mesh.ts'
import { cutLines, cutLoops } from '../../physics/solid/section.ts'
import { stationsOf } from '../../trades/drag/dragForm.ts'
import { hullSpecFromCraft } from '../../trades/drag/dragFromCraft.ts'

export interface CraftLines {
  length: number
  beam: number
  /** keel to the highest of the deck where it is widest */
  depth: number
  /** x0, v0, x1, v1 …, from the transom forward */
  keel: number[]
  deck: number[]
  chine: number[]
  deckHalf: number[]
  chineHalf: number[]
  widest: number[][]
  transom: number[][]
}

/** sections the lines are drawn through */
const count = 49

const lines = new WeakMap<Mesh, CraftLines>()

/** Lines of the craft's hull, whatever it was given as. Measures that make no hull are drawn as they stand. */
export function craftLines(craft: Craft): CraftLines {
  try {
    const { mesh } = hullMeshFromCraft(craft)
    let made = lines.get(mesh)
    if (!made) {
      made = fromMesh(mesh)
      lines.set(mesh, made)
    }
    return made
  } catch (error) {
    if (!(error instanceof RangeError)) throw error
    return fromMeasures(craft)
  }
}

function fromMesh(mesh: Mesh): CraftLines {
  const { low, high } = boundsOf(mesh)
  const length = high[0] - low[0]
  const beam = high[1] - low[1]
  const inset = 1e-3 * length
  const made: CraftLines = {
    length,
    beam,
    depth: 0,
    keel: [],
    deck: [],
    chine: [],
    deckHalf: [],
    chineHalf: [],
    widest: [],
    transom: [],
  }
  let widest = { half: 0, x: low[0] + inset }
  for (let i = 0; i < count; i++) {
    const part = i / (count - 1)
    const x = low[0] + inset + (length - 2 * inset) * part
    // drawn where it stands in for: the outermost sections are cut just inside the ends
    const drawn = low[0] + length * part
    const cut = cutLines(mesh, [1, 0, 0], x)
    let bottom = Number.POSITIVE_INFINITY
    let top = Number.NEGATIVE_INFINITY
    let half = 0
    for (let k = 0; k < cut.length; k += 3) {
      half = Math.max(half, Math.abs(cut[k + 1]!))
      bottom = Math.min(bottom, cut[k + 2]!)
      top = Math.max(top, cut[k + 2]!)
    }
    if (!(top > bottom)) continue
    made.keel.push(drawn, bottom)
    made.deck.push(drawn, top)
    made.deckHalf.push(drawn, half)
    if (half > widest.half + 1e-6) widest = { half, x }
    const corner = chineAt(mesh, x, beam)
    if (corner) {
      made.chine.push(drawn, corner[1])
      made.chineHalf.push(drawn, corner[0])
    }
  }
  // a corner found here and there is no chine
  if (made.chine.length < 0.8 * made.keel.length) {
    made.chine = []
    made.chineHalf = []
  }
  made.widest = ringsAt(mesh, widest.x)
  made.transom = ringsAt(mesh, low[0] + inset)
  const heights = made.widest.flatMap((r) => r.filter((_, i) => i % 2 === 1))
  made.depth = Math.max(...heights) - Math.min(...heights)
  return made
}

/** The corner between bottom and side, out and up; undefined in a round bilge or where the section is not one ring. */
function chineAt(mesh: Mesh, x: number, beam: number): readonly [number, number] | undefined {
  const outline = halfOutline(mesh, x)
  if (!outline || outline.length < 3) return undefined
  const points = thinned(outline, 1e-3 * beam)
  if (points.length < 3) return undefined
  const { bottom, side } = stationFromPoints(x, points)
  return side.length > 0 ? bottom.at(-1) : undefined
}

const ringsAt = (mesh: Mesh, x: number): number[][] =>
  cutLoops(cutLines(mesh, [1, 0, 0], x)).map((loop) => Array.from(loop).filter((_, i) => i % 3 !== 0))

/** Keel, chine and deck edge as the few numbers give them, for measures that close to no solid. */
function fromMeasures(craft: Craft): CraftLines {
  const spec = hullSpecFromCraft(craft)
  const s = stationsOf(spec)
  const pairs = (a: ArrayLike<number>, b: ArrayLike<number>) => Array.from(a).flatMap((v, i) => [v, b[i]!])
  const ring = (i: number): number[] => {
    const port = [s.half[i]!, s.chine[i]!, s.edge[i]!, s.deck[i]!]
    const starboard = [-s.edge[i]!, s.deck[i]!, -s.half[i]!, s.chine[i]!]
    return [0, s.keel[i]!, ...port, ...starboard]
  }
  const widest = s.edge.reduce((best, h, i) => (h > s.edge[best]! ? i : best), 0)
  return {
    length: spec.length,
    beam: 2 * s.edge[widest]!,
    depth: spec.depth,
    keel: pairs(s.x, s.keel),
    deck: pairs(s.x, s.deck),
    chine: pairs(s.x, s.chine),
    deckHalf: pairs(s.x, s.edge),
    chineHalf: pairs(s.x, s.half),
    widest: [ring(widest)],
    transom: [ring(0)],
  }
}
