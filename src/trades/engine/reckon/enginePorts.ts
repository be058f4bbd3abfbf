/** Inputs that several reckoners of the engine share. */
import { cm3, degrees, mm, revsPerMinute } from '../../../base/answers/portMakers.ts'
import type { Port } from '../../../base/answers/reckoner.ts'

const degree = Math.PI / 180

export const port = {
  bore: mm('bore', 'of the cylinder', 0.015, 0.12),
  stroke: mm('stroke', 'from top to bottom dead centre', 0.01, 0.12),
  rod: mm('rod', 'between the centres of both eyes; about 1.93 times the stroke', 0.015, 0.3),
  rpm: revsPerMinute('rpm', 'engine speed', 500 / 60, 25000 / 60),
  swept: cm3('swept', 'swept volume of all cylinders', 5e-6, 2e-3),
  exhaustOpens: degrees('exhaustOpens', 'exhaust opens, after top dead centre', 70 * degree, 130 * degree),
} as const satisfies Record<string, Port>

/** A rod that cannot reach round the crank is named here once. */
export function checkRod(stroke: number, rod: number): void {
  if (rod <= 0.75 * stroke)
    throw new RangeError(
      `rod: ${(rod * 1000).toFixed(1)} mm is too short for a stroke of ${(stroke * 1000).toFixed(1)} mm`,
    )
}
