/** The day of whole/faults/pondDay.test.ts as an invented sound through the whole path: synthesis, phone, hearing, ranking. */
import { expect, test } from 'vitest'
import { withExpected } from '../../src/trades/sound/expecting.ts'
import { hear } from '../../src/trades/sound/hearSamples.ts'
import { expectsOf, hearOptionsOf } from '../../src/trades/sound/soundFromCraft.ts'
import { makeClip } from '../../src/trades/sound/synth/clip.ts'
import { CONTROL_RATE, type EngineScript } from '../../src/trades/sound/synth/scriptTypes.ts'
import { rankRun } from '../../src/whole/faults/rankRun.ts'
import { demoCraft } from '../../src/whole/push/demo.testkit.ts'
import { solveBalance } from '../../src/whole/push/solveBalance.ts'

const duration = 29

/** rev/min of the shaft's front end at a time, s */
const front: readonly (readonly [number, number])[] = [
  [0, 4550],
  [6, 4550],
  [6.6, 2630],
  [12, 2630],
  [12.4, 10_950],
  [14, 10_950],
  [14.3, 0],
  [16, 0],
  [16.05, 2600],
  [23, 2600],
  [23.8, 4900],
  [28, 4900],
  [28.1, 0],
]

const speedAt = (t: number) => {
  const k = front.findLastIndex(([at]) => at <= t)
  const [at, rpm] = front[k]!
  const next = front[k + 1]
  if (!next || rpm === 0 || next[1] === 0) return rpm
  const steady = rpm + ((next[1] - rpm) * (t - at)) / (next[0] - at)
  // it hunts after the restart, with the choke off
  return t > 16 && t < 23 ? steady * (1 + 0.09 * Math.sin(2 * Math.PI * 0.8 * t)) : steady
}

function engine(fires: (t: number) => boolean, phase: number): EngineScript {
  const n = duration * CONTROL_RATE
  const of = (f: (t: number) => number) => Float64Array.from({ length: n }, (_, i) => f(i / CONTROL_RATE))
  return {
    rpm: of((t) => (fires(t) ? speedAt(t) : 0)),
    load: of((t) => (speedAt(t) > 3000 && speedAt(t) < 6000 ? 1 : 0.4)),
    alternate: of(() => 0),
    every: 2,
    misfire: of((t) => (t > 16 && t < 23 ? 0.1 : 0.01)),
    phase,
    gain: 1,
  }
}

test('an invented pond day, heard, is told as a loss of load after an engine stopped, and the joints are looked at first', () => {
  const craft = demoCraft('sandpiper')
  const clip = makeClip(
    { kind: 'locked', duration, engines: [engine(() => true, 0), engine((t) => t < 6, 0.5)], events: [] },
    { snr: 18 },
    3,
  )
  // as the page and the command lay it beside the craft: two engines on one shaft
  const hearing = withExpected(hear(clip.samples, clip.rate, hearOptionsOf(craft)), expectsOf(craft))
  const r = rankRun({
    craft,
    balance: solveBalance(craft, { ranges: false }),
    hearing,
    kind: 'tied up',
    log: [
      { at: '2026-05-16', kind: 'change', says: 'Drilled the tank for a new outlet; no filter fitted yet.' },
      { at: '2026-05-16', kind: 'change', says: 'Couplings bolted up hand-tight, printed nylon.' },
    ],
  })
  const at = (id: string) => r.causes.find((c) => c.id === id)?.share ?? 0
  expect(r.episodes.slice(0, 4).map((e) => e.kind)).toContain('load-lost')
  expect(at('coupling:shaft.1')).toBeGreaterThan(0.9)
  expect(at('coupling:shaft.1')).toBeGreaterThan(4 * at('coupling:shaft.3'))
  expect(at('lean')).toBeGreaterThan(0.9)
  expect(r.stopped!.any).toBeGreaterThan(0.8)
  expect(r.cannotSay.map((f) => f.id)).toContain('cannot-say-pitch')
  expect(r.checks[0]!.id).toBe('bolts')
})
