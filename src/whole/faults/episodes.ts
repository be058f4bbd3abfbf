/** A recording cut into stretches in which nothing changed that matters, by its marks and by the speeds themselves. */
import { inRpm, inSeconds } from '../../base/answers/amounts.ts'
import { joined, type Sentence, say } from '../../base/answers/sentence.ts'
import type { Hearing } from '../../trades/sound/hearingTypes.ts'
import type { Mark } from './heardMarks.ts'
import type { Episode } from './rankingTypes.ts'

/** Middle speed of one engine over an episode. */
export interface Heard {
  label: 'A' | 'B'
  /** rev/s */
  rotation: number
  /** share of the episode in which it sounds */
  sounding: number
  /** what the middle half of its speeds spreads over, as a standard deviation, ln: a stretch still rising is no steady one */
  spread: number
}

export interface HeardEpisode extends Episode {
  lines: readonly Heard[]
  /** marks that lie in it or at its beginning */
  marks: readonly Mark[]
}

/** s: stretches shorter than this are not held apart, speeds nearer than this to a cut are not read */
const shortest = 0.6
const margin = 0.15
/** ln of the ratio of speeds from which two stretches are two */
const differs = 0.05

const middle = (values: readonly number[]): number => {
  const sorted = [...values].sort((a, b) => a - b)
  return sorted[sorted.length >> 1] ?? 0
}

function spreadOf(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b)
  const at = (part: number) => sorted[Math.floor(part * (sorted.length - 1))]!
  return sorted.length > 2 ? Math.log(at(0.75) / at(0.25)) / 1.35 : 0
}

function linesIn(h: Hearing, from: number, to: number): Heard[] {
  const edge = to - from > 4 * margin ? margin : 0
  const first = Math.max(0, Math.ceil((from + edge) / h.step))
  return h.tracks.flatMap((t) => {
    const last = Math.min(t.rpm.length, Math.floor((to - edge) / h.step))
    const on: number[] = []
    for (let i = first; i < last; i++) if (t.rpm[i]! > 0) on.push(t.rpm[i]! / 60)
    const sounding = last > first ? on.length / (last - first) : 0
    return sounding > 0.5 ? [{ label: t.label, rotation: middle(on), sounding, spread: spreadOf(on) }] : []
  })
}

/** Times at which a track sets in, falls silent, or settles at another speed. */
function ownCuts(h: Hearing): number[] {
  const out: number[] = []
  const look = Math.max(2, Math.round(0.7 / h.step))
  const rest = Math.round(0.15 / h.step)
  for (const t of h.tracks) {
    const n = t.rpm.length
    const meanLog = (from: number, to: number) => {
      let sum = 0
      let count = 0
      for (let i = Math.max(0, from); i < Math.min(n, to); i++)
        if (t.rpm[i]! > 0) {
          sum += Math.log(t.rpm[i]!)
          count++
        }
      return count > 0.6 * (to - from) ? sum / count : Number.NaN
    }
    let best = 0
    let where = -1
    for (let i = look; i < n - look; i++) {
      const before = meanLog(i - look, i - rest)
      const after = meanLog(i + rest, i + look)
      const was = Number.isFinite(before)
      const is = Number.isFinite(after)
      const step = was && is ? Math.abs(after - before) : was !== is ? 1 : 0
      if (step > differs && step > best) [best, where] = [step, i]
      if (where >= 0 && (step <= differs || i - where > look)) {
        out.push(where * h.step)
        ;[best, where] = [0, -1]
      }
    }
    if (where >= 0) out.push(where * h.step)
  }
  return out
}

/** Cuts in order, none nearer than `shortest` to another; those of marks go before the others. */
function cutsOf(h: Hearing, marks: readonly Mark[]): number[] {
  const wanted = marks.flatMap((m) =>
    m.kind === 'races' || m.kind === 'load lost' ? [m.at, m.at + m.lasts] : [m.at],
  )
  // swings of an engine that hunts are one state, not many
  const swings = (t: number) =>
    marks.some((m) => m.kind === 'hunts' && t > m.at && t < m.at + m.lasts - shortest / 2)
  const kept: number[] = []
  for (const t of [...wanted, ...ownCuts(h).filter((t) => !swings(t))])
    if (t > shortest && t < h.duration - shortest && kept.every((k) => Math.abs(k - t) >= shortest))
      kept.push(t)
  return kept.sort((a, b) => a - b)
}

const sameLines = (a: readonly Heard[], b: readonly Heard[]) =>
  a.length === b.length &&
  a.every((x) => b.some((y) => y.label === x.label && Math.abs(Math.log(y.rotation / x.rotation)) < differs))

/** Cuts a hearing. `loaded`: rev/s the engines are expected at under full load, NaN where unknown; `engines`: how many the craft has. */
export function episodesOf(
  h: Hearing,
  marks: readonly Mark[],
  loaded: number,
  engines: number,
): HeardEpisode[] {
  const edges = [0, ...cutsOf(h, marks), h.duration]
  const parts: { from: number; to: number; lines: Heard[]; marks: Mark[] }[] = []
  for (let i = 0; i + 1 < edges.length; i++) {
    const from = edges[i]!
    const to = edges[i + 1]!
    const lines = linesIn(h, from, to)
    const own = marks.filter((m) => m.at >= from - shortest / 2 && m.at < to - shortest / 2)
    const before = parts.at(-1)
    // a cut at which nothing happened and nothing changed is none
    if (before && own.every((m) => m.kind === 'other') && sameLines(before.lines, lines)) {
      before.to = to
      before.lines = linesIn(h, before.from, to)
    } else parts.push({ from, to, lines, marks: own })
  }
  const usual = Number.isFinite(loaded) ? loaded : usualOf(parts)
  let dragged = false
  let ran = false
  let pulled = false
  return parts.map((p, i) => {
    const has = (kind: Mark['kind']) => p.marks.some((m) => m.kind === kind)
    if (has('one stops')) dragged = true
    if (has('one fires again') || p.lines.length === 0) dragged = false
    const kind = kindOf(p, has, { before: parts[i - 1], usual, dragged, ran, pulled, engines })
    ran ||= p.lines.length > 0
    pulled ||= kind === 'both-pulling' || kind === 'pulling' || kind === 'one-dragged'
    return {
      id: `e${i}`,
      kind,
      from: p.from,
      to: p.to,
      lines: p.lines,
      marks: p.marks,
      says: saysOf(kind, p, engines),
    }
  })
}

type Part = { from: number; to: number; lines: readonly Heard[] }

/** The speed held longest among the faster half, rev/s. */
function usualOf(parts: readonly Part[]): number {
  const top = Math.max(0, ...parts.flatMap((p) => p.lines.map((l) => l.rotation)))
  const fast = parts.filter((p) => p.lines.some((l) => l.rotation > 0.5 * top))
  const longest = fast.sort((a, b) => b.to - b.from - (a.to - a.from))[0]
  return longest ? Math.max(...longest.lines.map((l) => l.rotation)) : Number.NaN
}

interface Before {
  /** the part before it, and what came before that */
  before: Part | undefined
  usual: number
  dragged: boolean
  ran: boolean
  /** it pulled before */
  pulled: boolean
  engines: number
}

function kindOf(
  p: Part,
  has: (kind: Mark['kind']) => boolean,
  { before, usual, dragged, ran, pulled, engines }: Before,
): string {
  if (p.lines.length === 0) return 'silent'
  const fastest = Math.max(...p.lines.map((l) => l.rotation))
  const was = Math.max(0, ...(before?.lines ?? []).map((l) => l.rotation))
  // faster than predicted from the first pull on is a light load; lost is what was there before
  const lost = fastest > 1.3 * was && was > 0 && fastest > (pulled ? 1.3 : 1.8) * usual
  if (has('load lost') || lost) return 'load-lost'
  // a race too short to be seen in the speed leaves the stretch what it was
  if ((has('races') || has('draws air')) && fastest > 1.05 * was) return 'racing'
  if (has('choke helps') || has('choke hurts')) return 'choke-on'
  if (has('hunts')) return 'will-not-rev'
  const restarts = before === undefined || before.lines.length === 0
  if (restarts && fastest < 0.75 * usual) return ran ? 'restart' : 'cold-start'
  if (dragged) return engines > 1 ? 'one-dragged' : 'pulling'
  if (fastest >= 0.75 * usual) return engines > 1 ? 'both-pulling' : 'pulling'
  return 'part-speed'
}

const words: Readonly<Record<string, string>> = {
  silent: 'nothing is heard',
  'load-lost': 'the load is lost and an engine races',
  racing: 'an engine races',
  'choke-on': 'the choke is on',
  'will-not-rev': 'it hunts and will not rev up',
  restart: 'it runs again',
  'cold-start': 'it starts',
  'one-dragged': 'one engine no longer fires and is dragged',
  'both-pulling': 'all engines pull',
  pulling: 'the engine pulls',
  'part-speed': 'it runs at part speed',
}

function saysOf(kind: string, p: Part, engines: number): Sentence {
  const speeds = p.lines.map((l) => say`${inRpm(l.rotation)}`)
  const time = say`${inSeconds(p.from)} to ${inSeconds(p.to)}`
  if (speeds.length === 0) return say`${time}: ${words[kind] ?? kind}`
  const at = joined(speeds, ' and ')
  return say`${time}: ${words[kind] ?? kind}, ${at}${p.lines.length > 1 && engines > 1 ? ', turning apart' : ''}`
}
