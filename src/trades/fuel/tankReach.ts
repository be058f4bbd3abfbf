/**
 * How much fuel lies below a place in a tank, in any lean: what a pick-up cannot reach, and the fill at which a vent is met.
 * The volume of the tank's closed mesh below a plane is exact (physics/solid/below.ts).
 */
import { type TankShape, tankMeshes } from '../../hull/aboard/liquids.ts'
import { addBelow, type ClipBody, clipBody, SUMS, VOLUME } from '../../physics/solid/below.ts'
import { solidProperties } from '../../physics/solid/integrals.ts'
import { boundsOf, pointOf, type Vec3 } from '../../physics/solid/mesh.ts'
import { type FuelState, liquidFrame } from './fuelStates.ts'

/** A tank's inside, one body a cell, in axes from the middle of its floor. */
export interface TankBody {
  cells: { body: ClipBody; middle: number; volume: number }[]
  /** m³ all told */
  capacity: number
  /** m */
  height: number
  /** half its length and width, m */
  half: readonly [number, number]
}

const origin: Vec3 = [0, 0, 0]

export function tankBody(shape: TankShape): TankBody {
  const cells = tankMeshes(shape, origin).map((mesh) => {
    const { low, high } = boundsOf(mesh)
    return {
      body: clipBody(mesh),
      middle: (low[1] + high[1]) / 2,
      volume: solidProperties(mesh).volume,
      low,
      high,
    }
  })
  const reach = (k: 0 | 1 | 2) => Math.max(...cells.map((c) => c.high[k]))
  return {
    cells,
    capacity: cells.reduce((v, c) => v + c.volume, 0),
    height: reach(2),
    half: [reach(0), reach(1)],
  }
}

const sums = new Float64Array(SUMS)

/** m³ below the level surface through a place given in each cell from its middle (m), in a state; summed over the cells. */
export function volumeBelow(tank: TankBody, at: Vec3, state: FuelState): number {
  const { frame } = liquidFrame(state)
  let volume = 0
  for (const { body, middle } of tank.cells) {
    sums.fill(0)
    addBelow(body, frame, frame.nx * at[0] + frame.ny * (at[1] + middle) + frame.nz * at[2], sums)
    volume += sums[VOLUME]!
  }
  return volume
}

/** Share of the tank at which the cell that is met first has its liquid at a place, when all cells are filled alike; 0 to 1. */
export function shareAt(tank: TankBody, at: Vec3, state: FuelState): number {
  const { frame } = liquidFrame(state)
  let least = 1
  for (const { body, middle, volume } of tank.cells) {
    sums.fill(0)
    addBelow(body, frame, frame.nx * at[0] + frame.ny * (at[1] + middle) + frame.nz * at[2], sums)
    least = Math.min(least, sums[VOLUME]! / volume)
  }
  return Math.max(0, least)
}

/** m³ that a weighted hose leaves: what lies below a mouth held `clearance` (m) over the lowest corner, in a state. */
export function leftByWeight(tank: TankBody, clearance: number, state: FuelState): number {
  const { frame } = liquidFrame(state)
  let volume = 0
  for (const { body } of tank.cells) {
    const { mesh } = body
    let low = Number.POSITIVE_INFINITY
    for (let i = 0; i < mesh.points.length / 3; i++) {
      const [x, y, z] = pointOf(mesh, i)
      low = Math.min(low, frame.nx * x + frame.ny * y + frame.nz * z)
    }
    sums.fill(0)
    addBelow(body, frame, low + clearance, sums)
    volume += sums[VOLUME]!
  }
  return volume
}

/** Height along the apparent gravity of the surface of a volume (m³, all cells alike) in a state, m from the floor's middle; by halving. */
export function surfaceAt(tank: TankBody, volume: number, state: FuelState): number {
  const { frame } = liquidFrame(state)
  const cell = tank.cells[0]!
  const want = (volume / tank.capacity) * cell.volume
  const reach = tank.half[0] + tank.half[1] + tank.height
  let low = -reach
  let high = reach
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2
    sums.fill(0)
    addBelow(cell.body, frame, middle + frame.ny * cell.middle, sums)
    if (sums[VOLUME]! < want) low = middle
    else high = middle
  }
  return (low + high) / 2
}
