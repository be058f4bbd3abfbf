/** Sources and numbers that the float findings share. */
import { inCm, inDegrees, inKg, inLitres, inMinutes, inSeconds } from '../../base/answers/amounts.ts'
import { type Amount, type Sentence, say } from '../../base/answers/sentence.ts'

export const naval = 'E. V. Lewis (ed.), Principles of Naval Architecture vol. I (1988)'
export const own = 'Exact integrals on the hull’s own mesh, balance of weight and buoyancy'
export const advice = 'Heights advised are engineering judgement, no rule'

/** m, as a tape is read: finer below 10 cm */
export const cm = (x: number): Amount => inCm(x, Math.abs(x) < 0.1 ? 0.1 : 1)
export const kg = (x: number): Amount => inKg(x, Math.abs(x) < 10 ? 0.1 : 1)
export const litres = (v: number): Amount => inLitres(v, 1)
/** s, in seconds, minutes or hours */
export function lasting(t: number): Amount {
  if (t < 120) return inSeconds(t, 1)
  return t < 7200 ? inMinutes(t) : { value: t, kind: 'time', unit: 'h', step: 0.1 }
}

export const capital = (s: string): string => s.charAt(0).toUpperCase() + s.slice(1)

/** "1.5° bow up" or "level" */
export const trimSays = (trim: number): Sentence =>
  Math.abs(trim) < 0.003 ? 'level' : say`${inDegrees(Math.abs(trim))} ${trim > 0 ? 'bow up' : 'bow down'}`

/** "1.5° over to port", undefined where it is upright */
export const heelSays = (heel: number): Sentence | undefined =>
  Math.abs(heel) < 0.005
    ? undefined
    : say`${inDegrees(Math.abs(heel))} over to ${heel > 0 ? 'port' : 'starboard'}`

/** "12 cm above water" or "2.0 cm under water" */
export const overWater = (height: number): Sentence =>
  height < 0 ? say`${cm(-height)} under water` : say`${cm(height)} above water`
