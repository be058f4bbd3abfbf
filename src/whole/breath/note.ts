/**
 * The exhaust note from one computed turn: the outlet as a point source breathing mass, far-field pressure in proportion
 * to d(dm/dt)/dt (A. P. Dowling and J. E. Ffowcs Williams, Sound and Sources of Sound, 1983). Harmonics of the turn are
 * taken by a plain Fourier sum. Level is not kept: a loudspeaker cannot show it.
 */
import { harmonicSums } from '../../base/numerics/harmonic.ts'
import { seededRandom } from '../../base/numerics/random.ts'

export interface NoteOrder {
  /** outlet mass flow of one turn, kg/s, at equal steps */
  flow: ArrayLike<number>
  /** rev/min */
  rpm: number
  /** cylinders that fire evenly through the turn */
  cylinders: number
  /** samples a second, Hz */
  rate: number
  /** s */
  seconds: number
  /** part by which one turn's strength differs from the next; engines never fire quite alike */
  unevenness?: number
}

const seed = 1

/** The note, -1 to 1, its loudest sample 1, fading in and out; silence for a flow that does not change. */
export function exhaustNote({
  flow,
  rpm,
  cylinders,
  rate,
  seconds,
  unevenness = 0.06,
}: NoteOrder): Float32Array<ArrayBuffer> {
  const turnsPerSecond = rpm / 60
  const n = flow.length
  // harmonics that the samples of the turn hold and the rate can carry, up to 6 kHz
  const most = Math.min(Math.floor(n / 3), Math.floor(Math.min(6000, 0.45 * rate) / turnsPerSecond))
  const size = 2048
  const turn = new Float64Array(size)
  for (let h = 1; h <= most; h++) {
    const { re, im } = harmonicSums(flow, h)
    // derivative: each harmonic grows with its number and leads by a quarter
    for (let k = 0; k < size; k++) {
      const a = (2 * Math.PI * h * k) / size
      turn[k] = turn[k]! + h * (im * Math.cos(a) - re * Math.sin(a))
    }
  }
  const count = Math.round(rate * seconds)
  const out = new Float32Array(count)
  const random = seededRandom(seed)
  const strengths = Array.from(
    { length: Math.ceil(seconds * turnsPerSecond) + 2 },
    () => 1 + unevenness * random.normal(),
  )
  let loudest = 0
  for (let i = 0; i < count; i++) {
    const at = (i / rate) * turnsPerSecond
    let v = 0
    for (let c = 0; c < cylinders; c++) {
      const phase = at + c / cylinders
      const whole = Math.floor(phase)
      v += strengths[whole]! * turn[Math.floor((phase - whole) * size)]!
    }
    out[i] = v
    loudest = Math.max(loudest, Math.abs(v))
  }
  if (loudest === 0) return out
  const fade = Math.min(count / 2, 0.06 * rate)
  for (let i = 0; i < count; i++) out[i] = (out[i]! / loudest) * Math.min(1, i / fade, (count - 1 - i) / fade)
  return out
}
