import { expect, test } from 'vitest'
import { inWords } from '../../base/answers/printFinding.ts'
import { type Craft, whatIf } from '../../craft/index.ts'
import type { TorqueCurve } from '../../trades/engine/curve.ts'
import { curveFromPeak } from '../../trades/engine/curve.ts'
import { deadDragByLaw, dragAt, squareStroke } from '../../trades/engine/deadDrag.ts'
import { deadDragOfMotored, motoredSpeeds, simulateMotored } from '../../trades/engine/motored.ts'
import { craftWith } from '../../trades/engine/twoStroke.testkit.ts'
import { twoStrokeFromCraft } from '../../trades/engine/twoStrokeFromCraft.ts'
import type { Balance, OneDead } from './balanceTypes.ts'
import { MapStore } from './craftModel.ts'
import { demoCraft } from './demo.testkit.ts'
import { oneDeadOf } from './oneDead.ts'
import { oneDeadFindings } from './oneDeadFindings.ts'
import { oneDeadLimits } from './oneDeadLimits.ts'
import { pushFindings } from './pushFindings.ts'
import { solveBalance } from './solveBalance.ts'

const maps = new MapStore()
const teal = demoCraft('teal')
const heavy = (bar: number): Craft => {
  const engines = teal.engines.map((e, i) => ({
    ...e,
    deadDrag: {
      value: bar * 1e5,
      low: 0.9 * bar * 1e5,
      high: 1.1 * bar * 1e5,
      source: 'guess',
      path: `engines.${i}.dead drag`,
    },
  }))
  return { ...teal, engines } as unknown as Craft
}
const balance = solveBalance(teal, { maps })
const dead = balance.oneDead!

/** Teal's engine as it might be inside: 60 cm³, a modest pipe. */
const sixty = twoStrokeFromCraft(
  craftWith(`engines:
  - name: engine
    kind: two-stroke
    tune: sport
    bore: 43 mm
    stroke: 41.3 mm
    ports:
      exhaust: { opens: 98 deg }
      transfers: { opens: 121 deg, windows: 4 }
    inlet: { kind: reed }
    exhaust:
      pipe:
        - { length: 160 mm, from: 26 mm, to: 28 mm }
        - { length: 330 mm, from: 28 mm, to: 62 mm }
        - { length: 80 mm, from: 62 mm, to: 62 mm }
        - { length: 190 mm, from: 62 mm, to: 17 mm }
      stinger: { length: 170 mm, bore: 17 mm }
`),
  0,
).spec!
const motored = deadDragOfMotored(sixty, simulateMotored(sixty, motoredSpeeds(sixty, 10_000)), 1)!

test('the drag of a dead 60 cm³ engine by the motored simulation lies inside the range of the law at every speed', () => {
  const law = deadDragByLaw(60e-6, squareStroke(60e-6))
  for (let n = 30; n <= 165; n += 15) {
    const t = dragAt(motored, n)
    expect(t, `${n} rev/s`).toBeGreaterThan(dragAt(law, n, -1))
    expect(t, `${n} rev/s`).toBeLessThan(dragAt(law, n, 1))
    expect(dragAt(law, n)).toBeGreaterThan(dragAt(motored, n, -1))
    expect(dragAt(law, n)).toBeLessThan(dragAt(motored, n, 1))
  }
})

test('Teal with one engine dead by the motored simulation lies inside the range given without it', () => {
  const own = curveFromPeak(4100, 7600 / 60, 'tuned', 9200 / 60)
  const solved = new Map<number, TorqueCurve>([0, 1].map((i) => [i, { ...own, dead: motored }]))
  const simulated = oneDeadOf(teal, { maps, solved })!
  expect(simulated.dragFrom).toBe('motored')
  for (const what of ['pull', 'rotation', 'topSpeed'] as const) {
    expect(simulated[what].value, what).toBeGreaterThan(dead[what].low)
    expect(simulated[what].value, what).toBeLessThan(dead[what].high)
  }
})

test('what is left comes with ends round it, less of it than behind a clutch, and a band it would be heard in', () => {
  for (const left of [dead, dead.withClutch!])
    for (const what of ['pull', 'rotation', 'topSpeed'] as const) {
      expect(left[what].low).toBeLessThan(left[what].value)
      expect(left[what].high).toBeGreaterThan(left[what].value)
    }
  expect(dead.withClutch!.pull.value).toBeGreaterThan(dead.pull.value)
  expect(dead.band!.low).toBeLessThan(dead.rotation.value)
  expect(dead.band!.high).toBeGreaterThan(dead.rotation.value)
})

test('the more a dead engine drags the less is left, until the living one stalls: nought, in words, never NaN', () => {
  const pulls = [0.3, 0.6, 1, 1.5, 2.5].map((bar) => oneDeadOf(heavy(bar), { maps })!)
  for (let i = 1; i < pulls.length; i++)
    expect(pulls[i]!.pull.value).toBeLessThanOrEqual(pulls[i - 1]!.pull.value)
  const last = pulls.at(-1)!
  expect(last.stalls).toBe(true)
  expect(last.pull.value).toBe(0)
  expect(last.topSpeed.value).toBe(0)
  const craft = heavy(2.5)
  const says = JSON.stringify(inWords(pushFindings(craft, solveBalance(craft, { maps }))))
  expect(says).toContain('stalls')
  expect(says).not.toMatch(/NaN/)
})

test('a living engine that settles below the idle in the file stalls', () => {
  expect(dead.stalls).toBe(false)
  const turns = dead.rotation.value
  const at = (idle: number) => {
    const engines = teal.engines.map((e) => ({ ...e, idle: { ...('idle' in e ? e.idle : {}), value: idle } }))
    return oneDeadOf({ ...teal, engines } as unknown as Craft, { maps })!
  }
  expect(at(0.97 * turns).stalls).toBe(false)
  expect(at(1.03 * turns).stalls).toBe(true)
})

test('with a jet each only one jet is dead: half the pull, whatever the engine drags', () => {
  const each = (c: Craft): Craft => ({ ...c, drive: { ...c.drive, arrangement: 'a jet each' } })
  const one = oneDeadOf(each(teal), { maps })!
  expect(one.place).toBe('its own jet')
  const both = solveBalance(each(teal), { maps, ranges: false, oneDead: false, pitches: false })
  expect(one.pull.value / both.tiedUp.thrust).toBeCloseTo(0.5, 6)
  expect(oneDeadOf(each(heavy(2.5)), { maps })!.pull.value).toBeCloseTo(one.pull.value, 9)
})

test('behind one-way clutches the drag of the dead engine counts for nothing', () => {
  const free = whatIf(heavy(2.5), { 'drive.clutch': 'one-way' })
  const one = oneDeadOf(free, { maps })!
  expect(one.place).toBe('standing still')
  expect(one.withClutch).toBeUndefined()
  expect(one.pull.value).toBeCloseTo(dead.withClutch!.pull.value, 6)
})

test('an engine that the file says is off is named as such, and the impeller is not blamed', () => {
  const off = whatIf(heavy(2.5), { 'engines.1.running': false })
  const found = inWords(pushFindings(off, solveBalance(off, { maps })))
  const named = found.find((f) => f.id === 'push.engine-off.1')!
  expect(named.standing).toBe('stop')
  expect(named.says).toContain('Rear is off in the file')
  for (const f of found) expect(f.says, f.id).not.toMatch(/the engines cannot turn|too steep|too shallow/)
  expect(JSON.stringify(found)).not.toMatch(/NaN/)
  // nor is its shape to be changed for a dead engine
  expect(found.some((f) => f.id === 'push.change')).toBe(false)
  const none = whatIf(off, { 'engines.0.running': false })
  const silent = inWords(pushFindings(none, solveBalance(none, { maps })))
  expect(silent.filter((f) => f.id.startsWith('push.engine-off'))).toHaveLength(2)
  expect(silent.find((f) => f.id === 'push.engine-off.0')!.says).toContain('no engine runs')
})

const wind = (speed: number): Craft => whatIf(teal, { 'place.wind': speed })
const told = (craft: Craft, over: Partial<OneDead>, limits = oneDeadLimits) => {
  const b: Balance = { ...balance, oneDead: { ...dead, ...over } }
  return oneDeadFindings(craft, b, limits).map((f) => `${f.id} ${f.standing}`)
}
const with_ = (name: keyof typeof oneDeadLimits, value: number) =>
  ({ ...oneDeadLimits, [name]: { ...oneDeadLimits[name], value } }) as unknown as typeof oneDeadLimits

test('under way below the hump is to watch, over the hump good, adrift a stop only where the wind is too strong', () => {
  const adrift = {
    stalls: true,
    pull: { value: 0, low: 0, high: 0 },
    topSpeed: { value: 0, low: 0, high: 0 },
  }
  expect(told(teal, {})[0]).toBe('push.one-dead watch')
  expect(told(teal, { planes: true, stallShare: 0 })[0]).toBe('push.one-dead good')
  expect(told(teal, adrift)[0]).toBe('push.one-dead watch')
  expect(told(wind(7), adrift)[0]).toBe('push.one-dead stop')
})

test('every limit on what is left moves a standing or a finding', () => {
  expect(told(wind(7), {}, with_('underWay', 10))[0]).toBe('push.one-dead stop')
  expect(told(wind(7), {})[0]).toBe('push.one-dead watch')
  const planing = { planes: true, stallShare: 0.05 }
  expect(told(teal, planing)[0]).toBe('push.one-dead good')
  expect(told(teal, planing, with_('mayStall', 0.01))[0]).toBe('push.one-dead watch')
  expect(told(wind(3), { stalls: true }, with_('paddleWind', 2))[0]).toBe('push.one-dead stop')
  expect(told(wind(3), { stalls: true })[0]).toBe('push.one-dead watch')
  expect(told(teal, {})).toContain('push.one-way-clutch good')
  expect(told(teal, {}, with_('clutchGain', 10))).not.toContain('push.one-way-clutch good')
})
