/** Inputs that several reckoners of the engine share. */
import type { Port } from '../../answers/reckoner.ts'

const length = (name: string, says: string, min: number, max: number): Port => ({
  name,
  says,
  kind: 'length',
  unit: 'mm',
  min,
  max,
})
const degree = Math.PI / 180

export const port = {
  bore: length('bore', 'of the cylinder', 0.015, 0.12),
  stroke: length('stroke', 'from top to bottom dead centre', 0.01, 0.12),
  rod: length('rod', 'between the centres of both eyes; about 1.93 times the stroke', 0.015, 0.3),
  rpm: { name: 'rpm', says: 'engine speed', kind: 'rotation', unit: 'rpm', min: 500 / 60, max: 25000 / 60 },
  swept: {
    name: 'swept',
    says: 'swept volume of all cylinders',
    kind: 'volume',
    unit: 'cm³',
    min: 5e-6,
    max: 2e-3,
  },
  exhaustOpens: {
    name: 'exhaustOpens',
    says: 'exhaust opens, after top dead centre',
    kind: 'angle',
    unit: 'deg',
    min: 70 * degree,
    max: 130 * degree,
  },
} as const satisfies Record<string, Port>

/** A rod that cannot reach round the crank is named here once. */
export function checkRod(stroke: number, rod: number): void {
  if (rod <= 0.75 * stroke)
    throw new RangeError(
      `rod: ${(rod * 1000).toFixed(1)} mm is too short for a stroke of ${(stroke * 1000).toFixed(1)} mm`,
    )
}
