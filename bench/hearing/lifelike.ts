/**
 * The harder half of the measure: sounds with no engine in them, and single engines made as real small two-strokes are, alone and in
 * water, rain and wind. Seeds for tuning and reporting are apart here too.
 */
import { seededRandom } from '../../src/base/numerics/random.ts'
import type { Hearing } from '../../src/trades/sound/hearingTypes.ts'
import { makeListener } from '../../src/trades/sound/listener.ts'
import { type ClipOptions, mixStems, renderStems, usualClip } from '../../src/trades/sound/synth/clip.ts'
import { hardened } from '../../src/trades/sound/synth/hardClips.testkit.ts'
import { drawScript } from '../../src/trades/sound/synth/script.testkit.ts'
import { CONTROL_RATE, type ScriptKind } from '../../src/trades/sound/synth/scriptTypes.ts'
import { type Surrounding, surroundings } from '../../src/trades/sound/synth/surroundings.testkit.ts'
import { noOneScore, type OneScore, scoreOne } from './metrics.ts'

/** s of a clip: what short open recordings last */
const FREE_SECONDS = 5
const LIFELIKE_SECONDS = 7

/** dB of engine over what surrounds it; ALONE is as good as none */
export const ALONE = 60
export const lifelikeLevels = [ALONE, 10, 0, -5] as const

const phoneOf = (rng: ReturnType<typeof seededRandom>) => ({
  highPass: rng.between(20, 100),
  agc: rng.next() < 0.7 ? 0.6 : 0,
  limiter: true,
  codec: rng.next() < 0.5 ? 26 : 0,
})

function heard(samples: Float32Array, rate: number): { free: Hearing; one: Hearing } {
  const listener = makeListener(rate)
  listener.push(samples)
  return { free: listener.finish(), one: listener.again({ engines: 1 }) }
}

/** A clip in which only the surroundings sound. */
export function freeClip(what: Surrounding, seed: number) {
  const rng = seededRandom(7000 * seed + Object.keys(surroundings).indexOf(what))
  const script = drawScript('quiet', FREE_SECONDS, rng)
  const options: ClipOptions = { ...usualClip, phone: phoneOf(rng.fork(1)) }
  return mixStems(renderStems(script, options, rng.fork(2), surroundings[what]), 0, options)
}

export const lifelikeKinds = [
  'steady',
  'ramp',
  'blips',
  'fourstroke',
  'saw',
] as const satisfies readonly ScriptKind[]

/**
 * A single engine as real ones sound: firing that repeats over two, three or four turns and remembers itself, the lowest line the
 * strongest, a spectrum that falls more or less steeply, and timing that scatters a little in most and widely in some.
 */
export function lifelikeClips(kind: (typeof lifelikeKinds)[number], seed: number, levels: readonly number[]) {
  const rng = seededRandom(9000 * seed + lifelikeKinds.indexOf(kind))
  const script = hardened(drawScript(kind, LIFELIKE_SECONDS, rng), rng.fork(1))
  const r = rng.fork(2)
  const timing = Math.min(0.027, 0.007 * Math.exp(0.6 * r.normal()))
  // correlations with the cycle before and the one before that: medians .23 and .39, spread as in recordings
  const one = Math.max(-0.6, Math.min(0.7, 0.15 + 0.3 * r.normal()))
  const two = Math.max(0, Math.min(0.85 - Math.abs(one), 0.36 + 0.15 * r.normal()))
  const options: ClipOptions = {
    ...usualClip,
    phone: phoneOf(r),
    darkness: r.next(),
    body: r.between(0.3, 2.5),
    ownNoise: 0.6 * r.next() ** 2,
    flowNoise: r.between(0.3, 1),
    scatter: {
      timingLoaded: timing,
      timingIdle: Math.min(0.035, 2 * timing),
      strengthLoaded: 0.22,
      strengthIdle: 0.4,
      memory: [one, two],
    },
  }
  const around = (['waves', 'waves', 'rain', 'wind'] as const)[seed % 4]!
  const stems = renderStems(script, options, rng.fork(3), surroundings[around])
  return levels.map((level) => mixStems(stems, level, options))
}

export interface FreeScore {
  clips: number
  /** clips in which an engine is shown */
  shown: number
  /** clips in which something is shown as perhaps one */
  perhaps: number
}

export interface LifelikeScore {
  level: number
  one: OneScore
  frames: number
  /** frames in which a speed is shown that is none of the engine's, the count left to the hearing */
  wrong: number
  clips: number
  calledTwo: number
  byKind: Record<string, OneScore>
}

export interface LifelikeReport {
  free: Record<string, FreeScore>
  lifelike: LifelikeScore[]
}

/** Measures `seeds` clips of each surrounding and of each kind of engine and level. */
export function measureLifelike(
  firstSeed: number,
  seeds: number,
  progress: (part: number) => void = () => {},
): LifelikeReport {
  const free: Record<string, FreeScore> = {}
  const lifelike = lifelikeLevels.map(
    (level): LifelikeScore => ({
      level,
      one: noOneScore(),
      frames: 0,
      wrong: 0,
      clips: 0,
      calledTwo: 0,
      byKind: {},
    }),
  )
  for (let s = 0; s < seeds; s++) {
    for (const what of Object.keys(surroundings) as Surrounding[]) {
      const score = (free[what] ??= { clips: 0, shown: 0, perhaps: 0 })
      const clip = freeClip(what, firstSeed + s)
      const { free: h } = heard(clip.samples, clip.rate)
      score.clips++
      if (h.verdict.code !== 'no engine') score.shown++
      else if (h.perhaps) score.perhaps++
    }
    for (const kind of lifelikeKinds)
      lifelikeClips(kind, firstSeed + s, lifelikeLevels).forEach((clip, k) => {
        const into = lifelike[k]!
        const { free: h, one } = heard(clip.samples, clip.rate)
        const n = h.time.length
        const truth = Float64Array.from(
          { length: n },
          (_, i) =>
            clip.truth[0]![Math.min(clip.truth[0]!.length - 1, Math.round(i * h.step * CONTROL_RATE))]!,
        )
        for (const score of [into.one, (into.byKind[kind] ??= noOneScore())])
          scoreOne(truth, one.tracks[0]!.firing, score)
        into.frames += n
        for (let i = 0; i < n; i++)
          if (h.tracks.some((t) => t.firing[i]! > 0 && !(Math.abs(t.firing[i]! / truth[i]! - 1) < 0.03)))
            into.wrong++
        into.clips++
        if (h.verdict.code === 'two') into.calledTwo++
      })
    progress((s + 1) / seeds)
  }
  return { free, lifelike }
}
