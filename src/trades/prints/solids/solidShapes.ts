/** Every solid that can be ordered by name. */
import { drillJig, engineBracket, flapFrame, printerGauge, tankBracket } from './flatParts.ts'
import { impeller } from './impellerSolid.ts'
import type { SolidShape } from './solidShape.ts'
import { stator } from './statorSolid.ts'
import { cableGland, fitThree, screwCap, screwHatch } from './threadParts.ts'
import { airFoot, cordPulley, hoseBarb, mountCup, shaftCoupling } from './turnedParts.ts'

export const solidShapes = {
  impeller,
  stator,
  'screw cap': screwCap,
  'screw hatch': screwHatch,
  'cable gland': cableGland,
  'try-pieces': fitThree,
  'printer gauge': printerGauge,
  'hose barb': hoseBarb,
  'shaft coupling': shaftCoupling,
  'mount cup': mountCup,
  'air tube foot': airFoot,
  'cord pulley': cordPulley,
  'engine bracket': engineBracket,
  'tank cradle': tankBracket,
  'flap frame': flapFrame,
  'drill jig': drillJig,
} as const

export type SolidName = keyof typeof solidShapes

/** A shape by its name; RangeError for one that is none. */
export function shapeOf(name: string): SolidShape {
  if (!Object.hasOwn(solidShapes, name))
    throw new RangeError(`shape: "${name}" is not one of ${Object.keys(solidShapes).join(', ')}`)
  return solidShapes[name as SolidName] as unknown as SolidShape
}
