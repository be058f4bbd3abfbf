import { readFileSync } from 'node:fs'
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { printedFinding } from '../../base/answers/printFinding.ts'
import { printed } from '../../base/answers/sentence.ts'
import { type Craft, readCraft, setValue, whatIf } from '../../craft/index.ts'
import { MapStore, modelFromCraft, NotBalanced } from './craftModel.ts'
import { demoCraft } from './demo.testkit.ts'
import { changesFor, designOfCraft, fileChanges } from './design.ts'
import { designAnswer } from './designAnswer.ts'
import { spread } from './designDraws.ts'
import { designFindings } from './designFindings.ts'
import { DesignTrials } from './designTrials.ts'
import type { DesignAnswer } from './designTypes.ts'
import { probe } from './probe.ts'

const maps = new MapStore(300)
const sandpiper = demoCraft('sandpiper')
const early: DesignAnswer[] = []
const answer = await designAnswer(sandpiper, { maps, draws: 8, early: (a) => early.push(a) })

/** Both numbers of an option on the whole balance, with its values put in. */
const whole = (craft: Craft, values: Readonly<Record<string, number>>) =>
  probe(modelFromCraft(whatIf(craft, values), maps))

describe('a direct drive with a steep impeller', () => {
  test('is offered changes, each with pull and top speed as the whole balance has them', () => {
    const offered = answer.options.filter((o) => o.offered)
    expect(offered.length).toBeGreaterThan(3)
    const now = whole(sandpiper, {})
    for (const o of answer.options) {
      const then = whole(sandpiper, o.values)
      expect(o.gain!.pull.value, o.id).toBeCloseTo(then.pull - now.pull, 9)
      expect(o.gain!.topSpeed.value, o.id).toBeCloseTo(then.topSpeed - now.topSpeed, 9)
    }
  })

  test('gets the same from the changes as they would be typed into its file', () => {
    const file = `${import.meta.dirname}/../../../demo/sandpiper.yaml`
    const text = readFileSync(file, 'utf8')
    for (const o of answer.options) {
      const typed = o.changes.reduce((t, c) => setValue(t, c.path, c.to), text)
      const { craft } = readCraft(typed, file)
      expect(probe(modelFromCraft(craft!, maps)).pull, o.id).toBeCloseTo(o.pull.value, 3)
    }
  })

  test('is never offered what lowers both, a ratio it has not, or the bore of a ring that is made', () => {
    for (const o of answer.options) {
      if (o.offered) expect(o.gain!.pull.value > 0 || o.gain!.topSpeed.value > 0, o.id).toBe(true)
      expect(Object.keys(o.values)).not.toContain('drive.ratio')
      expect(Object.keys(o.values)).not.toContain('jet.rotor.bore')
    }
  })

  test('has ranges that hold their values, and a band of pitches with what it may lose', () => {
    for (const o of answer.options)
      for (const r of [o.pull, o.topSpeed, o.gain!.pull, o.gain!.topSpeed]) {
        expect(r.low, o.id).toBeLessThanOrEqual(r.value)
        expect(r.high, o.id).toBeGreaterThanOrEqual(r.value)
      }
    const band = answer.fitted!
    expect(band.low).toBeLessThan(band.design.pitch)
    expect(band.high).toBeGreaterThan(band.design.pitch)
    expect(band.design.pitch).toBeLessThan(0.8 * sandpiper.jet.rotor.pitch.value)
    expect(band.within).toBeGreaterThanOrEqual(0.02)
    expect(band.within).toBeLessThan(0.2)
    // the power that the file gives, at both ends of what it may be
    expect(band.power!.low / 2100).toBeCloseTo(1, 2)
    expect(band.power!.high / 3100).toBeCloseTo(1, 2)
  })

  test('hears the best so far on the way, first for the blades it has', () => {
    expect(early.map((a) => a.final)).toEqual([false, false])
    expect(early[0]!.options.map((o) => o.id).sort()).toEqual(['blade-cut', 'pitch'])
    expect(early[0]!.balances).toBeLessThan(30)
    expect(answer.final).toBe(true)
    expect(answer.balances).toBeGreaterThan(500)
    const pitchIn = (a: DesignAnswer) => a.options.find((o) => o.id === 'pitch')!.design.pitch
    expect(pitchIn(early[0]!) / pitchIn(answer)).toBeCloseTo(1, 0)
  })

  test('gets findings in words with an act, changes and gains, and no number is missing from them', () => {
    for (const a of [...early, answer])
      for (const f of designFindings(sandpiper, a)) {
        const { says, act, because } = printedFinding(f)
        for (const words of [says, printed(act ?? ''), ...because.map((b) => b.says)])
          expect(words).not.toMatch(/NaN|undefined|Infinity|null/)
        expect(says).toMatch(/^[A-Z].*\.$/)
        expect(f.changes!.length).toBeGreaterThan(0)
      }
  })
})

test('where the work is done changes nothing: dealt out one by one to fresh workers the answer is the same', async () => {
  const teal = demoCraft('teal')
  const alone = await designAnswer(teal, { maps, draws: 2 })
  const dealt = await designAnswer(teal, {
    maps,
    draws: 2,
    tryMany: async (requests) =>
      requests.map((r) => structuredClone(new DesignTrials(teal).run(structuredClone(r)))),
  })
  expect(dealt).toEqual(alone)
})

test('what a builder wants decides: for pull the nozzle is larger and the pitch no steeper than for speed', async () => {
  const best = async (wants: 'pull' | 'speed') => {
    let last: DesignAnswer | undefined
    await designAnswer({ ...sandpiper, wants }, { maps, draws: 1, early: (a) => (last = a) })
    return last!.options[0]!.design
  }
  const pull = await best('pull')
  const speed = await best('speed')
  expect(pull.nozzle).toBeGreaterThan(speed.nozzle)
})

test('a ring still to be made has its bore chosen too, with the hub that the file writes', () => {
  const open: Craft = {
    ...sandpiper,
    jet: { ...sandpiper.jet, rotor: { ...sandpiper.jet.rotor, ringMade: false } },
  }
  const now = designOfCraft(open)
  const values = changesFor(open, { ...now, bore: 1.1 * now.bore })
  expect(values['jet.rotor.bore']).toBeCloseTo(0.11, 9)
  expect(values['jet.rotor.hub']).toBeCloseTo(1.1 * open.jet.rotor.hub.value, 9)
})

test('a trailing pitch that the file writes goes with the pitch, as text too', () => {
  const { rotor } = sandpiper.jet
  const written: Craft = {
    ...sandpiper,
    jet: {
      ...sandpiper.jet,
      rotor: { ...rotor, trailingPitch: { ...rotor.trailingPitch, value: 0.11, source: 'measured' } },
    },
  }
  const values = changesFor(written, { ...designOfCraft(written), pitch: 0.065 })
  expect(fileChanges(written, values)).toEqual([
    { path: 'jet.rotor.pitch', from: '100 mm', to: '65 mm' },
    { path: 'jet.rotor.trailing pitch', from: '110 mm', to: '71.5 mm' },
  ])
})

test('an engine without a torque curve ends the search with its name', async () => {
  const motor = {
    ...sandpiper,
    engines: [{ ...sandpiper.engines[0]!, kind: 'electric' }],
  } as unknown as Craft
  await expect(designAnswer(motor, { maps })).rejects.toThrow(NotBalanced)
})

test('a spread holds 95 % of the draws and always the value; without draws it is the value', () => {
  const draws = Array.from({ length: 41 }, (_, i) => i)
  expect(spread(20, draws)).toEqual({ value: 20, low: 1, high: 39 })
  expect(spread(60, draws).high).toBe(60)
  expect(spread(5, [])).toEqual({ value: 5, low: 5, high: 5 })
  expect(spread(5, [Number.NaN, 1, 2, 3, 4]).low).toBeGreaterThan(0.9)
})

class Enough extends Error {}

test('whatever the craft, the first answer offers nothing that lowers pull and speed both, and has no number missing', async () => {
  const bases = [sandpiper, demoCraft('heron'), demoCraft('teal')]
  const share = fc.double({ min: 0.5, max: 1.8, noNaN: true })
  await fc.assert(
    fc.asyncProperty(
      fc.nat(2),
      share,
      share,
      share,
      fc.integer({ min: 2, max: 5 }),
      async (k, pitch, nozzle, mass, blades) => {
        const base = bases[k]!
        const craft = whatIf(base, {
          'jet.rotor.pitch': pitch * base.jet.rotor.pitch.value,
          'jet.nozzle.bore': Math.min(1.2, nozzle) * base.jet.nozzle.bore.value,
          'jet.rotor.blades': blades,
          'rider.mass': mass * base.rider.mass.value,
        })
        let first: DesignAnswer | undefined
        const work = {
          early: (a: DesignAnswer) => {
            first = a
          },
          check: () => {
            if (first) throw new Enough()
          },
        }
        await expect(designAnswer(craft, work)).rejects.toThrow(Enough)
        for (const o of first!.options) {
          if (o.offered && o.gain) expect(o.gain.pull.value > 0 || o.gain.topSpeed.value > 0, o.id).toBe(true)
          expect(Number.isFinite(o.pull.value), o.id).toBe(true)
        }
        for (const f of designFindings(craft, first!)) {
          const { says, because } = printedFinding(f)
          expect([says, ...because.map((b) => b.says)].join(' ')).not.toMatch(/NaN|Infinity|undefined/)
        }
      },
    ),
    { numRuns: 40 },
  )
})
