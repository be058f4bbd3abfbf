/**
 * A simulated session made into an invented sound, recorded by an invented phone and heard by the real hearing: pulses of each engine at the
 * true speeds, misses, half orders, hunting, bogs and races as they were, wind, splashes and voices over it.
 */
import type { Craft } from '../../src/craft/index.ts'
import { withExpected } from '../../src/trades/sound/expecting.ts'
import { hear } from '../../src/trades/sound/hearSamples.ts'
import type { RunEvent } from '../../src/trades/sound/shaftEvents.ts'
import { expectsOf, hearOptionsOf } from '../../src/trades/sound/soundFromCraft.ts'
import { makeClip } from '../../src/trades/sound/synth/clip.ts'
import { CONTROL_RATE, type EngineScript, type Script } from '../../src/trades/sound/synth/scriptTypes.ts'
import type { Drawn, HearingOf } from './sessions.ts'

/** s a change of speed takes, a bog lasts, a swing of one that hunts */
const change = 0.5
const bogged = 0.8
const swing = 1.25
/** by how much it bogs, hunts, races with air, races without load */
const by = { bog: 0.72, hunts: 0.09, flare: 1.25, lost: 1.5 } as const

/** Speed of one line over time, rev/min. */
function speedOf({ stretches, faults, happened, seen }: Drawn, pick: 'a' | 'b'): (t: number) => number {
  const line = (k: number) => stretches[k]?.[pick] ?? (pick === 'b' ? stretches[k]?.a : undefined) ?? 0
  const turns = faults.some((f) => f.begins === 'in turns')
  // what opens or comes and goes is in the speeds already
  const races = turns || seen.hidden.open > 0 ? [] : happened.filter((e) => raised(e) !== 1)
  const during = (kind: string, t: number, lasts?: number) =>
    happened.some((e) => e.kind === kind && t >= e.time && t < e.time + (lasts ?? e.lasts))
  return (t) => {
    const k = stretches.findIndex((s) => t < s.to)
    if (k < 0 || line(k) === 0) return 0
    const from = stretches[k - 1]?.to ?? 0
    const u = Math.min(1, (t - from) / change)
    const before = k > 0 && line(k - 1) > 0 ? line(k - 1) : line(k)
    let n = before + (line(k) - before) * u * u * (3 - 2 * u)
    for (const e of races) if (t >= e.time && t < e.time + e.lasts) n *= raised(e)
    if (during('bog', t, bogged)) n *= by.bog
    if (during('hunting', t)) n *= 1 + by.hunts * Math.sin((2 * Math.PI * t) / swing)
    return n
  }
}

const raised = (e: RunEvent) => (e.kind === 'flare' ? by.flare : e.kind === 'load lost' ? by.lost : 1)

export function scriptOf(drawn: Drawn, craft: Craft): Script {
  const { stretches, happened, seen } = drawn
  const duration = stretches.at(-1)!.to
  const n = Math.round(duration * CONTROL_RATE)
  const over = (f: (t: number) => number) => Float64Array.from({ length: n }, (_, i) => f(i / CONTROL_RATE))
  const { hidden } = seen
  const dies = happened.find((e) => (e.kind as string) === 'firing stopped')?.time ?? 0
  const lines = { a: speedOf(drawn, 'a'), b: speedOf(drawn, 'b') }
  const told = (kind: string, t: number) =>
    happened.find((e) => e.kind === kind && t >= e.time && t < e.time + e.lasts)
  const engines = craft.engines.map((_, i): EngineScript => {
    const state = hidden.engines[i]!
    const speed = hidden.open > 0 && i >= hidden.open ? lines.b : lines.a
    const rpm = over((t) => (state.fires || t < dies ? speed(t) : 0))
    return {
      rpm,
      load: rpm.map((r) => (r > 3500 ? 1 : 0.3)),
      alternate: over((t) => (told('four-stroking', t) ? 0.65 : 0)),
      every: 2,
      misfire: over((t) => (state.missed > 0.05 ? (told('misfire', t)?.value ?? 0.01) : 0.01)),
      phase: i === 0 ? 0 : 0.5,
      gain: i === 0 ? 1 : 0.85,
    }
  })
  return { kind: craft.engines.length > 1 ? 'locked' : 'steady', duration, engines, events: [] }
}

/** The hearing of a session through sound. */
export const throughSound: HearingOf = (drawn, { craft }, seed) => {
  const clip = makeClip(scriptOf(drawn, craft), { snr: 12 + (seed % 9) }, seed)
  return withExpected(hear(clip.samples, clip.rate, hearOptionsOf(craft)), expectsOf(craft))
}
