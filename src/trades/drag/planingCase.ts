/** A drag model at one speed as the planing theory takes it, with what stands in the stream. Fins: Hoerner (1965), Fluid-Dynamic Drag, 6-6. */
import { foilFormFactor, ittc57 } from '../../physics/fluid/friction.ts'
import { airDrag } from './air.ts'
import type { DragModel } from './drag.ts'
import type { Conditions, HullSpec, ThrustLine } from './hullSpec.ts'
import type { PlaningCase } from './planing.ts'

/** N, fins (Hoerner), ride plate and blocked area, at speed m/s. */
function appendageDrag(spec: HullSpec, conditions: Conditions, speed: number): number {
  const q = 0.5 * conditions.density * speed * speed
  let area = spec.blockedArea ?? 0
  for (const fin of spec.fins ?? [])
    area +=
      2 *
      fin.area *
      foilFormFactor(fin.thickness) *
      ittc57((speed * fin.chord) / conditions.kinematicViscosity)
  if (spec.ridePlateArea) area += spec.ridePlateArea * ittc57((speed * 0.2) / conditions.kinematicViscosity)
  return q * area
}

/** The planing case of a model at one speed. */
export function planingCase(
  m: DragModel,
  speed: number,
  line: ThrustLine = m.loading.thrustLine,
): PlaningCase {
  return {
    speed,
    weight: m.weight,
    beam: m.beam,
    deadrise: m.deadrise,
    density: m.conditions.density,
    kinematicViscosity: m.conditions.kinematicViscosity,
    roughness: m.spec.roughness ?? 4e-4,
    centreHeight: m.centreHeight,
    thrustHeight: line.height,
    thrustAngle: line.angle,
    airDrag: airDrag(m.dragArea, speed, m.conditions.airDensity, m.conditions.wind),
    airHeight: m.loading.dragHeight,
    appendage: appendageDrag(m.spec, m.conditions, speed),
    opening: m.spec.intake?.area ?? 0,
    spray: true,
  }
}
