import { expect, test } from 'vitest'
import { printed } from '../../base/answers/sentence.ts'
import { between, contextOf, trackOf } from './frames.testkit.ts'
import { STEP } from './settings.ts'
import { speedEvents, surges } from './speedEvents.ts'

/** idle, throttle opened within 0.3 s at 2 s, a flare at `flare` s that lasts 0.6 s */
const pull = (flare: number) =>
  trackOf(
    14,
    (t) =>
      40 +
      60 * between(t, 2, 2.3) +
      35 * (between(t, flare, flare + 0.2) - between(t, flare + 0.6, flare + 0.8)),
  )
test('a quick opening and a flare inside the same pull are two rises, from half a second after the opening on', () => {
  for (const flare of [3, 4, 6, 9]) {
    const t = pull(flare)
    const found = surges(t, { from: 0, to: t.rate.length }, Math.log(1.15))
    expect(found.map((r) => Math.round(r.peak))).toEqual([100, 135])
    expect(Math.abs(found[1]!.from * STEP - flare)).toBeLessThan(0.1)
    const flares = speedEvents(t, 'A', contextOf(t.rate.length)).filter((e) => e.kind === 'flare')
    expect(flares.map((e) => Math.round(e.time))).toEqual([flare])
  }
})

test('an opening that stays open is no flare, and a slow rise is no surge', () => {
  const opened = trackOf(10, (t) => 40 + 60 * between(t, 2, 2.3))
  expect(speedEvents(opened, 'A', contextOf(400)).filter((e) => e.kind === 'flare')).toEqual([])
  const slow = trackOf(10, (t) => 40 + 60 * between(t, 1, 9))
  expect(surges(slow, { from: 0, to: 400 }, Math.log(1.15))).toEqual([])
})

/** idle, the throttle opened at 2 s, a fall back to `low` Hz at 2.4 s, up again at 3 s to 90 Hz until `until` s */
const swings = (low: number, until: number) =>
  trackOf(
    10,
    (t) =>
      40 +
      50 * between(t, 2, 2.4) +
      (low - 90) * between(t, 2.4, 2.8) +
      (90 - low) * between(t, 3, 3.5) -
      50 * between(t, until, until + 0.4),
  )
const bogs = (t: ReturnType<typeof trackOf>) =>
  speedEvents(t, 'A', contextOf(t.rate.length)).filter((e) => e.kind === 'bog')

test('a fall after an opening that is made up again and then holds is a bog, as deep as it may be', () => {
  for (const low of [70, 55, 42, 35]) {
    const found = bogs(swings(low, 9))
    expect(found).toHaveLength(1)
    expect(found[0]!.time).toBeCloseTo(2.4, 0)
    expect(found[0]!.value).toBeCloseTo(1 - low / 90, 1)
  }
})

test('a throttle worked by hand, down to idle and up for less than a second and a half, is no bog', () => {
  for (const low of [46, 42, 38]) expect(bogs(swings(low, 4.2))).toEqual([])
})

test('an opened throttle is told as a rise of speed, as nobody says whether the shaft was free', () => {
  const opened = trackOf(10, (t) => 40 + 60 * between(t, 2, 2.3))
  const [rise, ...more] = speedEvents(opened, 'A', contextOf(400))
  expect(more).toEqual([])
  expect([rise!.kind, printed(rise!.says)]).toEqual(['speed rises', 'from 2400 rpm to 6000 rpm'])
})

test('racing from a pulling speed is a lost load however high it goes; from idle it is only a rise', () => {
  const raced = (top: number, before: number) =>
    speedEvents(
      trackOf(14, (t) => before + before * (top - 1) * (between(t, 6, 6.3) - between(t, 7, 7.3))),
      'A',
      contextOf(560),
    ).map((e) => e.kind)
  for (const top of [1.3, 2.3, 2.8]) expect(raced(top, 65)).toEqual(['flare'])
  expect(raced(2.3, 50)).toEqual(['speed rises'])
})
