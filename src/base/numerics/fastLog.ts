/** Natural logarithm by a table of mantissas and one linear term; several times faster than the library's. */
const single = new Float32Array(1)
const bits = new Uint32Array(single.buffer)
const STEPS = 2048
const logs = new Float64Array(STEPS)
const inverse = new Float64Array(STEPS)
for (let i = 0; i < STEPS; i++) {
  const m = 1 + (i + 0.5) / STEPS
  logs[i] = Math.log(m)
  inverse[i] = 1 / m
}
const LN2 = Math.LN2

/** ln x for normal single-precision x > 1.2e-38; absolute error below 2e-7. */
export function naturalLog(x: number): number {
  single[0] = x
  const b = bits[0]!
  const i = (b >>> 12) & (STEPS - 1)
  // distance of the mantissa from the middle of its step
  const r = ((b & 0xfff) - 2048) * (1 / 8388608)
  return ((b >>> 23) - 127) * LN2 + logs[i]! + r * inverse[i]!
}
