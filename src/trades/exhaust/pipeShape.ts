/**
 * A pipe by the few numbers a search turns, and back to cones. Diffuser diameters follow the horn law
 * D(x) = D1 exp[ln(Db/D1) (x/L)^k] (G. P. Blair, Design and Simulation of Two-Stroke Engines, 1996, the pipe
 * chapter; k 1.25 wide to 2 peaky, from memory). Tube sizes: outside diameters and walls of EN 10305-1, from memory.
 */
import type { Segment } from '../../physics/gas/ductMesh.ts'
import type { Room } from './exhaustTypes.ts'
import type { NamedSegment, Pipe } from './proportions.ts'

/** Metres; the duct in the cylinder comes before it and is not part of it. */
export interface PipeShape {
  /** bore at the flange; given by the cylinder */
  flange: number
  header: number
  headerEnd: number
  diffuser: number
  /** exponent of the horn law */
  horn: number
  belly: number
  bellyBore: number
  baffle: number
  stingerBore: number
  stinger: number
}

/** rad that the pipe turns through; laid on header and diffuser by their length */
const stages = [0.5, 0.333, 0.167] as const

/** Cones and tubes of a shape, flange to stinger; `duct` (m) is added to the tuned length. */
export function pipeOfShape(s: PipeShape, duct: number, bend = 0): Pipe {
  const curved = s.header + s.diffuser
  const turn = (length: number) => (bend > 0 ? { bend: (bend * length) / curved } : {})
  const segments: NamedSegment[] = [
    { name: 'header', length: s.header, d0: s.flange, d1: s.headerEnd, ...turn(s.header) },
  ]
  let at = 0
  let from = s.headerEnd
  stages.forEach((share, i) => {
    at = i === stages.length - 1 ? 1 : at + share
    const to = s.headerEnd * Math.exp(Math.log(s.bellyBore / s.headerEnd) * at ** s.horn)
    const length = share * s.diffuser
    segments.push({ name: `diffuser ${i + 1}`, length, d0: from, d1: to, ...turn(length) })
    from = to
  })
  segments.push({ name: 'belly', length: s.belly, d0: s.bellyBore, d1: s.bellyBore })
  segments.push({ name: 'baffle', length: s.baffle, d0: s.bellyBore, d1: s.stingerBore })
  return {
    segments,
    stinger: { bore: s.stingerBore, length: s.stinger },
    tunedLength: duct + segments.reduce((sum, x) => sum + x.length, 0),
  }
}

/** True for a shape that can be rolled: every length above nought, widening to the belly and narrowing after it. */
export function canBeMade(s: PipeShape): boolean {
  return (
    [s.header, s.diffuser, s.belly, s.baffle, s.stinger, s.stingerBore].every((x) => x > 0.004) &&
    s.headerEnd >= 0.9 * s.flange &&
    s.bellyBore > 1.15 * s.headerEnd &&
    s.stingerBore < 0.95 * s.headerEnd &&
    s.horn > 0.5 &&
    s.horn < 3.5 &&
    // an end cone over 60 degrees in all, or a diffuser over 30, is a plate rather than a cone
    (s.bellyBore - s.stingerBore) / s.baffle < 1.15 &&
    (s.bellyBore - s.headerEnd) / s.diffuser < 0.54
  )
}

/**
 * The nearest shape of a pipe made otherwise: header up to where it widens by more than two degrees in all, belly where
 * it is widest, the rest the baffle. Undefined for a pipe without a belly.
 */
export function shapeOfPipe(
  segments: readonly Segment[],
  stinger: { bore: number; length: number },
): PipeShape | undefined {
  if (segments.length < 3) return undefined
  const widest = Math.max(...segments.map((s) => Math.max(s.d0, s.d1)))
  const steep = (s: Segment) => s.d1 - s.d0 > 0.035 * s.length
  const first = segments.findIndex(steep)
  const bellyFrom = segments.findIndex((s) => s.d1 >= 0.97 * widest)
  if (first < 1 || bellyFrom < first) return undefined
  const bellyTo = segments.findLastIndex((s) => s.d0 >= 0.97 * widest && s.d1 >= 0.97 * widest)
  const sum = (from: number, to: number) => segments.slice(from, to).reduce((a, s) => a + s.length, 0)
  const header = segments.slice(0, first)
  const diffusers = segments.slice(first, bellyFrom + 1)
  const headerEnd = header[header.length - 1]!.d1
  const diffuser = sum(first, bellyFrom + 1)
  // horn exponent from the diameters at the joints, least squares through the origin of logarithms
  let top = 0
  let bottom = 0
  let at = 0
  for (const s of diffusers.slice(0, -1)) {
    at += s.length
    const x = Math.log(at / diffuser)
    const share = Math.log(s.d1 / headerEnd) / Math.log(widest / headerEnd)
    if (share > 0.01 && share < 0.99) {
      top += x * Math.log(share)
      bottom += x * x
    }
  }
  const lastBelly = Math.max(bellyTo, bellyFrom)
  const shape: PipeShape = {
    flange: segments[0]!.d0,
    header: sum(0, first),
    headerEnd,
    diffuser,
    horn: bottom > 0 ? Math.min(3, Math.max(0.7, top / bottom)) : 1.25,
    belly: Math.max(0.005, sum(bellyFrom + 1, lastBelly + 1)),
    bellyBore: widest,
    baffle: sum(lastBelly + 1, segments.length),
    stingerBore: stinger.bore,
    stinger: stinger.length,
  }
  return canBeMade(shape) ? shape : undefined
}

/** m, flange to the end of the stinger */
export function lengthOfPipe(pipe: Pipe): number {
  return pipe.segments.reduce((sum, s) => sum + s.length, 0) + pipe.stinger.length
}

/** How far a pipe stands out of its room, as a part; 0 when it fits. */
export function beyondRoom(pipe: Pipe, room: Room): number {
  const long = lengthOfPipe(pipe) / room.length - 1
  const wide = Math.max(...pipe.segments.map((s) => Math.max(s.d0, s.d1))) / room.diameter - 1
  return Math.max(0, long) + Math.max(0, wide)
}

const outsides = [12, 14, 15, 16, 18, 20, 22, 25, 28, 30, 32, 35, 38, 42] as const
const walls = [1, 1.5, 2] as const

/** Bores of tube that is sold, m, rising. */
export const tubeBores: readonly number[] = [
  ...new Set(outsides.flatMap((d) => walls.map((w) => (d - 2 * w) / 1000))),
].sort((a, b) => a - b)

/** The nearest bore of tube that is sold, m. */
export function stockBore(bore: number): number {
  return tubeBores.reduce((best, b) => (Math.abs(b - bore) < Math.abs(best - bore) ? b : best))
}

/** A shape in sizes that can be cut and bought: lengths to 1 mm, bores to 0.5 mm, the stinger from tube that is sold. */
export function makeable(s: PipeShape): PipeShape {
  const length = (x: number) => Math.max(1e-3, Math.round(x * 1000) / 1000)
  const bore = (x: number) => Math.round(x * 2000) / 2000
  return {
    flange: s.flange,
    header: length(s.header),
    headerEnd: bore(s.headerEnd),
    diffuser: length(s.diffuser),
    horn: s.horn,
    belly: length(s.belly),
    bellyBore: bore(s.bellyBore),
    baffle: length(s.baffle),
    stingerBore: stockBore(s.stingerBore),
    stinger: length(s.stinger),
  }
}

/** A pipe with every cone in lengths of whole millimetres and joints of half ones; the flange stays as it is. */
export function roundedPipe(pipe: Pipe): Pipe {
  const length = (x: number) => Math.max(1, Math.round(x * 1000)) / 1000
  const bore = (x: number) => Math.round(x * 2000) / 2000
  const segments = pipe.segments.map((s, i) => ({
    ...s,
    length: length(s.length),
    d0: i === 0 ? s.d0 : bore(s.d0),
    d1: bore(s.d1),
  }))
  const before = pipe.segments.reduce((sum, s) => sum + s.length, 0)
  const after = segments.reduce((sum, s) => sum + s.length, 0)
  return { ...pipe, segments, tunedLength: pipe.tunedLength + after - before }
}
