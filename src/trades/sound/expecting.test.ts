import { expect, test } from 'vitest'
import { printed } from '../../base/answers/sentence.ts'
import { countAgainst, withExpected } from './expecting.ts'
import { runAnswer } from './heardAnswer.ts'
import type { Hearing } from './hearingTypes.ts'
import { pullResidual, readPull } from './pull.ts'
import { residuals } from './residuals.ts'
import { heardTracks, steadyTrack, toldOfRun } from './sound.testkit.ts'
import { pullFinding } from './soundFindings.ts'
import type { Coupling, CraftExpects } from './soundFromCraft.ts'
import { soundLimits } from './soundLimits.ts'
import { runInputs } from './soundTrade.ts'

const heard = (speeds: readonly number[], part: Partial<Hearing> = {}) =>
  heardTracks(
    speeds.map((v, i) => steadyTrack(i === 0 ? 'A' : 'B', v)),
    part,
  )
const expects = (coupling: Coupling): CraftExpects => ({
  engines: coupling === 'single' ? 1 : 2,
  coupling,
  most: 9000,
})
const tiedUp = { time: [0], rpm: [6300], low: [5900], high: [6700] }

test('two engines on one shaft that fire in turn are read at the shaft’s speed, and it is said', () => {
  const h = withExpected(heard([12_600]), expects('one shaft'))
  expect(h.tracks[0]!.rpm[100]).toBe(6300)
  expect(h.tracks[0]!.firing[100]).toBe(210)
  expect(h.flags[0]!.code).toBe('in-turn')
  expect(withExpected(heard([6300]), expects('one shaft'))).toEqual(heard([6300]))
})

test('an open octave is settled by the prediction when only the other reading lies in its range', () => {
  const open = { octaves: [{ label: 'A' as const, from: 2, to: 8, factor: 2 }] }
  const doubt = { ...open, verdict: { code: 'cannot tell' as const, says: '', coupling: 'unknown' as const } }
  const h = withExpected(heard([3150], doubt), expects('single'), tiedUp)
  expect(h.tracks[0]!.rpm[200]).toBe(6300)
  expect(h.tracks[0]!.rpm[20]).toBe(3150)
  expect(h.octaves).toEqual([])
  expect(h.verdict.code).toBe('one')
  // both readings off, or the first one right: left as heard
  for (const rpm of [2000, 6300])
    expect(withExpected(heard([rpm], open), expects('single'), tiedUp).tracks[0]!.rpm[200]).toBe(rpm)
})

test('the count of lines is laid beside what the craft file has', () => {
  const agrees = (speeds: number[], c: Coupling) => countAgainst(heard(speeds), expects(c))?.agrees
  expect(agrees([6000], 'single')).toBeUndefined()
  expect(agrees([6000, 5000], 'single')).toBe(false)
  expect(agrees([6000], 'one shaft')).toBe(true)
  expect(agrees([6000, 5000], 'one shaft')).toBe(false)
  expect(agrees([6000, 5000], 'one-way')).toBe(true)
  expect(agrees([6000], 'apart')).toBe(false)
  expect(agrees([6000, 5000], 'apart')).toBeUndefined()
  expect(agrees([6000], 'none')).toBe(false)
})

test('the answer is worded for the engines there are', () => {
  const says = (speeds: number[], c: Coupling) => printed(runAnswer(heard(speeds), expects(c)).says)
  expect(says([6000], 'single')).toBe('The engine ran, mostly at 6000 rpm.')
  expect(says([6000], 'one shaft')).toBe(
    'The two engines on their one shaft turned as one, mostly at 6000 rpm.',
  )
  expect(says([6000, 5000], 'one shaft')).toMatch(
    /^Two speeds were heard though both engines are on one shaft/,
  )
  expect(says([6000], 'apart')).toBe('Only one of the two engines was heard, mostly at 6000 rpm.')
})

test('a pull is a surprise only beyond what both ranges allow for', () => {
  const read = readPull([21, 22, 23])!
  const at = (value: number) => pullResidual(read.force, { value, low: 0.9 * value, high: 1.1 * value })!
  expect(at(read.force.value).standing).toBe('within')
  expect(at(0.9 * read.force.value).standing).toBe('within')
  expect(at(1.6 * read.force.value).standing).toBe('low')
  expect(at(0.5 * read.force.value).standing).toBe('high')
  expect(pullResidual(read.force, { value: 200, low: Number.NaN, high: Number.NaN })).toBeUndefined()
})

test('the pull’s finding carries both numbers, and asks for more readings after a single one', () => {
  const one = pullFinding(readPull([22])!, { value: 230, low: 210, high: 250 }, soundLimits)!
  expect(printed(one.says)).toMatch(/^The scale read 22\.0 kg where 23\.5 kg was expected tied up/)
  expect(printed(one.says, 'inch')).toMatch(/^The scale read 48\.5 lb where 51\.7 lb/)
  expect(one.measureNext?.what).toContain('twice more')
  const inputs = runInputs({
    hearing: heard([6300]),
    expects: expects('one shaft'),
    prediction: tiedUp,
    pull: { read: readPull([22])!, predicted: { value: 230, low: 210, high: 250 } },
  })
  const ids = toldOfRun(inputs).map((f) => f.id)
  expect(ids).toEqual(['runs.headline', 'runs.count', 'runs.pull', 'runs.residual-A'])
})

test('what lies outside the prediction’s time is not compared', () => {
  const later = { time: [100, 110], rpm: [6300, 6300], low: [5900, 5900], high: [6700, 6700] }
  expect(residuals(heard([6300]), later)).toEqual([])
  const along = { ...later, time: [0, 10] }
  expect(residuals(heard([6300]), along)).toHaveLength(1)
})
