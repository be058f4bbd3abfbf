import { expect, test } from 'vitest'
import { seededRandom } from '../../base/numerics/random.ts'
import { hear } from './hearSamples.ts'
import { listenTo } from './listen.ts'
import { makeListener } from './listener.ts'
import { residuals } from './residuals.ts'
import { median, noiseOnly, pulseTrain, sum } from './sound.testkit.ts'
import { runFindings } from './soundFindings.ts'
import { makeClip } from './synth/clip.ts'
import { voiceNoise } from './synth/noise.ts'
import { drawScript } from './synth/script.testkit.ts'
import type { ScriptKind } from './synth/scriptTypes.ts'

const clip = (kind: ScriptKind, seed: number, snr = 10) =>
  makeClip(drawScript(kind, 8, seededRandom(seed)), { snr }, seed)
const two = sum(
  pulseTrain(70, 4, 8000, { seed: 1 }),
  pulseTrain(89, 4, 8000, { seed: 2 }),
  noiseOnly(4, 8000, 5, 0.05),
)

test('the same seed gives the same clip, another seed another one, and the truth comes with it', () => {
  const a = clip('apart', 3)
  expect(clip('apart', 3).samples).toEqual(a.samples)
  expect(clip('apart', 4).samples).not.toEqual(a.samples)
  expect(a.truth).toHaveLength(2)
  expect(a.truth[0]!.length).toBe(8 * 200)
})

test('two engines apart are each heard within 0.5 % of what they turn, and counted as two', () => {
  const h = hear(two, 8000)
  expect(h.verdict.code).toBe('two')
  const speeds = h.tracks.map((t) => median(t.rpm.subarray(20, 140))).sort((a, b) => a - b)
  expect(Math.abs(speeds[0]! / 4200 - 1)).toBeLessThan(0.005)
  expect(Math.abs(speeds[1]! / 5340 - 1)).toBeLessThan(0.005)
  expect(Array.from(h.count.subarray(20, 140)).every((c) => c === 2)).toBe(true)
})

test('a rigidly coupled pair, and one engine, are one line', () => {
  for (const kind of ['locked', 'steady'] as const)
    expect(hear(clip(kind, 11).samples, 16000).verdict.code).not.toBe('two')
})

test('two engines 2 % apart are told apart and beat at the difference of their firing', () => {
  const x = sum(
    pulseTrain(100, 5, 8000, { seed: 1 }),
    pulseTrain(102, 5, 8000, { seed: 2 }),
    noiseOnly(5, 8000, 6, 0.05),
  )
  const h = hear(x, 8000)
  expect(h.verdict.code).toBe('two')
  expect(h.beat).toBeGreaterThan(1.7)
  expect(h.beat).toBeLessThan(2.3)
})

test('a stop is found within half a second and the track ends there', () => {
  const c = makeClip(drawScript('onedies', 10, seededRandom(5)), { snr: 12 }, 5)
  const h = hear(c.samples, c.rate)
  const want = c.script.events[0]!.time
  expect(h.events.some((e) => e.kind === 'stop' && Math.abs(e.time - want) < 0.5)).toBe(true)
  expect(h.events.some((e) => e.kind === 'one dead')).toBe(true)
})

test('flares of a slipping engine are heard where they happen', () => {
  const c = makeClip(drawScript('slip', 10, seededRandom(6)), { snr: 12 }, 6)
  const flares = hear(c.samples, c.rate).events.filter((e) => e.kind === 'flare')
  for (const e of c.script.events) expect(flares.some((f) => Math.abs(f.time - e.time) < 0.5)).toBe(true)
})

test('the stretches a recording is fed in change nothing', () => {
  const whole = makeListener(8000)
  whole.push(two)
  const pieces = makeListener(8000)
  for (let i = 0; i < two.length; i += 777) pieces.push(two.subarray(i, i + 777))
  const a = whole.finish()
  const b = pieces.finish()
  expect(b.verdict).toEqual(a.verdict)
  for (const [k, t] of a.tracks.entries())
    for (const [i, f] of t.firing.entries())
      expect(Math.abs(b.tracks[k]!.firing[i]! - f)).toBeLessThan(1e-3 + 1e-4 * f)
})

test('a live listener shows both engines while the recording still runs', () => {
  const live = makeListener(8000)
  expect(live.now().engines).toEqual([])
  live.push(two.subarray(0, 24000))
  const now = live.now()
  expect(now.time).toBeGreaterThan(2.4)
  expect(now.engines.map((e) => Math.round(e.rpm / 60)).sort((a, b) => a - b)).toEqual([70, 89])
})

test('a point laid down by hand is kept, and taking it away brings the old track back', () => {
  const listener = makeListener(8000, { engines: 1 })
  listener.push(sum(pulseTrain(80, 3, 8000), noiseOnly(3, 8000, 8, 0.1)))
  const before = listener.finish()
  const locks = [0.9, 1.4, 1.9].map((time) => ({ label: 'A' as const, time, rpm: 9600 }))
  const after = listener.again({ locks })
  expect(Math.abs(after.tracks[0]!.rpm[60]! / 9600 - 1)).toBeLessThan(0.03)
  expect(listener.again({ locks: [] }).tracks[0]!.rpm).toEqual(before.tracks[0]!.rpm)
  const silent = listener.again({
    locks: [0.9, 1.4, 1.9].map((time) => ({ label: 'A' as const, time, rpm: 0 })),
  })
  expect(silent.tracks[0]!.rpm[56]).toBe(0)
})

test('listening stops when asked and says so', () => {
  let asked = 0
  const h = hear(two, 8000, { cancelled: () => ++asked > 2 })
  expect(h.cancelled).toBe(true)
})

test('progress rises to 1', () => {
  const seen: number[] = []
  hear(two.subarray(0, 16000), 8000, { progress: (p) => seen.push(p) })
  expect(seen[seen.length - 1]).toBe(1)
  expect(seen).toEqual([...seen].sort((a, b) => a - b))
})

test('a memo of someone shouting is no engine', () => {
  const rng = seededRandom(3)
  const x = Float32Array.from(voiceNoise(6 * 16000, 16000, rng), (v) => 0.3 * v + 0.003 * rng.normal())
  expect(hear(x, 16000).verdict.code).toBe('no engine')
})

test('two engines an octave apart are not claimed to be told apart', () => {
  const h = hear(clip('octave', 21, 15).samples, 16000)
  expect(h.verdict.code).toBe('cannot tell')
  expect(runFindings(h)[0]!.standing).toBe('unknown')
})

test('listening to one engine leaves its lines and takes the other’s away', () => {
  const h = hear(two, 8000)
  const slow = h.tracks.find((t) => Math.abs(median(t.firing.subarray(20, 140)) - 70) < 2)!
  const alone = listenTo(two, 8000, slow, h.step)
  const power = (x: Float32Array, f: number) => {
    let re = 0
    let im = 0
    for (let i = 8000; i < 24000; i++) {
      re += x[i]! * Math.cos((2 * Math.PI * f * i) / 8000)
      im += x[i]! * Math.sin((2 * Math.PI * f * i) / 8000)
    }
    return re * re + im * im
  }
  expect(power(alone, 140)).toBeGreaterThan(0.7 * power(two, 140))
  expect(power(alone, 178)).toBeLessThan(0.02 * power(two, 178))
})

test('residuals compare the steady speed with the prediction, and findings say which way it lies', () => {
  const h = hear(sum(pulseTrain(90, 4, 8000), noiseOnly(4, 8000, 8, 0.05)), 8000, { engines: 1 })
  const prediction = { time: [0], rpm: [6000], low: [5800], high: [6200] }
  const r = residuals(h, prediction)[0]!
  expect(r.part).toBeCloseTo(-0.1, 2)
  expect(r.standing).toBe('low')
  const finding = runFindings(h, { prediction }).find((f) => f.id === 'runs.residual-A')!
  expect(finding.standing).toBe('watch')
  expect(finding.says).toContain('5400 rpm where 6000 rpm was expected')
  expect(runFindings(h)[0]!.unit).toBe('rev/s')
})
