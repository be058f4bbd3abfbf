import { fieldAt } from '../../../../craft/index.ts'
import { shownUnit } from '../../state/craftFile.ts'
import { writtenNumber } from '../../state/shownValues.ts'
import type { UnitSystem } from '../../state/store.ts'

/** Paths and SI values with the text that the file would hold, as the store tries them. */
export function textOfFound(
  paths: readonly (readonly [string, number])[],
  units: UnitSystem,
): [string, number, string][] {
  return paths.flatMap(([path, value]): [string, number, string][] => {
    const field = fieldAt(path)
    if (field?.type !== 'quantity') return []
    const unit = shownUnit(field.kind, units, field.unit)
    // a tenth of a millimetre is as near as sheet is cut
    const round = field.kind === 'length' ? Math.round(value * 1e4) / 1e4 : value
    return [[path, round, `${writtenNumber(round, field.kind, unit)} ${unit}`.trim()]]
  })
}
