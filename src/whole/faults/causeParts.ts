/** What rows of causes share: how plugs look, and a way of a cause with its usual values. */
import type { Way } from './causeTypes.ts'

/** Plug: tan, white, black, water drops; what is black may be wet of fuel. */
export const plug = (tan: number, white: number, black: number, water: number, wet = 0.4) => [
  tan,
  white,
  black * (1 - wet),
  black * wet,
  water,
  0.01,
]

/** A way in which a cause comes about, its share of the cause and the minutes that mend it. */
export const way = (id: string, says: string, share: number, mend: number, more: Partial<Way> = {}): Way => ({
  id,
  says,
  share,
  mend,
  ...more,
})

/** Reaches all engines. */
export const both: Partial<Way> = { reach: 'all' }
