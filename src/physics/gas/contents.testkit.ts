/** What a duct holds: for audits and tests. */
import { at, type Ducts, field } from './arena.ts'

/** Mass kg, energy J, fresh mass kg in duct d. */
export function contents(g: Ducts, d: number): { mass: number; energy: number; fresh: number } {
  let mass = 0
  let energy = 0
  let fresh = 0
  for (let i = g.first[d]!; i <= g.last[d]!; i++) {
    const b = at(i)
    const volume = g.dx[d]! / g.cell[b + field.INV_AREA]!
    const rho = g.cell[b + field.RHO]!
    const u = g.cell[b + field.U]!
    mass += rho * volume
    energy += (g.cell[b + field.P]! / (g.gamma - 1) + 0.5 * rho * u * u) * volume
    fresh += rho * g.cell[b + field.Y]! * volume
  }
  return { mass, energy, fresh }
}
