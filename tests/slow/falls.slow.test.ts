import { expect, test } from 'vitest'
import { evaluationClips, kindsOf } from '../../bench/hearing/evaluation.ts'
import { seededRandom } from '../../src/base/numerics/random.ts'
import { makeListener } from '../../src/trades/sound/listener.ts'
import { type Clip, makeClip } from '../../src/trades/sound/synth/clip.ts'
import { CONTROL_RATE, type EngineScript } from '../../src/trades/sound/synth/scriptTypes.ts'

const heard = (clip: Clip) => {
  const listener = makeListener(clip.rate)
  listener.push(clip.samples)
  return listener.finish()
}
const fallsOf = (clip: Clip) => heard(clip).events.filter((e) => e.kind === 'fall')

const LONG = 12
const FALLS = 5

/** A loaded engine that loses part of its speed for two seconds and finds it again; speed, depth and quickness by seed. */
function losing(seed: number) {
  const rng = seededRandom(seed)
  const full = rng.between(4200, 7800)
  const part = rng.between(0.62, 0.8)
  const takes = rng.between(0.15, 0.5)
  const n = LONG * CONTROL_RATE
  const at = (t: number, from: number) => Math.min(1, Math.max(0, (t - from) / takes))
  const rpm = Float64Array.from({ length: n }, (_, i) => {
    const t = i / CONTROL_RATE
    const drift = 1 + 0.004 * Math.sin(1.7 * t + seed)
    return full * drift * (1 - (1 - part) * (at(t, FALLS) - at(t, FALLS + 2 + takes)))
  })
  const still = new Float64Array(n)
  const engine: EngineScript = {
    rpm,
    load: new Float64Array(n).fill(1),
    alternate: still,
    every: 2,
    misfire: still,
    phase: 0,
    gain: 1,
  }
  const clip = makeClip({ kind: 'steady', duration: LONG, engines: [engine], events: [] }, { snr: 10 }, seed)
  return { clip, low: full * part }
}

test('a fall of two seconds is heard in noise as loud as a tenth of the engine, with its time and its speed', () => {
  for (let seed = 1; seed <= 8; seed++) {
    const { clip, low } = losing(seed)
    const [fall, ...more] = fallsOf(clip)
    expect(more, `seed ${seed}`).toEqual([])
    expect(Math.abs(fall!.time - FALLS), `seed ${seed}`).toBeLessThan(0.6)
    expect(Math.abs(fall!.lasts - 2.2), `seed ${seed}`).toBeLessThan(0.6)
    expect(Math.abs(fall!.value! / low - 1), `seed ${seed}`).toBeLessThan(0.02)
  }
})

test('no fall is told of engines that lose no speed, that are worked by hand, or are not there', () => {
  for (const kind of kindsOf('usual'))
    for (const clip of evaluationClips(kind, 1, 'usual', [10])) expect(fallsOf(clip), kind).toEqual([])
})
