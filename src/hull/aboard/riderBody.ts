/**
 * Where the weight of a rider is, by stance.
 * Sources: whole-body centre of a standing adult 0.55 to 0.57 of stature above the soles (anthropometry handbooks, from memory);
 * seated about 0.23 m above the seat (J. J. Swearingen, "Determination of centers of gravity of man", FAA 62-14, 1962, from memory);
 * Kneeling, derived: without the lower legs (0.12 of the mass, knee at 0.285 of stature) the standing body's centre is 0.33 of
 * stature above the knee, so 0.29 upright on the knees and about 0.22 sitting back on the heels (segment masses: D. A. Winter,
 * "Biomechanics and Motor Control of Human Movement", from memory). Crouching and prone are estimates, common practice, no source.
 */
export type Stance = 'standing' | 'crouching' | 'kneeling' | 'sitting' | 'prone'

export interface RiderCentre {
  /** m above the deck, best guess and ends of the likely range */
  height: number
  low: number
  high: number
  /** true where a rider keeps his balance over feet, knees or seat: his weight then acts on the craft at the deck; a stiff rider's does not */
  balances: boolean
}

const ofStature: Record<Exclude<Stance, 'prone'>, [number, number, number]> = {
  standing: [0.56, 0.54, 0.58],
  crouching: [0.4, 0.35, 0.45],
  kneeling: [0.27, 0.21, 0.31],
  sitting: [0.14, 0.12, 0.17],
}

/** Height of the rider's centre above the deck, m; stature in m (1.0 to 2.3, RangeError outside). */
export function riderCentre(stance: Stance, stature: number): RiderCentre {
  if (!(stature >= 1 && stature <= 2.3))
    throw new RangeError(`rider.height: ${stature} m, expected 1 to 2.3 m`)
  if (stance === 'prone') return { height: 0.12, low: 0.1, high: 0.15, balances: false }
  const [height, low, high] = ofStature[stance]
  return {
    height: height * stature,
    low: low * stature,
    high: high * stature,
    balances: true,
  }
}
