import { expect, test } from 'vitest'
import { expectGolden } from '../../drawing/golden.testkit.ts'
import type { Sheet } from '../../drawing/sheet.ts'
import { madeUpBalance } from './balance.testkit.ts'
import { changesFigure, doubtsFigure } from './changesFigure.ts'
import { demoCraft } from './demo.testkit.ts'
import { matchingFigure } from './matchingFigure.ts'
import { forcesFigure, runFigure } from './pushFigures.ts'
import { inchLook, metricLook, plain, says, saysStep } from './shown.ts'

const now = madeUpBalance()
const other = madeUpBalance(0.94)
const words = (s: Sheet) => s.marks.flatMap((m) => (m.kind === 'text' ? [m.text] : []))
const lines = (s: Sheet) => (s.plots?.[0]?.series ?? []).map((l) => l.name)

test('the four figures with a tried balance look as they did, wide and narrow', () => {
  for (const [name, look] of [
    ['wide', { ...metricLook, width: 240 }],
    ['narrow', { ...metricLook, width: 94 }],
  ] as const) {
    expectGolden(matchingFigure(now, other, look), `${import.meta.dirname}/golden`, `matching-${name}`)
    expectGolden(forcesFigure(now, other, look), `${import.meta.dirname}/golden`, `forces-${name}`)
    expectGolden(runFigure(now, other, look), `${import.meta.dirname}/golden`, `run-${name}`)
    expectGolden(
      changesFigure(now, other, 'topSpeed', look),
      `${import.meta.dirname}/golden`,
      `changes-${name}`,
    )
  }
})

test('the matching figure marks every steady speed and tells which one it runs at', () => {
  const sheet = matchingFigure(now, undefined, { ...metricLook, width: 280 })
  for (const w of [
    'runs at 6840 rpm',
    'cannot stay here',
    'holds only if brought here',
    'bogs here',
    'most power',
  ])
    expect(words(sheet)).toContain(w)
  expect(sheet.says).toContain('6840 rpm')
})

test('a tried balance that changes nothing draws nothing more', () => {
  for (const draw of [matchingFigure, forcesFigure, runFigure])
    expect(lines(draw(now, madeUpBalance(), metricLook))).toEqual(lines(draw(now, undefined, metricLook)))
})

test('a tried balance adds dashed lines beside those that move, and only those', () => {
  expect(lines(matchingFigure(now, other, metricLook))).toContain('impeller takes, tied up, tried')
  expect(lines(matchingFigure(now, other, metricLook))).not.toContain('engines give, tried')
  expect(lines(forcesFigure(now, other, metricLook))).toContain('thrust, tried')
  expect(lines(forcesFigure(now, other, metricLook))).not.toContain('drag, tried')
})

test('changes come with the largest gain first and the worst loss last, and those without an answer are left out', () => {
  const names = words(changesFigure(now, undefined, 'topSpeed', { ...metricLook, width: 280 }))
  const order = [
    'pitch 104 mm instead of 118 mm',
    'blades sanded and sealed, 12 to 3 µm',
    '10 % less reduction, ratio 1.13',
  ]
  expect(names.filter((n) => order.includes(n))).toEqual(order)
  expect(names).not.toContain('a change without an answer')
})

test('bars show what is tried as a hollow mark where the tried balance knows the same change', () => {
  const signs = (o: typeof now | undefined) =>
    changesFigure(now, o, 'topSpeed', metricLook).marks.filter(
      (m) => m.kind === 'polygon' && m.style.fill === '#ffffff',
    ).length
  expect(signs(undefined)).toBe(0)
  expect(signs(other)).toBe(3)
  expect(signs({ ...other, changes: [] })).toBe(0)
})

test('the doubt of an answer is drawn largest first, each input named with its source', () => {
  const craft = demoCraft('heron')
  const b = madeUpBalance()
  const driver = (path: string, topSpeed: number) => ({ ...b.drivers[0]!, path, says: path, topSpeed })
  b.drivers = [driver('drive.efficiency', 0.1), driver('jet.rotor.pitch', 0.5), driver('hull.length', 0)]
  const sheet = doubtsFigure(craft, b, undefined, 'topSpeed', metricLook)
  const names = words(sheet).filter((w) => w.includes('(guess)'))
  expect(names).toEqual(['the impeller’s pitch (guess)', 'the drive’s efficiency (guess)'])
  expect(words(sheet)).toContain('± 1.8 km/h')
  expect(doubtsFigure(craft, { ...b, drivers: [] }, undefined, 'pull', metricLook).says).toBe(
    'Not worked out yet.',
  )
})

test('figures come in the units asked for', () => {
  expect(words(forcesFigure(now, undefined, inchLook))).toContain('force, lbf')
  expect(words(forcesFigure(now, undefined, inchLook))).toContain('boat speed, mph')
})

test('a craft that cannot turn its impeller still gives figures, with no NaN on paper', () => {
  const dead = madeUpBalance()
  const nan = (a: number[]) => a.map(() => Number.NaN)
  dead.curve.thrust = nan(dead.curve.thrust)
  dead.tiedUpRoots = []
  delete dead.top
  dead.run = { time: [0], speed: [0], distance: [0], stuck: true }
  dead.verdict.bestPitch = { value: Number.NaN, low: Number.NaN, high: Number.NaN }
  dead.matching.impellerAtBestPitch = []
  dead.matching.bogRotation = Number.NaN
  for (const draw of [matchingFigure, forcesFigure, runFigure])
    for (const m of draw(dead, undefined, metricLook).marks) {
      if (m.kind === 'polyline' || m.kind === 'polygon') expect(m.points.every(Number.isFinite)).toBe(true)
      if (m.kind === 'text') expect(m.text).not.toMatch(/NaN|undefined/)
    }
})

test('numbers in words: rounded, with a true minus, a dash for none', () => {
  expect(says(8.72, 'speed', metricLook)).toBe('31.4 km/h')
  expect(says(0.0254, 'length', inchLook)).toBe('1.00 in')
  expect(says(1234, 'force', metricLook)).toBe('1230 N')
  expect(saysStep(-0.5, 'speed', metricLook)).toBe('−1.8 km/h')
  expect(saysStep(0.00001, 'speed', metricLook)).toBe('0.0 km/h')
  expect(plain(Number.NaN, 1)).toBe('–')
})

test('the answer is marked as the headline has it, with its likely range; the crossing of the lines says that it is of the file’s values', () => {
  const b = madeUpBalance()
  const value = b.top!.speed - 0.4
  const doubtful = { ...b, topSpeed: { value, low: value - 2, high: value + 1 } }
  const look = { ...metricLook, width: 280 }
  const said = words(forcesFigure(doubtful, undefined, look))
  expect(said).toContain(`top speed ${says(value, 'speed', look)}`)
  expect(said).toContain(`${says(b.top!.speed, 'speed', look)} by the file’s values`)
  expect(said).toContain('likely')
  // without ranges there is one speed only
  const alone = { ...b, topSpeed: { value: b.top!.speed, low: Number.NaN, high: Number.NaN } }
  const plainly = words(forcesFigure(alone, undefined, look))
  expect(plainly).toContain(`top speed ${says(b.top!.speed, 'speed', look)}`)
  expect(plainly).not.toContain('likely')
  const turning = { ...b, tiedUpRotation: { value: 110, low: 100, high: 118 } }
  const turns = words(matchingFigure(turning, undefined, look))
  expect(turns).toContain('tied up 6600 rpm')
  expect(turns.some((w) => /rpm by the file’s values/.test(w))).toBe(true)
})
