import { expect, test } from 'vitest'
import { heron, teal } from './craft.testkit.ts'
import { readCraft } from './read.ts'
import { whatIf } from './whatIf.ts'

const open = (text: string, ...changes: [from: RegExp, to: string][]) =>
  readCraft(changes.reduce((t, [from, to]) => t.replace(from, to), text))

test('pitch, blades, nozzle and ratio may be left undecided: a stand-in that follows the ring, marked as such, with a wide range', () => {
  const { craft, problems } = open(
    heron,
    [/pitch: 108 mm.*/, 'pitch: undecided'],
    [/blades: 3/, 'blades: undecided'],
    [/bore: 65.0 mm.*/, 'bore: undecided'],
    [/ratio: 1.50.*/, 'ratio: undecided'],
  )
  expect(problems).toEqual([])
  const { rotor, nozzle } = craft!.jet
  for (const q of [rotor.pitch, rotor.blades, nozzle.bore, craft!.drive.ratio]) {
    expect(q.undecided, q.path).toBe(true)
    expect(q.source).toBe('assumed')
    expect(q.low).toBeLessThan(q.value)
    expect(q.high).toBeGreaterThan(q.value)
  }
  expect(rotor.pitch.value).toBeCloseTo(0.75 * rotor.bore.value, 9)
  // what follows the pitch by default follows the stand-in
  expect(rotor.trailingPitch.value).toBeCloseTo(rotor.pitch.value, 9)
  expect(whatIf(craft!, { 'jet.rotor.bore': 0.1 }).jet.rotor.pitch.value).toBeCloseTo(0.075, 9)
})

test('a choice that is made is exact and no longer open', () => {
  const { craft } = open(heron, [/pitch: 108 mm.*/, 'pitch: undecided'])
  const { pitch } = whatIf(craft!, { 'jet.rotor.pitch': 0.09 }).jet.rotor
  expect(pitch.undecided).toBeUndefined()
  expect([pitch.low, pitch.value, pitch.high]).toEqual([0.09, 0.09, 0.09])
})

test('an engine’s power and its speed may be left undecided: volume and temper give them, the more the hotter', () => {
  const powers = ['flat', 'mild', 'tuned'].map((temper) => {
    const { craft, problems } = readCraft(
      teal
        .replaceAll(/power: 4.1 kW.*/g, 'power: undecided')
        .replaceAll(/power at: 7600 rpm.*/g, 'power at: undecided')
        .replaceAll(/temper: tuned.*/g, `temper: ${temper}`),
    )
    expect(problems).toEqual([])
    const engine = craft!.engines[0]!
    if (engine.kind !== 'peak') throw new Error('teal has engines known by their peak')
    expect(engine.power.undecided).toBe(true)
    expect(engine.power.low).toBeLessThan(0.8 * engine.power.value)
    expect(engine.powerAt.value * 60).toBeGreaterThan(5000)
    return engine.power.value
  })
  expect(powers).toEqual([...powers].sort((a, b) => a - b))
  // 60 cm³ tuned: Teal's own engines, which are given as 4.1 kW, lie inside
  expect(powers[2]).toBeGreaterThan(4100)
  expect(powers[2]).toBeLessThan(6000)
})

test('a size that nothing works out cannot be left undecided, and is refused at its place', () => {
  const { craft, problems } = open(heron, [/bore: 120.0 mm.*/, 'bore: undecided'])
  expect(craft).toBeUndefined()
  expect(problems[0]!.path).toBe('jet.rotor.bore')
  expect(problems[0]!.says).toMatch(/cannot be left undecided/)
})
