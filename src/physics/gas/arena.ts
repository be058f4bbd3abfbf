/**
 * The memory of a set of ducts: one Float64Array, 16 numbers a slot, a slot a cell, one ghost slot at either end of each
 * duct. The kernel in duct.ts steps it; nothing is allocated after `createDucts`.
 */

/** What a duct is made of, as plain arrays: one more face than cells. */
export interface DuctShape {
  /** length of every cell, m */
  dx: number
  /** cross-section at the faces, m2 */
  faceArea: ArrayLike<number>
  /** cell volume over cell length, m2 */
  cellArea: ArrayLike<number>
  /** hydraulic diameter of each cell, m; default: that of a round tube */
  diameter?: ArrayLike<number>
  /** false for a duct without friction and wall heat */
  viscous?: boolean
  /** lowest friction factor (Fanning), from roughness; default 0.004 */
  roughFriction?: number
  /** friction factor added cell by cell for bends; default none */
  bendFriction?: ArrayLike<number>
  /** factor C of Nu = C Re^3/4; default 0.07; 0 switches wall heat off altogether */
  heatFactor?: number
}

/**
 * Places within a slot, SI: state, shape of the cell and of its left face, wall.
 * The right face of a duct's last cell sits in the ghost slot behind it.
 */
export const field = {
  RHO: 0,
  U: 1,
  P: 2,
  /** mass fraction of fresh charge */
  Y: 3,
  /** 1/density */
  V: 4,
  /** area of the left face */
  FACE: 5,
  /** 1 / (cell volume per length); 0 in ghosts, which is what keeps them out of the update */
  INV_AREA: 6,
  /** (right face - left face) / (cell volume per length) */
  TAPER: 7,
  /** wall temperature */
  WALL: 8,
  /** friction rate 2 f / D, 1/m */
  DRAG: 9,
  /** wall heat rate 4 h / (D c_v), kg/(m3 s) */
  HEAT: 10,
  /** sums over time of HEAT dt and HEAT T dt, from which the wall temperature is found */
  SUM_H: 11,
  SUM_HT: 12,
  DIAMETER: 13,
  /** friction factor added for bends */
  BEND: 14,
} as const

/** cells a duct may have */
export const mostCells = 4000

/** Index of a slot's first number in `cell`. */
export function at(slot: number): number {
  return slot << 4
}

/** A set of ducts that share one gas, one arena and one time step. */
export interface Ducts {
  readonly count: number
  readonly gamma: number
  /** gas constant, J/(kg K) */
  readonly gasConstant: number
  /** slot of the first and of the last cell of each duct */
  readonly first: Int32Array
  readonly last: Int32Array
  readonly viscous: Uint8Array
  /** everything below is a view into this one block */
  readonly arena: Float64Array
  readonly cell: Float64Array
  readonly dx: Float64Array
  readonly roughFriction: Float64Array
  readonly heatFactor: Float64Array
  /** fastest wave seen in each duct during the last sweep, m/s */
  readonly fastest: Float64Array
  /** predicted face states of the end cells: 8 a duct, (rho, u, p, Y) left then right */
  readonly end: Float64Array
  /** boundary fluxes per unit area, set by the caller: 8 a duct, (mass, momentum, energy, fresh) left then right */
  readonly edge: Float64Array
}

/** Allocates the arena. gamma > 1, gasConstant in J/(kg K). Throws RangeError for a duct with no cells or no section. */
export function createDucts(shapes: readonly DuctShape[], gamma = 1.32, gasConstant = 295): Ducts {
  const count = shapes.length
  const first = new Int32Array(count)
  const last = new Int32Array(count)
  let slots = 0
  shapes.forEach((s, d) => {
    const n = s.cellArea.length
    if (n < 2) throw new RangeError(`ducts[${d}]: ${n} cells; at least 2 are needed`)
    if (n > mostCells) throw new RangeError(`ducts[${d}]: ${n} cells; at most ${mostCells} are taken`)
    if (!(s.dx > 0)) throw new RangeError(`ducts[${d}].dx: ${s.dx}; must be above 0`)
    if (s.faceArea.length !== n + 1)
      throw new RangeError(`ducts[${d}].faceArea: ${s.faceArea.length} faces for ${n} cells`)
    first[d] = slots + 1
    last[d] = slots + n
    slots += n + 2
  })
  const numbers = (slots + 1) << 4 // one slot to spare: the sweep looks one past the last ghost
  const arena = new Float64Array(numbers + count * 20)
  let used = 0
  const take = (n: number): Float64Array => arena.subarray(used, (used += n))
  const g: Ducts = {
    count,
    gamma,
    gasConstant,
    first,
    last,
    viscous: new Uint8Array(count),
    arena,
    cell: take(numbers),
    dx: take(count),
    roughFriction: take(count),
    heatFactor: take(count),
    fastest: take(count),
    end: take(8 * count),
    edge: take(8 * count),
  }
  for (let slot = 0; slot <= slots; slot++) setCell(g, slot, 1, 0, 101325, 0)
  for (let d = 0; d < count; d++) fillShape(g, d, shapes[d]!)
  return g
}

function fillShape(g: Ducts, d: number, s: DuctShape): void {
  const n = s.cellArea.length
  g.dx[d] = s.dx
  g.viscous[d] = s.viscous === false ? 0 : 1
  g.roughFriction[d] = s.roughFriction ?? 0.004
  g.heatFactor[d] = s.heatFactor ?? 0.07
  for (let c = 0; c <= n; c++) {
    const b = at(g.first[d]! + c)
    const face = s.faceArea[c]!
    if (!(face > 0)) throw new RangeError(`ducts[${d}].faceArea[${c}]: ${face}; must be above 0`)
    g.cell[b + field.FACE] = face
    if (c === n) continue
    const area = s.cellArea[c]!
    if (!(area > 0)) throw new RangeError(`ducts[${d}].cellArea[${c}]: ${area}; must be above 0`)
    g.cell[b + field.INV_AREA] = 1 / area
    g.cell[b + field.TAPER] = (s.faceArea[c + 1]! - face) / area
    g.cell[b + field.DIAMETER] = s.diameter?.[c] ?? Math.sqrt((4 * area) / Math.PI)
    g.cell[b + field.BEND] = s.bendFriction?.[c] ?? 0
    g.cell[b + field.WALL] = 300
    setCell(g, g.first[d]! + c, 101325 / (g.gasConstant * 300), 0, 101325, 0)
  }
}

/** Sets the state of one slot: density kg/m3, velocity m/s, pressure Pa, fresh fraction. */
export function setCell(g: Ducts, slot: number, rho: number, u: number, p: number, y: number): void {
  const b = at(slot)
  g.cell[b + field.RHO] = rho
  g.cell[b + field.U] = u
  g.cell[b + field.P] = p
  g.cell[b + field.Y] = y
  g.cell[b + field.V] = 1 / rho
}
