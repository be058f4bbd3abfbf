/**
 * Simulated sessions: a true craft that differs from its file by what nobody knows, faults that begin at their time, steady states by the torque
 * balance of the whole craft, and a hearing's tracks and events of them with what a hearing misses and makes up.
 */
import { type Random, seededRandom } from '../../src/base/numerics/random.ts'
import type { Hearing } from '../../src/trades/sound/hearingTypes.ts'
import type { RunEvent } from '../../src/trades/sound/shaftEvents.ts'
import { event, heardStretches, type Stretch } from '../../src/whole/faults/session.testkit.ts'
import type { RunSession } from '../../src/whole/faults/session.ts'
import type { LogEntry } from '../../src/whole/log/logTypes.ts'
import { drawFaults } from './faultMakers.ts'
import { type Fault, nothing } from './hidden.ts'
import { type Seen, seenOf } from './signsOf.ts'
import { type Bench, steadyOf, type True } from './trueCraft.ts'

export interface Drawn {
  faults: readonly Fault[]
  /** the states of the parts at the end of the day */
  seen: Seen
  /** speeds, rev/min, in order */
  stretches: readonly Stretch[]
  /** as a hearing tells them, and as they were */
  events: readonly RunEvent[]
  happened: readonly RunEvent[]
  /** it ran for more than a minute */
  long: boolean
  log: readonly LogEntry[]
  /** goes on from where the day was drawn */
  rng: Random
}

export interface Simulated {
  session: RunSession
  faults: readonly Fault[]
  drawn: Drawn
  /** what a check's observable shows; the same answer whenever it is asked */
  look: (observable: string, reliability: number) => string
}

/** How a day is heard. */
export type HearingOf = (drawn: Drawn, bench: Bench, seed: number) => Hearing

const byHand: HearingOf = ({ stretches, events }) =>
  heardStretches(
    stretches,
    [...events].sort((a, b) => a.time - b.time),
  )

const chance = (rng: Random, p: number) => rng.next() < p

/** What really happened, before anybody heard or looked. */
export function drawSession(bench: Bench, seed: number): Drawn {
  const rng = seededRandom(seed)
  const { craft } = bench
  const faults = drawFaults(rng, craft)
  const t: True = {
    torque: Math.exp(0.07 * rng.normal()),
    load: Math.exp(0.06 * rng.normal()),
    thrust: Math.exp(0.06 * rng.normal()),
    drag: Math.exp(0.12 * rng.normal()),
  }
  const h = nothing(craft.engines.length)
  for (const f of faults) if (f.begins === 'from the start' || f.begins === 'in turns') f.apply(h)
  const turns = faults.filter((f) => f.begins === 'in turns')
  const long = chance(rng, 0.55)
  const events: RunEvent[] = []
  const happened: RunEvent[] = []
  const stretches: Stretch[] = []
  const healthy = nothing(craft.engines.length)
  let clock = 0
  const noise = () => 1 + 0.003 * rng.normal()
  const put = (seconds: number, lines: readonly number[]) => {
    clock += seconds
    const [a, b] = lines
    stretches.push({ to: clock, a: a ? 60 * a * noise() : 0, ...(b ? { b: 60 * b * noise() } : {}) })
  }
  const tell = (kind: string, p: number, more: Partial<RunEvent> = {}, at = clock) => {
    // a twentieth and less is what a hearing makes up
    if (p > 0.12) happened.push(event(kind, at, more))
    if (chance(rng, p)) events.push(event(kind, at, { confidence: rng.between(0.55, 0.95), ...more }))
  }
  const now = () => steadyOf(bench, h, t)
  const full = steadyOf(bench, healthy, t).pushing
  put(1.2, [])
  tell('start', 0.9)
  put(rng.between(2, 4), now().lines.length > 0 ? [0.38 * full] : [])
  let last = now()
  const pull = (seconds: number) => {
    last = now()
    quality(seconds)
    if (turns.length > 0) return inTurns(seconds)
    put(seconds, last.lines)
  }
  const quality = (seconds: number) => {
    const e = h.engines.filter((x) => x.fires)
    const missed = Math.max(0, ...e.map((x) => x.missed))
    const mixtures = e.map((x) => x.mixture)
    if (missed > 0.08) tell('misfire', 0.65, { lasts: seconds, value: missed })
    else if (Math.min(1, ...mixtures) < 0.74) tell('four-stroking', 0.6, { lasts: seconds })
    else tell(chance(rng, 0.5) ? 'misfire' : 'four-stroking', 0.04, { lasts: seconds })
    tell('hunting', Math.max(0, ...mixtures) > 1.08 || h.went ? 0.45 : 0.03, { lasts: seconds / 2 })
    const bogs =
      Math.max(0, ...mixtures) > 1.05 ||
      Math.min(1, ...mixtures) < 0.74 ||
      h.pitch > 0 ||
      h.engines.some((x) => x.wetPipe > 0.4)
    tell('bog', bogs ? 0.35 : 0.06, { lasts: 1 })
    if (h.slips > 0 || (h.weed > 0.5 && chance(rng, 0.3))) races(true)
    else if (h.air > 0.2 && turns.length === 0) races(chance(rng, 0.1))
    else if (chance(rng, 0.03)) races(false)
  }
  const races = (stays: boolean) =>
    tell(
      stays ? 'load lost' : 'flare',
      stays ? 0.65 : 0.7,
      { lasts: stays ? 2 : rng.between(0.4, 1.2) },
      clock + 1,
    )
  /** a fault that comes and goes: mostly at work in one half of the stretches */
  const inTurns = (seconds: number) => {
    const well = nothing(craft.engines.length)
    const fine = steadyOf(bench, well, t)
    for (let k = 0; k < 3; k++) {
      put(seconds / 6, fine.lines)
      if (h.air > 0.2) tell('flare', 0.75, { lasts: seconds / 6 })
      else if (last.lines.length === 0) tell('cut-out', 0.7, { lasts: seconds / 6 })
      put(seconds / 6, last.lines)
    }
  }
  pull(rng.between(8, 14))
  for (const f of faults.filter((x) => x.begins === 'suddenly')) {
    const firing = h.engines.filter((e) => e.fires).length
    const wasOpen = h.open
    f.apply(h)
    const dies = h.engines.filter((e) => e.fires).length < firing
    if (dies && firing > 1) tell('firing stopped', 0.75)
    if (dies && firing === 1) tell('stop', 0.9, { says: 'stops (cut at speed)' })
    if (h.open !== wasOpen) tell('load lost', 0.75, { lasts: 2 })
    last = now()
    put(h.open !== wasOpen ? 2 : rng.between(5, 9), last.lines)
    if (h.open > 0) {
      tell('stop', 0.8, { says: 'stops (cut at speed)' })
      put(2, [])
      break
    }
  }
  const later = faults.filter((f) => f.begins === 'after a minute or two' || f.begins === 'when hot')
  if (long && h.open === 0) {
    pull(rng.between(55, 80))
    for (const f of later) {
      const before = now().pushing
      f.apply(h)
      const after = now()
      if (after.pushing > 0 && before > 0 && f.begins === 'after a minute or two') {
        tell('fall', after.pushing < 0.95 * before ? 0.7 : 0.1, { lasts: 20 })
        put(10, [Math.sqrt(before * after.pushing)])
      } else if (before > 0 && !(after.pushing > 0)) tell('stop', 0.9, { says: 'stops (ran down)' })
      pull(rng.between(15, 25))
    }
  } else for (const f of later) f.apply(h)
  for (const f of faults) if (f.begins === 'suddenly' && !h.open) void f
  put(1.5, [])
  const end = now()
  const expected = steadyOf(bench, nothing(craft.engines.length), { torque: 1, load: 1, thrust: 1, drag: 1 })
  const rotation = (Number.isNaN(end.pushing) ? 0 : end.pushing) / expected.pushing
  const seen: Seen = {
    hidden: h,
    begins: faults[0]!.begins,
    rotation: rotation * (1 + 0.012 * rng.normal()),
    push: rotation > 0 ? (end.thrust / expected.thrust / rotation ** 2) * Math.exp(0.06 * rng.normal()) : 0,
    pace: (h.drag * t.drag) ** -0.5 * Math.exp(0.05 * rng.normal()),
    firing: h.engines.filter((e) => e.fires).length,
    apart: end.lines.length > 1,
    warm: long,
  }
  const log = [
    ...faults.flatMap((f) => (f.log ? [f.log] : [])),
    ...(chance(rng, 0.25)
      ? [
          [
            'New impeller printed and fitted.',
            'New exhaust pipes welded.',
            'New fuel hose fitted.',
            'New throttle cable set.',
          ][Math.floor(rng.next() * 4)]!,
        ]
      : []),
  ].map((says) => ({ at: '2026-06-01', kind: 'change' as const, says }))
  return { faults, seen, stretches, events, happened, long, log, rng }
}

/** One session as its builder has it: a hearing made by hand, or handed in, what was noticed, and the log. */
export function simulate(bench: Bench, seed: number, hearingOf: HearingOf = byHand): Simulated {
  const drawn = drawSession(bench, seed)
  const { faults, seen, rng, log } = drawn
  const known = new Map<string, string>()
  const look = (id: string, reliability: number) => {
    const held = known.get(id)
    if (held) return held
    const said = seenOf(
      id,
      seen,
      seededRandom(seed * 977 + id.length * 31 + id.charCodeAt(0) * 7 + id.charCodeAt(1)),
      1 - reliability,
    )
    known.set(id, said)
    return said
  }
  // what somebody noticed by themselves: two things at most, often none
  const noticed = ['jet', 'smoke', 'trim', 'raced', 'start', 'stopped', 'shake', 'lasted']
  const observed = noticed
    .filter(() => chance(rng, 0.12))
    .slice(0, 2)
    .map((id) => ({ id, state: look(id, 0.85) }))
  return {
    faults,
    look,
    drawn,
    session: {
      craft: bench.craft,
      balance: bench.balance,
      hearing: hearingOf(drawn, bench, seed),
      kind: 'tied up',
      observed,
      log,
    },
  }
}
