/** Where the doubt of the answer comes from, in a builder's words. */
import { type Craft, fieldAt } from '../../craft/index.ts'
import type { Balance, Driver } from './balanceTypes.ts'

/** Share of the variance of the speed (of the pull where there is no speed) that its two largest inputs carry, and their names. */
export function doubtOf(craft: Craft, b: Balance): { share: number; names: string[] } {
  const by = (d: Driver) => (Number.isFinite(b.topSpeed.value) ? d.share.topSpeed : d.share.pull)
  const most = [...b.drivers]
    .filter((d) => by(d) > 0)
    .sort((x, y) => by(y) - by(x))
    .slice(0, 2)
  return {
    share: most.reduce((sum, d) => sum + by(d), 0),
    // two inputs a builder has one name for are named once
    names: [...new Set(most.map((d) => driverName(craft, d)))],
  }
}

/** A driver in a builder's words: its own when it has some, else its field's label with its part. */
export const driverName = (craft: Craft, d: Driver): string =>
  d.says !== d.path ? d.says : partName(craft, d.path)

/** A field of the craft file with the part it belongs to: "the impeller’s pitch". */
export function partName(craft: Craft, path: string): string {
  const field = fieldAt(path)
  const parts = path.split('.')
  const index = Number(parts[1])
  const named =
    parts[0] === 'weights'
      ? (craft.weights[index]?.name ?? 'weight')
      : parts[0] === 'engines' && craft.engines.length > 1
        ? (craft.engines[index]?.name ?? `engine ${index + 1}`)
        : undefined
  const owner =
    Number.isInteger(index) && named !== undefined
      ? named
      : parts.length > 2
        ? (parts.at(-2) ?? '')
        : (parts[0] ?? '')
  const label = (field?.label ?? parts.at(-1) ?? path).toLowerCase()
  // "engine 2" is a name already, "front" is not
  const article = named !== undefined && /^engine \d+$/.test(owner) ? '' : 'the '
  return `${article}${/^\d+$/.test(owner) ? (parts[0] ?? '').replace(/s$/, '') : owner === 'rotor' ? 'impeller' : owner}’s ${label}`
}
