/**
 * Speed of the hearing; with `--evaluate` also its accuracy on the reporting seeds, beside YIN and subharmonic
 * summation (minutes); `--docs` writes that to docs/hearing.md. `--seeds N` and `--hard-seeds N` clips of each kind and level.
 */
import { readFileSync, writeFileSync } from 'node:fs'
import { resolve } from 'node:path'
import { seededRandom } from '../src/base/numerics/random.ts'
import { hear } from '../src/trades/sound/hearSamples.ts'
import { ANALYSIS_RATE } from '../src/trades/sound/resample.ts'
import { resampled } from '../src/trades/sound/sound.testkit.ts'
import { quickSpectrogram } from '../src/trades/sound/spectrogram.ts'
import { makeClip } from '../src/trades/sound/synth/clip.ts'
import { drawScript } from '../src/trades/sound/synth/script.testkit.ts'
import {
  CLIP_SECONDS,
  evaluate,
  firstReportingSeed,
  firstTuningSeed,
  type LevelReport,
  type Severity,
  SHORT_SECONDS,
} from './hearing/evaluation.ts'
import { ALONE, type LifelikeReport, measureLifelike } from './hearing/lifelike.ts'
import { accuracy } from './hearing/metrics.ts'
import { subharmonicSum, yin } from './hearing/rivals.ts'

const args = process.argv.slice(2)
const number = (name: string, otherwise: number) => {
  const at = args.indexOf(name)
  return at >= 0 ? Number(args[at + 1]) : otherwise
}
const word = (name: string) => (args.includes(name) ? args[args.indexOf(name) + 1] : undefined)
const seeds = number('--seeds', 4)
const hardSeeds = number('--hard-seeds', 2)
const snrs = [20, 10, 5, 0, -5]
const hardSnrs = [20, 10, 0]

const two = (v: number) => (Number.isFinite(v) ? v.toFixed(3).replace(/^0/, '') : '–')
const share = (a: number, b: number) => (b > 0 ? two(a / b) : '–')

function table(head: readonly string[], body: readonly (readonly string[])[]): string {
  return [
    `| ${head.join(' | ')} |`,
    `|${head.map(() => '---').join('|')}|`,
    ...body.map((r) => `| ${r.join(' | ')} |`),
  ].join('\n')
}

function run(severity: Severity, firstSeed: number, seeds: number, levels: readonly number[]): LevelReport[] {
  let last = -1
  return evaluate({
    firstSeed,
    seeds,
    snrs: levels,
    severity,
    rivals: { YIN: yin, 'subharmonic summation': subharmonicSum },
    progress: (p) => {
      const percent = Math.floor(10 * p) * 10
      if (percent > last) process.stderr.write(`${severity} ${(last = percent)} %\n`)
    },
  })
}

function oneTable(reports: readonly LevelReport[]): string {
  const names = Object.keys(reports[0]?.rivals ?? {})
  return table(
    [
      'noise, dB',
      'within 3 %',
      'within 1 %',
      'gross (> 20 % or missing)',
      'octave',
      'shown while off',
      ...names.map((n) => `${n}, within 3 %`),
    ],
    reports.map((r) => [
      String(r.snr),
      `**${share(r.one.within3, r.one.on)}**`,
      share(r.one.within1, r.one.on),
      share(r.one.gross, r.one.on),
      share(r.one.octave, r.one.on),
      share(r.one.falseOn, r.one.off),
      ...names.map((n) => share(r.rivals[n]!.within3, r.rivals[n]!.on)),
    ]),
  )
}

function twoTable(reports: readonly LevelReport[]): string {
  return table(
    ['noise, dB', 'accuracy, 3 %', 'right within 1 %', 'false', 'missed', 'labels right'],
    reports.map((r) => {
      const all = r.two.truePositive + r.two.falseNegative
      return [
        String(r.snr),
        `**${two(accuracy(r.two))}**`,
        share(r.two.truePositive1, all),
        share(r.two.falsePositive, all),
        share(r.two.falseNegative, all),
        share(r.two.labelledRight, r.two.labelled),
      ]
    }),
  )
}

function kindTable(reports: readonly LevelReport[]): string {
  const kinds = Object.entries(reports[0]!.byKind).filter(
    ([, v]) => v.one.on + v.two.truePositive + v.two.falseNegative > 0,
  )
  return table(
    ['clip', ...reports.map((r) => `${r.snr} dB`)],
    kinds.map(([kind]) => [
      kind,
      ...reports.map((r) => {
        const v = r.byKind[kind]!
        return v.one.on > 0 ? share(v.one.within3, v.one.on) : two(accuracy(v.two))
      }),
    ]),
  )
}

function countTable(reports: readonly LevelReport[]): string {
  const groups = Object.keys(reports[0]!.count)
  return table(
    ['clip', ...reports.map((r) => `${r.snr} dB`)],
    groups.map((g) => [
      g,
      ...reports.map(({ count }) => {
        const { right, clips, cannotTell } = count[g]!
        return `${right}/${clips}${cannotTell > 0 ? `, in doubt ${cannotTell}` : ''}`
      }),
    ]),
  )
}

function eventTable(reports: readonly LevelReport[]): string {
  const line = (e: { hit: number; missed: number; extra: number }) =>
    `${share(e.hit, e.hit + e.missed)} / ${share(e.hit, e.hit + e.extra)} (${e.hit + e.missed} true)`
  return table(
    ['noise, dB', 'flares: recall / precision', 'stops: recall / precision'],
    reports.map((r) => [String(r.snr), line(r.flares), line(r.stops)]),
  )
}

interface Speed {
  what: string
  ratio: number
  target: number
}

function speeds(): { rows: Speed[]; picture: number } {
  const clip = makeClip(drawScript('slip', 30, seededRandom(77)), { snr: 10 }, 77)
  const time = (engines: 1 | 2) => {
    let best = Number.POSITIVE_INFINITY
    for (let k = 0; k < 3; k++) {
      const before = process.cpuUsage()
      hear(clip.samples, clip.rate, { engines })
      const used = process.cpuUsage(before)
      best = Math.min(best, (used.user + used.system) / 1e6)
    }
    return 30 / best
  }
  const rows = [
    { what: 'one engine', ratio: time(1), target: 30 },
    { what: 'two engines', ratio: time(2), target: 15 },
  ]
  const long = new Float32Array(600 * 48000)
  for (let i = 0; i < long.length; i++) long[i] = clip.samples[i % clip.samples.length]!
  const before = process.cpuUsage()
  quickSpectrogram(resampled(long, 48000, ANALYSIS_RATE))
  const used = process.cpuUsage(before)
  return { rows, picture: (used.user + used.system) / 1e6 }
}

const targets = (usual: readonly LevelReport[]): string[] => {
  const at = (snr: number) => usual.find((r) => r.snr === snr)
  const lines: string[] = []
  const judge = (what: string, value: number, target: number, most = false) => {
    if (!Number.isFinite(value)) return
    const met = most ? value <= target : value >= target
    lines.push(
      `- ${what}: ${two(value)}, wanted ${most ? '≤' : '≥'} ${two(target)}: ${met ? 'met' : '**not met**'}`,
    )
  }
  for (const [snr, target] of [
    [20, 0.97],
    [10, 0.97],
    [5, 0.97],
    [0, 0.92],
    [-5, 0.75],
  ] as const) {
    const r = at(snr)
    if (r) judge(`one engine within 3 % at ${snr} dB`, r.one.within3 / r.one.on, target)
  }
  for (const [snr, target] of [
    [20, 0.96],
    [10, 0.96],
    [5, 0.96],
    [0, 0.87],
  ] as const) {
    const r = at(snr)
    if (r) judge(`two separable engines at ${snr} dB`, accuracy(r.two), target)
  }
  for (const snr of [20, 10, 5, 0]) {
    const r = at(snr)
    if (!r) continue
    let right = 0
    let clips = 0
    for (const g of ['single', 'separable', 'locked']) {
      right += r.count[g]?.right ?? 0
      clips += r.count[g]?.clips ?? 0
    }
    judge(`engine count right at ${snr} dB (${clips} clips)`, right / clips, 0.98)
  }
  for (const snr of [20, 10, 5]) {
    const r = at(snr)
    if (r) judge(`engine shown while it is off at ${snr} dB`, r.one.falseOn / r.one.off, 0.05, true)
  }
  const r = at(10)
  if (r) {
    judge('flares found at 10 dB', r.flares.hit / (r.flares.hit + r.flares.missed), 0.95)
    judge('flares that are real at 10 dB', r.flares.hit / (r.flares.hit + r.flares.extra), 0.95)
    const o = r.count['octave']
    if (o) judge('octave twins answered with "cannot tell" at 10 dB', o.right / o.clips, 0.98)
  }
  return lines
}

/** Heading of the part of the page that `--lifelike N` measures by itself. */
const LIFELIKE = '## Lifelike engines, and none at all'
/** moved on whenever its results have been seen */
const lifelikeReportingSeed = 9711

function lifelikePart(r: LifelikeReport, clips: number): string {
  const engineLess = Object.entries(r.free)
  const wanted = engineLess.filter(([what]) => what !== 'rotor')
  const sum = (key: 'clips' | 'shown') => wanted.reduce((n, [, v]) => n + v[key], 0)
  const judged = (what: string, value: number, target: number, most = false) =>
    `- ${what}: ${two(value)}, wanted ${most ? '≤' : '≥'} ${two(target)}: ${(most ? value <= target : value >= target) ? 'met' : '**not met**'}`
  const named = (level: number) => (level === ALONE ? 'alone' : `${level} dB`)
  const least: Record<number, number> = { [ALONE]: 0.95, 10: 0.9, 0: 0.75, [-5]: 0.55 }
  const frames = r.lifelike.reduce((n, l) => n + l.frames, 0)
  return `${LIFELIKE}

${clips} clips of each kind and level, seeds from ${lifelikeReportingSeed} on; tuned on seeds from ${firstTuningSeed} on. Without an engine: waves that run up a shore with
bubbles and gurgling, rain in gusts on a plate, wind with whistles and flapping, a fire, voices and crying, a clock, and a rotor (which has a comb of its
own; it is shown here and is in no target). ${args.includes('--evaluate') ? '' : 'The tables above were not measured anew with this part: they are of the hearing before it cut frames off at twice their median and asked for whole engines. '}Engines: firing that repeats over two to four turns and follows the cycles before, the lowest line often the
strongest, spectra of many slopes, timing scattered by 0.7 % in the middle and up to 2.7 %, in those waves, rain and wind. The number of clips is small.

${[
  judged('an engine shown where there is none', sum('shown') / sum('clips'), 0.03, true),
  ...r.lifelike.map((l) =>
    judged(`one engine within 3 %, ${named(l.level)}`, l.one.within3 / l.one.on, least[l.level] ?? 0),
  ),
  judged('a wrong track shown', r.lifelike.reduce((n, l) => n + l.wrong, 0) / frames, 0.05, true),
  judged(
    'a single engine called two',
    r.lifelike.reduce((n, l) => n + l.calledTwo, 0) / r.lifelike.reduce((n, l) => n + l.clips, 0),
    0.03,
    true,
  ),
].join('\n')}

${table(
  ['no engine in', 'clips', 'an engine shown', 'perhaps one'],
  engineLess.map(([what, v]) => [what, String(v.clips), String(v.shown), String(v.perhaps)]),
)}

${table(
  ['noise', 'within 3 %', 'gross', 'octave', 'wrong track shown', 'called two'],
  r.lifelike.map((l) => [
    named(l.level),
    `**${share(l.one.within3, l.one.on)}**`,
    share(l.one.gross, l.one.on),
    share(l.one.octave, l.one.on),
    share(l.wrong, l.frames),
    `${l.calledTwo}/${l.clips}`,
  ]),
)}
`
}

// the part on lifelike clips is measured by itself and takes its place at the end of the page
const lifelikeSeeds = number('--lifelike', 0)
if (lifelikeSeeds > 0) {
  const part = lifelikePart(measureLifelike(lifelikeReportingSeed, lifelikeSeeds), lifelikeSeeds)
  const page = readFileSync(resolve(import.meta.dirname, '../docs/hearing.md'), 'utf8')
  publish(`${page.split(LIFELIKE)[0]!.trimEnd()}\n\n${part}`)
}

const speed = speeds()
for (const s of speed.rows)
  console.log(`${s.what}: ${s.ratio.toFixed(1)} times real time on one core (wanted ${s.target})`)
console.log(`first picture of ten minutes at 48 kHz: ${speed.picture.toFixed(2)} s of one core (wanted 3)`)

/** What was measured so far, as `--store FILE` keeps it and `--join FILE,FILE` takes it up. */
interface Measured {
  usual?: LevelReport[]
  usualSeeds: number
  hard?: LevelReport[]
  hardSeeds: number
}

// `--skip N` leaves out the first N seeds, `--set usual` or `--set hard` one of the sets: parts of the work can run side by side
if (args.includes('--evaluate')) {
  const skip = number('--skip', 0)
  const only = word('--set')
  // seed by seed and both sets in turn, so that a page is there early and grows surer
  const m: Measured = { usualSeeds: 0, hardSeeds: 0 }
  for (let k = 0; k < Math.max(seeds, hardSeeds); k++) {
    const seed = firstReportingSeed + skip + k
    if (only !== 'hard' && k < seeds) {
      m.usual = merged(m.usual, run('usual', seed, 1, snrs))
      m.usualSeeds++
    }
    if (only !== 'usual' && k < hardSeeds) {
      m.hard = merged(m.hard, run('hard', seed, 1, hardSnrs))
      m.hardSeeds++
    }
    const store = word('--store')
    if (store) writeFileSync(store, JSON.stringify(m))
    if (m.usual) publish(pageOf(m.usual, m.usualSeeds, m.hard, m.hardSeeds))
  }
}

const parts = word('--join')?.split(',')
if (parts) {
  const all: Measured = { usualSeeds: 0, hardSeeds: 0 }
  for (const file of parts) {
    const part = JSON.parse(readFileSync(file, 'utf8')) as Measured
    if (part.usual) all.usual = merged(all.usual, part.usual)
    if (part.hard) all.hard = merged(all.hard, part.hard)
    all.usualSeeds += part.usualSeeds
    all.hardSeeds += part.hardSeeds
  }
  if (all.usual) publish(pageOf(all.usual, all.usualSeeds, all.hard, all.hardSeeds))
}

/** Sums of two sets of reports of the same levels. */
function merged(a: LevelReport[] | undefined, b: LevelReport[]): LevelReport[] {
  return a ? a.map((r, i) => ({ ...(added(r, b[i]) as LevelReport), snr: r.snr })) : b
}

function added(a: unknown, b: unknown): unknown {
  if (typeof a === 'number') return a + ((b as number | undefined) ?? 0)
  const out: Record<string, unknown> = {}
  for (const key of Object.keys({ ...(a as object), ...(b as object) })) {
    const x = (a as Record<string, unknown>)[key]
    const y = (b as Record<string, unknown> | undefined)?.[key]
    out[key] = x === undefined ? y : y === undefined ? x : added(x, y)
  }
  return out
}

function publish(page: string): void {
  console.log(page)
  if (!args.includes('--docs')) return
  const at = args.indexOf('--out')
  writeFileSync(at >= 0 ? args[at + 1]! : resolve(import.meta.dirname, '../docs/hearing.md'), page)
}

/** The page as it stands; `hard` is left out while it has not been run. */
function pageOf(
  usual: readonly LevelReport[],
  usualSeeds: number,
  hard: readonly LevelReport[] | undefined,
  severeSeeds: number,
): string {
  return `# How well it hears

Measured by \`bench/hearingBench.ts\`; this page is its output, not written by hand.

The recordings are synthetic: seeded clips of ${CLIP_SECONDS} s with wind, splashes, shouted vowels and hiss, echoes, a phone's
high-pass, automatic gain, limiter and (in three of ten) a lossy codec. Noise level is engine power over noise power in
100–2000 Hz while an engine runs. ${usualSeeds} usual and ${severeSeeds} hard clips of each kind and level, seeds from ${firstReportingSeed} on. The number of clips is small: one clip more or less moves a kind's row by several hundredths. Everything was tuned on other
seeds (from ${firstTuningSeed} on); these were not looked at while tuning. (Three earlier reports, on seeds from 9001, 9101 and 9301 on, led to changes;
their seeds count as seen and are not used here.) Accuracy for two engines is TP / (TP + FP + FN) over
frames of 25 ms, within 3 %. A frame in which no speed is shown counts as missed.

**What this does not tell.** Real recordings are harder than synthetic ones, by about 5 to 10 dB of noise: fewer
harmonics, stronger half orders, other machines near by. The hard set leans that way: three to five harmonics, twice the
timing scatter, firing every second, third or fourth turn that comes and goes (up to 70 % weaker in between), the engine's own broadband noise,
waves, rain or wind, one engine of a pair up to 15 dB under the other, late starts, clips of ${SHORT_SECONDS} s, overloaded ones and some at 44.1 kHz, and two kinds of
its own: a saw-like engine that revs as it likes up to 13 500 rpm at up to 20 000 rpm a second, and two of those at once. It is still not a real engine.
No recording with a logged speed was available to check against.

Known weak places: two engines within 4 % of each other for a part of a longer run are sometimes shown as one engine and its double; a
single engine that fires hard every fourth turn while it revs is sometimes answered with two; of two engines that rev as they like, the
fainter one is missing for a quarter to a third of the time, and which label is which after a quick pass is a guess; octave twins are
recognised as doubtful only where the faster one is loud enough to lift every second line by 2 dB or more; now and then voices and
splashes without any engine are taken for one (the rows "quiet").

## Against what was wanted (usual clips)

${targets(usual).join('\n')}

## One engine, usual clips

${oneTable(usual)}

YIN and subharmonic summation always answer, so they show nothing for an engine that is off.

## Two separable engines, usual clips

${twoTable(usual)}

## By kind of clip, usual

${kindTable(usual)}

## Engine count, usual

Octave twins count as right when the answer is "cannot tell". A single engine, which may fire every second turn, and a locked pair
may also be answered so and still count as right; "in doubt" is how many were, so that doubt cannot be bought unseen.

${countTable(usual)}

## Events, usual

${eventTable(usual)}

## Hard clips

${hard ? [oneTable(hard), twoTable(hard), kindTable(hard), countTable(hard), eventTable(hard)].join('\n\n') : 'Not run.'}

## Speed

${table(
  ['what', 'times real time, one core', 'wanted'],
  speed.rows.map((s) => [s.what, s.ratio.toFixed(1), String(s.target)]),
)}

Processor time of one core, 30 s clip, best of three. First picture of ten minutes at 48 kHz: ${speed.picture.toFixed(2)} s.
`
}
