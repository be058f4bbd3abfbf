/**
 * The air the engine breathes through a snorkel up to the handle.
 * Sources: Darcy friction with Haaland's formula (S. E. Haaland, J. Fluids Eng. 105 (1983) 89), loss factors
 * (Miller 1978, from memory: sharp entry 0.5, bell 0.05, exit 1, smooth bend of two bores radius 0.25 a right
 * angle, mitre 1.1); pulsating flow costs more than steady flow of the same mean: mean of the square over the
 * square of the mean, from the share of the cycle the engine inhales (derived below).
 */
export interface Snorkel {
  /** m */
  bore: number
  length: number
  /** right angles in all */
  bends: number
  /** mitred or smooth */
  smoothBends: boolean
  belledEntry: boolean
  /** m, height of grain of the inside: 0.0015 mm plastic, 0.3 mm corrugated hose effective 2 mm */
  roughness: number
  /** m³ between the snorkel and the carburettor; 0 without an air box */
  box: number
}

export interface Breathing {
  /** kg/s, mean */
  massFlow: number
  /** rev/s */
  rotation: number
  cylinders: number
  /** Pa, K of the air outside */
  pressure: number
  temperature: number
}

export interface SnorkelDrop {
  /** Pa, mean over the cycle */
  drop: number
  /** m/s, mean */
  velocity: number
  /** factor of the pulsation on the steady drop, 1 with a large box */
  pulsation: number
  /** share of delivery lost, close to drop over air pressure */
  deliveryLost: number
  reynolds: number
}

/** A two-stroke inhales over about this share of its turn. Common practice, no source. */
const inhaling = 0.5

/** Pressure drop and what it costs. RangeError names a bad measure. */
export function snorkelDrop(s: Snorkel, b: Breathing): SnorkelDrop {
  for (const key of ['bore', 'length'] as const)
    if (!(s[key] > 0)) throw new RangeError(`snorkel ${key} is ${s[key]}: it must be above 0`)
  for (const key of ['bends', 'box', 'roughness'] as const)
    if (!(s[key] >= 0)) throw new RangeError(`snorkel ${key} is ${s[key]}: it must be 0 or above`)
  if (!(b.massFlow >= 0)) throw new RangeError(`air flow is ${b.massFlow}: it must be 0 or above`)
  if (b.massFlow === 0) return { drop: 0, velocity: 0, pulsation: 1, deliveryLost: 0, reynolds: 0 }
  const density = b.pressure / (287.05 * b.temperature)
  const area = (Math.PI / 4) * s.bore ** 2
  const velocity = b.massFlow / (density * area)
  // Sutherland's law for air
  const viscosity = (1.458e-6 * b.temperature ** 1.5) / (b.temperature + 110.4)
  const reynolds = (density * velocity * s.bore) / viscosity
  const turbulent = (-1.8 * Math.log10((s.roughness / s.bore / 3.7) ** 1.11 + 6.9 / reynolds)) ** -2
  const darcy = reynolds < 2300 ? 64 / reynolds : turbulent
  const bend = s.smoothBends ? 0.25 : 1.1
  const losses = (s.belledEntry ? 0.05 : 0.5) + 1 + bend * s.bends
  const steady = ((darcy * s.length) / s.bore + losses) * 0.5 * density * velocity ** 2
  const pulsation = pulsationFactor(s, b, density)
  const drop = steady * pulsation
  return { drop, velocity, pulsation, deliveryLost: Math.min(1, drop / b.pressure), reynolds }
}

/**
 * Half-sine gulps over the inhaling share of the turn have a mean square (π²/8)/share times the mean's square. A
 * box and the tube's own inertia smooth them as a second-order filter at the Helmholtz frequency.
 */
function pulsationFactor(s: Snorkel, b: Breathing, density: number): number {
  const share = Math.min(1, inhaling * b.cylinders)
  const raw = Math.PI ** 2 / 8 / share
  if (s.box <= 0) return raw
  const c = Math.sqrt((1.4 * b.pressure) / density)
  const resonance = snorkelResonance(s.bore, s.length, s.box, c)
  const f = b.rotation * b.cylinders
  const passed = 1 / Math.max(0.2, Math.abs(1 - (f / resonance) ** 2))
  return 1 + (raw - 1) * Math.min(4, passed ** 2)
}

/** Resonance, Hz, of a snorkel on an air box: near the intake frequency it drums and starves. */
export function snorkelResonance(bore: number, length: number, box: number, c = 343): number {
  return (c / (2 * Math.PI)) * Math.sqrt((Math.PI / 4) * (bore ** 2 / ((length + 0.85 * bore) * box)))
}
