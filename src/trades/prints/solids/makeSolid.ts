/**
 * An order made into closed bodies, corrected for the printer, cut where the bed is too small, with what its mesh measures: volume, size, thinnest
 * wall, a section, and for an impeller the angles a protractor reads on it. Lengths m, angles rad.
 */
import type { SolidMesh, SolidOrder } from '../../../base/answers/madePart.ts'
import { solidProperties } from '../../../physics/solid/integrals.ts'
import { boundsOf } from '../../../physics/solid/mesh.ts'
import { splitForBed } from '../../../shapes/solid/bedSplit.ts'
import { atWorkbench, type Rings, type Solid, type Workbench } from '../../../shapes/solid/kernel.ts'
import { readBlade } from '../../../shapes/solid/protractor.ts'
import { thinWall } from '../../../shapes/solid/thinWall.ts'
import { axialLength, rotorPlace } from './impellerSolid.ts'
import { type Given, givenOf } from './solidShape.ts'
import { shapeOf } from './solidShapes.ts'

export interface SolidPrinting {
  /** how far facets may stay inside the curve, m; 0.03 mm where left out, coarser for a quick look */
  chord?: number
  /** along, across, up; m; not cut where left out */
  bed?: readonly [number, number, number]
  /** as measured over as drawn, 1 where left out */
  scale?: number
  /** the first layers bulge by this much, m, and are drawn in */
  foot?: number
  /** false for a body that is only looked at: thin walls are not sought, `wall` is no number, and no protractor is held to blades */
  walls?: boolean
}

export interface MadeBody {
  name: string
  mesh: SolidMesh
  /** m³, as it comes out of the printer */
  volume: number
  /** m, as drawn: where its middle of mass lies */
  centroid: readonly [number, number, number]
  low: readonly [number, number, number]
  high: readonly [number, number, number]
  /** least wall that rays met, m */
  wall: number
  /** outlines cut by the plane through x and z, m */
  section: Rings
  /** pinned to its neighbours by so many dowels */
  dowels: number
}

/** A blade's angle from the plane of rotation, read on the mesh near its edges at one radius. */
export interface MeasuredBlade {
  radius: number
  /** near the leading and the trailing edge, rad, and what was ordered there */
  read: readonly [number, number]
  ordered: readonly [number, number]
  /** across the blade in the middle of its length, m */
  thickness: number
  /** 1 for a right-hand screw, -1 for a left-hand one */
  hand: 1 | -1
}

export interface MadeSolid {
  bodies: readonly MadeBody[]
  measured?: readonly MeasuredBlade[]
  /** of a rotor: how far its mass is off its axis times its volume, m⁴; times the density it is the unbalance in kg m */
  offCentre?: number
}

/** chord error at print quality, m */
const printQuality = 0.03e-3
/** layers that bulge, m */
const footHigh = 0.4e-3

/** Draws the first layers in by the printer's foot. */
function footed(b: Workbench, solid: Solid, foot: number): Solid {
  if (!(foot > 1e-6)) return solid
  const low = solid.boundingBox().min[2]
  const outline = b.level(solid, low + 1e-5)
  const inner = b.widened(outline, -foot)
  if (inner.length === 0) return solid
  const rim = b.pulled([...b.widened(outline, foot), ...inner], footHigh + 1e-3, low - 1e-3)
  return b.cut(solid, rim)
}

function measureBody(
  b: Workbench,
  name: string,
  solid: Solid,
  dowels: number,
  { scale = 1, walls = true }: SolidPrinting,
): MadeBody {
  const mesh = b.mesh(solid)
  const points = { points: mesh.corners, triangles: mesh.triangles }
  const { volume, centroid } = solidProperties(points)
  const { low, high } = boundsOf(points)
  const wall = walls ? thinWall(mesh, 150).wall : Number.NaN
  const section = b.level(b.turned(solid, -Math.PI / 2, 0, 0), 0)
  return { name, mesh, volume: volume * scale ** 3, centroid, low, high, wall, section, dowels }
}

/** The protractor held to an impeller at three radii. */
function measureBlades(b: Workbench, rotor: Solid, { n }: Given): MeasuredBlade[] {
  const given = n as Parameters<typeof rotorPlace>[0]
  const { tip, leading, trailing } = rotorPlace(given)
  const inner = Math.max(given.hub, given.hubOut) / 2 + given.fillet
  const L = axialLength(given)
  return [0.15, 0.5, 0.85].flatMap((part) => {
    const radius = inner + part * (tip - inner)
    // clear of the nose and of the blunt end, where both faces are not the blade's
    const off = Math.min(0.15 * L, given.root + given.nose)
    const [from, to] = [trailing + off, leading - off]
    const read = readBlade(b, rotor, radius, from, to)
    if (!read) return []
    const pitchAt = (z: number) => {
      const along = (leading - z) / L
      // pitch grows evenly with the angle walked; the way along goes with its square
      const { pitch: p1, pitchOut: p2 } = given
      return Math.sqrt(p1 * p1 + (p2 * p2 - p1 * p1) * along)
    }
    const beta = (z: number) => Math.atan2(pitchAt(z), 2 * Math.PI * radius)
    return [
      {
        radius,
        read: [read.beta[1], read.beta[0]] as const,
        ordered: [beta(read.z[1]), beta(read.z[0])] as const,
        thickness: read.thickness,
        hand: read.hand,
      },
    ]
  })
}

/** Makes an order. RangeErrors name the value that cannot be. `tell` hears the part done and may throw to stop. */
export function makeSolid(
  order: SolidOrder,
  printing: SolidPrinting = {},
  tell: (part: number, says: string) => void = () => {},
): Promise<MadeSolid> {
  const shape = shapeOf(order.shape)
  const given = givenOf(shape, order)
  const { chord = printQuality, bed, scale = 1, foot = 0, walls = true } = printing
  if (!(scale >= 0.9 && scale <= 1.1)) throw new RangeError(`scale: ${scale} is outside 0.9 to 1.1`)
  return atWorkbench(chord, (b) => {
    tell(0.05, 'the kernel is loaded')
    const built = shape.build(b, given)
    tell(0.5, 'built')
    const rotor = order.shape === 'impeller' ? built[0] : undefined
    const measured = rotor && walls ? measureBlades(b, rotor.solid, given) : undefined
    const bodies: MadeBody[] = []
    built.forEach(({ name, solid }, i) => {
      const drawn = footed(b, scale === 1 ? solid : solid.scale(1 / scale), foot)
      const pieces = bed ? splitForBed(b, drawn, bed) : [{ solid: drawn, dowels: 0 }]
      pieces.forEach((piece, k) => {
        const its = pieces.length > 1 ? `${name}, piece ${k + 1} of ${pieces.length}` : name
        bodies.push(measureBody(b, its, piece.solid, piece.dowels, printing))
      })
      tell(0.5 + (0.4 * (i + 1)) / built.length, name)
    })
    if (!rotor || bodies.length !== 1) return { bodies, ...(measured ? { measured } : {}) }
    const { centroid, volume } = bodies[0]!
    return {
      bodies,
      ...(measured ? { measured } : {}),
      offCentre: volume * Math.hypot(centroid[0], centroid[1]),
    }
  })
}
