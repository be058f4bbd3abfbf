/**
 * Loads of a person on a deck.
 * Sources: standing weight on two feet of 0.25 × 0.10 m or one 80 mm patch, factors for a step (2) and a jump (4), common practice, no
 * source; drop factor 1 + √(1 + 2 H K/W), energy of a falling weight on a spring (any strength-of-materials handbook).
 */
import { gravity } from '../../physics/fluid/water.ts'

export interface FootLoad {
  name: 'standing' | 'step' | 'jump'
  /** N */
  load: number
  /** patch, m */
  u: number
  v: number
  /** what must not be passed: 'service' 0.6 of yield, 'yield', 'rupture' */
  limit: 'service' | 'yield' | 'rupture'
}

/** The three loads a deck is looked at for, from the rider's mass, kg. */
export function footLoads(mass: number): FootLoad[] {
  const W = mass * gravity
  return [
    { name: 'standing', load: W, u: 0.25, v: 0.1, limit: 'service' },
    { name: 'step', load: 2 * W, u: 0.08, v: 0.08, limit: 'yield' },
    // both feet together
    { name: 'jump', load: 4 * W, u: 0.25, v: 0.2, limit: 'rupture' },
  ]
}

/** Peak force over weight of a stiff landing from a height (m) on a stiffness (N/m; legs alone about 20 kN/m, from memory). */
export function dropFactor(height: number, stiffness: number, weight: number): number {
  return 1 + Math.sqrt(1 + (2 * height * stiffness) / weight)
}

/** Pressure of water struck at a speed, Pa: part of ½ρV² (0.25 to 0.5 over a small area; judgement, no source). */
export function slamPressure(speed: number, density: number, part = 0.4): number {
  return 0.5 * density * speed * speed * part
}
