/** Invented sessions put through the hearing, and how what was told compares with what was made. */
import { type Random, seededRandom } from '../../base/numerics/random.ts'
import { withExpected } from './expecting.ts'
import type { Hearing } from './hearingTypes.ts'
import { hear } from './hearSamples.ts'
import type { EventKind, RunEvent } from './shaftEvents.ts'
import type { CraftExpects } from './soundFromCraft.ts'
import { makeClip } from './synth/clip.ts'
import { type Scene, type SceneKind, type SessionTruth, sessionScript } from './synth/session.testkit.ts'

/** What each scene should be told as; none where it makes no event of its own. */
const toldAs: Partial<Record<SceneKind, readonly EventKind[]>> = {
  'one stops firing': ['one dead'],
  'fires again': ['fires again'],
  'load lost': ['load lost', 'flare'],
  'load back': ['load back', 'flare'],
  opens: ['speed rises', 'step up'],
  closes: ['fall'],
  hunts: ['hunting'],
  chokes: ['speed rises', 'step up'],
  bogs: ['bog'],
  killed: ['stop'],
  starves: ['stop'],
  start: ['start'],
}
/** told kinds that count when nothing made them */
const counted = new Set<EventKind>([
  'one dead',
  'fires again',
  'load lost',
  'load back',
  'flare',
  'hunting',
  'bog',
  'stop',
  'start',
  'fall',
])

export const twoOnOneShaft: CraftExpects = { engines: 2, coupling: 'one shaft' }

export function heardSession(
  scenes: readonly Scene[],
  snr: number,
  seed: number,
): { hearing: Hearing; truth: SessionTruth[] } {
  const { script, truth } = sessionScript(scenes, seededRandom(seed))
  const clip = makeClip(script, { snr }, seed)
  return { hearing: withExpected(hear(clip.samples, clip.rate), twoOnOneShaft), truth }
}

/** A session drawn at random: what can follow what, at speeds such engines have. */
export function drawnSession(rng: Random): Scene[] {
  const full = rng.between(4300, 7000)
  const scenes: Scene[] = []
  const add = (
    kind: SceneKind,
    lasts: number,
    rpm: number,
    takes: number,
    firing: 0 | 1 | 2,
    hunts?: Scene['hunts'],
  ) => scenes.push({ kind, lasts, rpm, takes, firing, ...(hunts ? { hunts } : {}) })
  add('silence', rng.between(1.2, 2.5), 0, 0.05, 0)
  add('start', rng.between(4, 6), full, 0.3, 2)
  const turns = 2 + Math.floor(2 * rng.next())
  for (let k = 0; k < turns; k++) {
    const what = rng.next()
    if (what < 0.3) {
      add('one stops firing', rng.between(4, 6), full * rng.between(0.68, 0.8), rng.between(0.3, 0.6), 1)
      if (rng.next() < 0.5) add('fires again', rng.between(4, 6), full, rng.between(0.4, 0.9), 2)
      else {
        add('load lost', rng.between(1.2, 3), full * rng.between(1.5, 1.9), rng.between(0.3, 0.5), 1)
        break
      }
    } else if (what < 0.55) {
      add('load lost', rng.between(1, 2.5), full * rng.between(1.35, 1.7), rng.between(0.2, 0.35), 2)
      add('load back', rng.between(3.5, 5), full, rng.between(0.2, 0.4), 2)
    } else if (what < 0.8) {
      add('closes', rng.between(3, 5), rng.between(2300, 2900), 0.9, 2)
      if (rng.next() < 0.6)
        add('hunts', rng.between(5, 7), 2700, 0.2, 2, {
          by: rng.between(220, 380),
          period: rng.between(0.9, 1.8),
        })
      add('opens', rng.between(4, 6), full, rng.between(0.8, 1.3), 2)
    } else add('both pull', rng.between(3, 5), full, 0.1, 2)
  }
  if (rng.next() < 0.4) {
    const takes = rng.between(1.3, 2.6)
    add('starves', takes + rng.between(2, 3), 0, takes, scenes[scenes.length - 1]!.firing)
  } else add('killed', rng.between(2, 3), 0, 0.05, 0)
  return scenes
}

export interface Score {
  hits: number
  misses: string[]
  wrong: string[]
}

/** Every told event against the truth: right kind within 0.8 s. */
export function scored(events: readonly RunEvent[], truth: readonly SessionTruth[], unsure = 0.25): Score {
  const told = events.filter((e) => e.confidence > unsure)
  const used = new Set<RunEvent>()
  const score: Score = { hits: 0, misses: [], wrong: [] }
  for (const t of truth) {
    const kinds = toldAs[t.kind]
    // a throttle closed to idle is the hand's own doing and told as nothing
    if (!kinds || t.kind === 'closes') continue
    const e = told.find(
      (x) =>
        kinds.includes(x.kind) &&
        // a stop counts only when how it stopped is told right
        (x.how === undefined || (x.how === 'killed') === (t.kind === 'killed')) &&
        (Math.abs(x.time - t.time) < 0.8 ||
          (t.kind === 'load back' && x.kind === 'flare' && Math.abs(x.time + x.lasts - t.time) < 0.8)),
    )
    if (e) {
      used.add(e)
      score.hits++
    } else score.misses.push(`${t.kind} at ${t.time.toFixed(1)}`)
  }
  for (const e of told)
    if (
      counted.has(e.kind) &&
      !used.has(e) &&
      !truth.some((t) => toldAs[t.kind]?.includes(e.kind) && Math.abs(e.time - t.time) < 0.8)
    )
      score.wrong.push(`${e.kind} at ${e.time.toFixed(1)}`)
  return score
}
