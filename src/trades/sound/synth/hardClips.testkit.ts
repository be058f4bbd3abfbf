/**
 * What makes a recording harder than the usual ones, after what small hand-held two-strokes near water sound like: firing every
 * second, third or fourth turn that comes and goes, one engine far louder than the other, fast revving, a late start.
 * Sizes are authored judgement.
 */
import type { Random } from '../../../base/numerics/random.ts'
import { CONTROL_RATE, type EngineScript, type Script } from './scriptTypes.ts'

/** a slow drift between 0 and 1 with a corner at `corner` Hz */
function comesAndGoes(n: number, corner: number, rng: Random): Float64Array {
  const keep = Math.exp((-2 * Math.PI * corner) / CONTROL_RATE)
  const drive = Math.sqrt(1 - keep * keep)
  let v = rng.normal()
  return Float64Array.from({ length: n }, () => {
    v = keep * v + drive * rng.normal()
    return 1 / (1 + Math.exp(-2 * v))
  })
}

/** Speed that chases `aim` at most `up` and `down` rev/min a second, from a standing idle. */
function chase(n: number, aim: (t: number) => number, up: number, down: number): Float64Array {
  let v = aim(0)
  return Float64Array.from({ length: n }, (_, i) => {
    const step = aim(i / CONTROL_RATE) - v
    v += Math.max(-down / CONTROL_RATE, Math.min(up / CONTROL_RATE, (9 * v) / CONTROL_RATE, 0.25 * step))
    return v
  })
}

/**
 * A saw-like engine: idle, blips and stretches at work between 6000 and 13 500 rev/min with dips as the load comes on,
 * rising at up to 20 000 rev/min a second.
 */
export function sawEngine(duration: number, rng: Random): EngineScript {
  const n = Math.round(duration * CONTROL_RATE)
  const idle = rng.between(2300, 3400)
  const knots: { from: number; rpm: number }[] = [
    { from: 0, rpm: rng.next() < 0.5 ? idle : rng.between(7000, 12000) },
  ]
  for (let t = rng.between(0.3, 1.2); t < duration; ) {
    const kind = rng.next()
    const rpm = kind < 0.3 ? idle : rng.between(6000, 13500)
    knots.push({ from: t, rpm })
    t += kind < 0.3 ? rng.between(0.4, 1.6) : kind < 0.6 ? rng.between(0.25, 0.8) : rng.between(1, 3.5)
  }
  const at = (t: number) => {
    let k = 0
    while (k + 1 < knots.length && knots[k + 1]!.from <= t) k++
    return knots[k]!.rpm
  }
  const rpm = chase(n, at, rng.between(9000, 20000), rng.between(5000, 12000))
  const sway = comesAndGoes(n, 0.8, rng)
  for (let i = 0; i < n; i++) rpm[i]! *= 0.96 + 0.08 * sway[i]!
  const load = Float64Array.from(rpm, (v) => Math.min(1, Math.max(0, (v - idle) / 4000)))
  return {
    rpm,
    load,
    alternate: new Float64Array(n),
    misfire: new Float64Array(n),
    every: 2,
    phase: 0,
    gain: 1,
  }
}

/** most weakness of the turns between full firings */
const DEEPEST = 0.7

/** Gives every engine of a script fractional orders that come and go, a pair a difference of level, and some a late start. */
export function hardened(script: Script, rng: Random): Script {
  const shared = script.kind === 'locked' || script.kind === 'octave'
  script.engines.forEach((e, k) => {
    const n = e.rpm.length
    const r = rng.fork(50 + k)
    e.every = ([2, 2, 3, 4] as const)[Math.floor(4 * r.next())]!
    const deep = DEEPEST * r.next()
    const now = comesAndGoes(n, 0.4, r)
    if (!shared) for (let i = 0; i < n; i++) e.alternate[i] = Math.max(e.alternate[i]!, deep * now[i]!)
    else e.alternate.fill(0.4 * r.next())
  })
  if (script.engines.length === 2 && !shared) {
    const r = rng.fork(60)
    script.engines[r.next() < 0.5 ? 0 : 1]!.gain *= 10 ** (-r.between(0, 9) / 20)
  }
  // a quiet start in one clip of three
  const late = rng.fork(61)
  if (script.engines.length > 0 && late.next() < 1 / 3) {
    const begins = late.between(0.6, 1.6)
    for (const e of script.engines) e.rpm.fill(0, 0, Math.round(begins * CONTROL_RATE))
    script.events.push({ kind: 'start', time: begins, engine: 0 })
    script.events.sort((a, b) => a.time - b.time)
  }
  return script
}
