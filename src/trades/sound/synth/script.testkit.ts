import type { Random } from '../../../base/numerics/random.ts'
import { sawEngine } from './hardClips.testkit.ts'
import {
  CONTROL_RATE,
  type EngineScript,
  type Script,
  type ScriptKind,
  type TrueEvent,
} from './scriptTypes.ts'

/** Red noise with a 0.3 Hz corner and standard deviation `size`. */
function wander(n: number, size: number, rng: Random): Float64Array {
  const out = new Float64Array(n)
  const a = Math.exp((-2 * Math.PI * 0.3) / CONTROL_RATE)
  const drive = Math.sqrt(1 - a * a)
  let v = rng.normal()
  for (let i = 0; i < n; i++) {
    v = a * v + drive * rng.normal()
    out[i] = size * v
  }
  return out
}

function engineOf(rpm: Float64Array, rng: Random, unevenness: number): EngineScript {
  const n = rpm.length
  const drift = wander(n, rng.between(0.002, 0.01), rng)
  for (let i = 0; i < n; i++) rpm[i] = rpm[i]! > 0 ? rpm[i]! * (1 + drift[i]!) : 0
  const alternate = new Float64Array(n).fill(unevenness)
  return {
    rpm,
    load: new Float64Array(n).fill(1),
    alternate,
    misfire: new Float64Array(n),
    every: 2,
    phase: 0,
    gain: 1,
  }
}

const at = (n: number, f: (t: number) => number) =>
  Float64Array.from({ length: n }, (_, i) => f(i / CONTROL_RATE))

/** Speed that follows `aim` no faster than `up` and `down` rev/min a second. */
function follow(
  n: number,
  start: number,
  aim: (t: number) => number,
  up: (rpm: number) => number,
  down: number,
) {
  let v = start
  return at(n, (t) => {
    const want = aim(t)
    const step = want - v
    const most = up(v) / CONTROL_RATE
    v += step > 0 ? Math.min(step, most) : Math.max(0.12 * step * (60 / CONTROL_RATE), -down / CONTROL_RATE)
    return v
  })
}

function blips(n: number, rng: Random): EngineScript {
  const idle = rng.between(2000, 3000)
  const plan: { from: number; to: number; top: number }[] = []
  for (let t = rng.between(0.5, 1.2); t < n / CONTROL_RATE; ) {
    const hold = rng.between(0.35, 1.1)
    plan.push({ from: t, to: t + hold, top: rng.between(6500, 10500) })
    t += hold + rng.between(0.7, 1.8)
  }
  const rate = rng.between(12000, 24000)
  const rpm = follow(
    n,
    idle,
    (t) => plan.find((p) => t >= p.from && t < p.to)?.top ?? idle,
    (v) => Math.min(rate, 9 * v),
    rng.between(6000, 13000),
  )
  const engine = engineOf(rpm, rng, 0)
  for (let i = 0; i < n; i++)
    engine.load[i] = plan.some((p) => i / CONTROL_RATE >= p.from && i / CONTROL_RATE < p.to) ? 0.7 : 0
  return engine
}

function bogAndCut(n: number, rng: Random, events: TrueEvent[]): EngineScript {
  const idle = rng.between(2200, 3200)
  const full = rng.between(5500, 8500)
  const opens = rng.between(1.5, 2.5)
  const bogs = opens + rng.between(0.25, 0.45)
  const recovers = bogs + rng.between(0.5, 0.9)
  const cut = rng.between(7, 8.5)
  const depth = rng.between(0.55, 0.72)
  const rpm = follow(
    n,
    idle,
    (t) => (t < opens ? idle : t < bogs ? full : t < recovers ? full * 0.55 * depth : full),
    () => 9000,
    9000,
  )
  const engine = engineOf(rpm, rng, 0)
  for (let i = 0; i < n; i++) {
    engine.load[i] = i / CONTROL_RATE > opens ? 1 : 0
    if (i / CONTROL_RATE >= cut) engine.rpm[i] = 0
  }
  events.push({ kind: 'bog', time: bogs, engine: 0 }, { kind: 'stop', time: cut, engine: 0 })
  return engine
}

/** Two loaded engines near `base`, the second at `ratio` of the first. */
function pair(
  n: number,
  rng: Random,
  first: (t: number) => number,
  second: (t: number) => number,
  uneven: () => number,
) {
  const a = engineOf(at(n, first), rng, uneven())
  const b = engineOf(at(n, second), rng, uneven())
  b.gain = 10 ** (rng.between(-6, 0) / 20)
  return rng.next() < 0.5 ? [a, b] : [b, a]
}

/**
 * Draws one clip's script. `unevenness` is the largest alternate-firing weakness given to loaded engines.
 * duration in s, at least 6.
 */
export function drawScript(kind: ScriptKind, duration: number, rng: Random, unevenness = 0): Script {
  const n = Math.round(duration * CONTROL_RATE)
  const events: TrueEvent[] = []
  const uneven = () => unevenness * rng.next()
  const base = rng.between(3800, 8200)
  let engines: EngineScript[] = []
  switch (kind) {
    case 'steady': {
      engines = [
        engineOf(
          at(n, () => base),
          rng,
          uneven(),
        ),
      ]
      break
    }
    case 'ramp': {
      const low = rng.between(2200, 3200)
      const high = rng.between(6500, 9500)
      const up = rng.between(1, 2)
      const lasts = rng.between(2, 4)
      const down = duration - rng.between(2, 3.5)
      const f = (t: number) => {
        const rise = Math.min(1, Math.max(0, (t - up) / lasts))
        const fall = Math.min(1, Math.max(0, (t - down) / 1.5))
        return low + (high - low) * (rise - 0.7 * fall)
      }
      engines = [engineOf(at(n, f), rng, uneven())]
      break
    }
    case 'blips': {
      engines = [blips(n, rng)]
      break
    }
    case 'fourstroke': {
      const e = engineOf(
        at(n, () => 0.45 * base),
        rng,
        0,
      )
      e.load.fill(0)
      e.alternate.fill(rng.between(0.2, 0.5))
      engines = [e]
      break
    }
    case 'bogcut': {
      engines = [bogAndCut(n, rng, events)]
      break
    }
    case 'apart': {
      const ratio = 1 + (rng.next() < 0.5 ? -1 : 1) * rng.between(0.08, 0.25)
      engines = pair(
        n,
        rng,
        () => base,
        () => base * ratio,
        uneven,
      )
      break
    }
    case 'cross': {
      const span = rng.between(0.12, 0.3)
      const mid = duration / 2 + rng.between(-1, 1)
      const width = rng.between(1.5, 3)
      const s = (t: number) => Math.tanh((t - mid) / width)
      engines = pair(
        n,
        rng,
        (t) => base * (1 + 0.5 * span * s(t)),
        (t) => base * (1 - 0.5 * span * s(t)),
        uneven,
      )
      break
    }
    case 'near': {
      const ratio = 1 + (rng.next() < 0.5 ? -1 : 1) * rng.between(0.015, 0.03)
      const shared = wander(n, 0.006, rng)
      const a = at(n, (t) => base * (1 + shared[Math.min(n - 1, Math.round(t * CONTROL_RATE))]!))
      const b = a.map((v) => v * ratio)
      engines = [a, b].map((rpm) => {
        const e = engineOf(rpm, rng, uneven())
        return e
      })
      // the wander of each engine alone must leave the twins apart
      const keep = wander(n, 0.0015, rng)
      engines[0]!.rpm = a.slice()
      engines[1]!.rpm = a.map((v, i) => v * ratio * (1 + keep[i]!))
      engines[1]!.gain = 10 ** (rng.between(-5, 0) / 20)
      break
    }
    case 'onedies': {
      const ratio = 1 + (rng.next() < 0.5 ? -1 : 1) * rng.between(0.06, 0.2)
      const dies = duration * rng.between(0.5, 0.65)
      const drop = rng.between(0, 0.15)
      const sag = (t: number) => 1 - drop * Math.min(1, Math.max(0, (t - dies) / 0.6))
      engines = [
        engineOf(
          at(n, (t) => base * sag(t)),
          rng,
          uneven(),
        ),
        engineOf(
          at(n, (t) => (t < dies ? base * ratio : 0)),
          rng,
          uneven(),
        ),
      ]
      engines[1]!.gain = 10 ** (rng.between(-5, 2) / 20)
      events.push({ kind: 'stop', time: dies, engine: 1 })
      break
    }
    case 'slip': {
      const ratio = 1 + (rng.next() < 0.5 ? -1 : 1) * rng.between(0.06, 0.18)
      const flares: number[] = []
      for (let t = rng.between(2.5, 4); t < duration - 2; t += rng.between(3, 4.5)) flares.push(t)
      const top = rng.between(1.35, 1.6)
      const slipping = follow(
        n,
        base * ratio,
        (t) => base * ratio * (flares.some((f) => t >= f && t < f + 0.9) ? top : 1),
        () => 14000,
        11000,
      )
      engines = [
        engineOf(
          at(n, () => base),
          rng,
          uneven(),
        ),
        engineOf(slipping, rng, uneven()),
      ]
      engines[1]!.gain = 10 ** (rng.between(-5, 3) / 20)
      for (const time of flares) events.push({ kind: 'flare', time, engine: 1 })
      break
    }
    case 'locked': {
      const rpm = at(n, () => base * 0.8)
      const a = engineOf(rpm, rng, uneven())
      const b = { ...a, phase: rng.next() < 0.5 ? 0.5 : 0.02, gain: 10 ** (rng.between(-5, -1) / 20) }
      engines = [a, b]
      break
    }
    case 'octave': {
      const low = base * 0.5
      const a = at(n, () => low)
      const e = engineOf(a, rng, 0)
      const f = engineOf(
        e.rpm.map((v) => 2 * v),
        rng,
        0,
      )
      const keep = wander(n, 0.0008, rng)
      f.rpm = e.rpm.map((v, i) => 2 * v * (1 + keep[i]!))
      f.gain = 10 ** (rng.between(-4, 2) / 20)
      engines = [e, f]
      break
    }
    case 'saw':
      engines = [sawEngine(duration, rng)]
      break
    case 'saws':
      engines = [sawEngine(duration, rng.fork(1)), sawEngine(duration, rng.fork(2))]
      break
    case 'quiet':
      break
  }
  return { kind, duration, engines, events }
}
