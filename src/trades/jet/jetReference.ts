import type { JetSpec } from './jetTypes.ts'

/** The rotor that regression values belong to: 120/50 mm, pitch 100, three blades, 65 mm nozzle, no grate, 1.5 m of hull ahead. */
export function referenceJet(): JetSpec {
  return {
    rotor: {
      tipDiameter: 0.12,
      hubDiameter: 0.05,
      blades: 3,
      pitchLeading: 0.1,
      pitchTrailing: 0.1,
      wrap: (150 * Math.PI) / 180,
      trailingEdge: 1.5e-3,
      leadingEdgeRadius: 0.75e-3,
      gap: 0.4e-3,
      roughness: 12e-6,
    },
    system: {
      nozzleDiameter: 0.065,
      contraction: 1,
      nozzleLoss: 0.03,
      ductLoss: 0.15,
      ramLoss: 0.2,
      grateLoss: 0,
      lipLoss: 0,
      intakeArea: 0.02,
      intakeWidth: 0.12,
      runUp: 1.5,
      distortion: 0,
      nozzleHeight: 0.05,
      rotorDepth: 0.02,
      nozzleAngle: 0,
      thrustDeduction: 0,
      stator: { vanes: 7 },
      mechanicalEfficiency: 0.98,
      bearingDrag: 0,
    },
    water: { density: 998.2, viscosity: 1.002e-3, vapourPressure: 2338.8, atmosphere: 101325 },
  }
}
