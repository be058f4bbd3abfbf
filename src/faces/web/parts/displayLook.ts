import { inchLook, type Look, metricLook } from '../../../whole/push/shown.ts'
import type { UnitSystem } from '../state/store.ts'

/** Units and width for the figures of a page; width in mm as `Figure` hands it over. */
export function lookOf(units: UnitSystem, width: number): Look {
  return { ...(units === 'inch' ? inchLook : metricLook), width }
}
