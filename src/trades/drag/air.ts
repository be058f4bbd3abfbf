/**
 * Air drag of a rider and a low hull.
 * Drag areas upright and semi-squat: measured on decelerating cross-country skiers (Drag area of a cross-country skier, 1988);
 * kneeling, sitting and prone: between those and a cyclist's time-trial position, from memory of Hoerner (1965), ch. 3.
 * Heights of the drag: middle of the frontal area, this project's judgement.
 */
import type { Stance } from '../../hull/aboard/riderBody.ts'

interface StanceFigures {
  /** m², of a person 1.75 m, 80 kg */
  dragArea: number
  /** of the drag area, about nineteen in twenty */
  spread: number
  /** centre of air drag above the deck, of stature */
  drag: number
}

export const stances: Readonly<Record<Stance, StanceFigures>> = {
  standing: { dragArea: 0.65, spread: 0.1, drag: 0.57 },
  crouching: { dragArea: 0.27, spread: 0.06, drag: 0.4 },
  kneeling: { dragArea: 0.42, spread: 0.1, drag: 0.36 },
  sitting: { dragArea: 0.38, spread: 0.1, drag: 0.27 },
  prone: { dragArea: 0.14, spread: 0.05, drag: 0.08 },
}

/** Air drag, N: drag area m², speed and head wind m/s, air density kg/m³. A tail wind faster than the craft pushes. */
export function airDrag(dragArea: number, speed: number, density = 1.225, wind = 0): number {
  const relative = speed + wind
  return 0.5 * density * dragArea * relative * Math.abs(relative)
}

/** Drag area, m², of a person of the given stature (m) and mass (kg), scaled by body surface (Du Bois and Du Bois 1916). */
export function riderDragArea(stance: Stance, stature: number, mass: number): number {
  const surface = (h: number, m: number) => h ** 0.725 * m ** 0.425
  return (stances[stance].dragArea * surface(stature, mass)) / surface(1.75, 80)
}

/** Drag area, m², of the hull above water: frontal area with a drag coefficient of 0.9, blunt low body (Hoerner 1965, from memory). */
export function hullDragArea(beam: number, freeboard: number): number {
  return 0.9 * beam * freeboard
}
