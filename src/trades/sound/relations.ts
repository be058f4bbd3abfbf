/**
 * Small relations between turning, firing and sound. Kinematics unless a source is named.
 */
/** Firings a second of an engine turning `rotation` rev/s with equally spaced firings. */
export const firingRate = (rotation: number, cylinders = 1, strokes = 2) =>
  (rotation * cylinders * 2) / strokes

/** Turns a second from firings a second. */
export const rotationFrom = (firing: number, cylinders = 1, strokes = 2) =>
  (firing * strokes) / (2 * cylinders)

/** Blade passages a second; `ratio` is turns of the impeller for one of the engine, `slip` the part lost between them. */
export const bladePassRate = (rotation: number, blades: number, ratio = 1, slip = 0) =>
  rotation * ratio * (1 - slip) * blades

/**
 * What a Hann window of `window` s can do (main lobe 4/T from null to null: F. J. Harris, Proc. IEEE 66 (1978) 51).
 * Hz; `split` is the difference in firing rate at which two engines part at harmonic h.
 */
export const hannLobe = (window: number) => 4 / window
export const splitAt = (window: number, harmonic: number) => hannLobe(window) / harmonic

/** Largest speeding up, Hz/s of firing, under which harmonic h still fits the window: h s T < 2/T. */
export const slopeLimit = (window: number, harmonic: number) => 2 / (harmonic * window * window)

/** What timing scatter (part of a period, independent per firing) leaves of harmonic h: exp(-(2 pi h s)²/2), a Gaussian's characteristic function. */
export const jitterLeft = (harmonic: number, scatter: number) =>
  Math.exp(-0.5 * (2 * Math.PI * harmonic * scatter) ** 2)

/** Lowest resonance of a tube closed at one end, Hz: c / (4 L). */
export const quarterWave = (length: number, c: number) => c / (4 * length)

/** Speed of sound in a gas, m/s: sqrt(gamma R T), T in K. */
export const gasSoundSpeed = (gamma: number, temperature: number, gas = 287) =>
  Math.sqrt(gamma * gas * temperature)

/** Time in which a shut engine with a pump (torque k omega²) falls to half its speed, s: I / (k omega0). */
export const runDownHalf = (inertia: number, k: number, omega: number) => inertia / (k * omega)

/** Rate at which speed rises, rad/s², under a net torque. */
export const freeRise = (torque: number, inertia: number) => torque / inertia

/** rev/min of one firing a second: 60 for a two-stroke single, 120 for a four-stroke single. */
export function rpmPerHertz(cylinders = 1, strokes: 2 | 4 = 2): number {
  if (!(cylinders >= 1)) throw new RangeError(`cylinders: ${cylinders}; 1 or more`)
  return (60 * (strokes / 2)) / cylinders
}
