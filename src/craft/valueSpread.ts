import type { Kind } from '../base/units/kinds.ts'
import type { WrittenSource } from '../base/units/parse.ts'
import type { QuantitySpec } from './fields.ts'

/**
 * Half width of the likely range of a value written without ±: the greater of a part of the value and
 * a floor, SI. Common practice, no source: what a careful builder gets with tape, caliper, luggage scale
 * and phone; what makers' papers are usually off by; what a guess is worth. A value written without a
 * source counts as a guess.
 */
interface Spread {
  part: number
  floor: number
}
type Row = Readonly<Record<WrittenSource, Spread>>

const s = (part: number, floor = 0): Spread => ({ part, floor })
const fallback: Row = { measured: s(0.03), maker: s(0.05), guess: s(0.15) }

export const spreads: Readonly<Partial<Record<Kind, Row>>> = {
  length: { measured: s(0.002, 5e-5), maker: s(0.002, 5e-5), guess: s(0.1) },
  area: { measured: s(0.03), maker: s(0.02), guess: s(0.15) },
  volume: { measured: s(0.02), maker: s(0.01), guess: s(0.15) },
  mass: { measured: s(0.01, 0.05), maker: s(0.03), guess: s(0.1) },
  angle: {
    measured: s(0, Math.PI / 180),
    maker: s(0, Math.PI / 180),
    guess: s(0, (5 * Math.PI) / 180),
  },
  rotation: { measured: s(0.01), maker: s(0.02), guess: s(0.05) },
  temperature: { measured: s(0, 1), maker: s(0, 2), guess: s(0, 4) },
  pressure: { measured: s(0.02), maker: s(0.03), guess: s(0.15) },
  torque: { measured: s(0.05), maker: s(0.1), guess: s(0.2) },
  power: { measured: s(0.05), maker: s(0.1), guess: s(0.2) },
  ratio: { measured: s(0.01), maker: s(0.02), guess: s(0.05) },
  count: { measured: s(0), maker: s(0), guess: s(0) },
}

/** a guess at where a thing stands is this many times coarser than a reading */
const guessOverReading = 3

/**
 * Half width, SI, for a value of this field and source; never negative. A field with its own coarseness
 * (where a thing stands) uses that alone. The floor never exceeds a fifth of a size that must be above nought.
 */
export function usualSpread(
  spec: Pick<QuantitySpec, 'kind' | 'min' | 'exact' | 'coarse'>,
  source: WrittenSource,
  value: number,
): number {
  if (spec.exact) return 0
  if (spec.coarse !== undefined) return spec.coarse * (source === 'guess' ? guessOverReading : 1)
  const row = (spreads[spec.kind] ?? fallback)[source]
  const floor = spec.min > 0 ? Math.min(row.floor, 0.2 * Math.abs(value)) : row.floor
  return Math.max(row.part * Math.abs(value), floor)
}
