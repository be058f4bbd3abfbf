/**
 * A shaft in torsion and bending. Stress and twist: elementary mechanics; both together by the greatest shear stress with shock factors: ASME code
 * for transmission shafting (B17c, 1927), from memory: 0.3 of the yield stress or 0.18 of the strength, three quarters of that with a keyway.
 */

export interface ShaftMetal {
  /** Young's and shear modulus, yield stress and strength, Pa; density kg/m³ */
  modulus: number
  shear: number
  yields: number
  breaks: number
  density: number
}

const metals = {
  // drawn bar of ordinary 18/8, and bar hardened by precipitation; from memory
  'stainless steel': { modulus: 195e9, shear: 75e9, yields: 260e6, breaks: 550e6, density: 7900 },
  'hard stainless steel': { modulus: 197e9, shear: 77e9, yields: 700e6, breaks: 930e6, density: 7800 },
  steel: { modulus: 205e9, shear: 79.3e9, yields: 350e6, breaks: 550e6, density: 7850 },
  aluminium: { modulus: 70e9, shear: 26e9, yields: 240e6, breaks: 290e6, density: 2700 },
  bronze: { modulus: 105e9, shear: 40e9, yields: 200e6, breaks: 400e6, density: 8700 },
} as const satisfies Readonly<Record<string, ShaftMetal>>

export type ShaftMetalName = keyof typeof metals
export const shaftMetalNames = Object.keys(metals) as ShaftMetalName[]
export const shaftMetalOf = (name: ShaftMetalName): ShaftMetal => metals[name]

/** what is left of a round bar with a bore */
const hollow = (diameter: number, bore: number) => 1 - (bore / diameter) ** 4

/** Second moment of the section in bending, m⁴; in torsion it is twice that. */
export const sectionInertia = (diameter: number, bore = 0): number =>
  (Math.PI / 64) * diameter ** 4 * hollow(diameter, bore)

export const sectionArea = (diameter: number, bore = 0): number => (Math.PI / 4) * (diameter ** 2 - bore ** 2)

/** Shear stress at the skin, Pa, of a torque N·m. Lengths m. */
export const twistStress = (torque: number, diameter: number, bore = 0): number =>
  (16 * torque) / (Math.PI * diameter ** 3 * hollow(diameter, bore))

/** Bending stress at the skin, Pa, of a moment N·m. */
export const bendStress = (moment: number, diameter: number, bore = 0): number =>
  (32 * moment) / (Math.PI * diameter ** 3 * hollow(diameter, bore))

/** Turning stiffness of a length of shaft, N·m/rad. */
export const twistStiffness = (g: number, length: number, diameter: number, bore = 0): number =>
  (2 * g * sectionInertia(diameter, bore)) / length

/** Greatest shear stress of bending and twisting together with their shock factors, Pa. */
export function shockStress(
  load: { torque: number; moment: number; torqueFactor: number; momentFactor: number },
  diameter: number,
  bore = 0,
): number {
  const both = Math.hypot(load.momentFactor * load.moment, load.torqueFactor * load.torque)
  return twistStress(both, diameter, bore)
}

/** Diameter, m, at which `shockStress` is `allowed` (Pa), solid. */
export function shaftFor(
  load: { torque: number; moment: number; torqueFactor: number; momentFactor: number },
  allowed: number,
): number {
  const both = Math.hypot(load.momentFactor * load.moment, load.torqueFactor * load.torque)
  return ((16 * both) / (Math.PI * allowed)) ** (1 / 3)
}

/** Shear stress a shaft may bear by the code, Pa; three quarters of it with a keyway. */
export const shaftAllows = (m: ShaftMetal, keyway: boolean): number =>
  Math.min(0.3 * m.yields, 0.18 * m.breaks) * (keyway ? 0.75 : 1)
