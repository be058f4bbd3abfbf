import { readFileSync } from 'node:fs'
import fc from 'fast-check'
import { expect, test } from 'vitest'
import { type Craft, readCraft, setValue, whatIf } from '../../src/craft/index.ts'
import { MapStore, modelFromCraft } from '../../src/whole/push/craftModel.ts'
import { demoCraft } from '../../src/whole/push/demo.testkit.ts'
import { type Design, designOfCraft } from '../../src/whole/push/design.ts'
import { designAnswer } from '../../src/whole/push/designAnswer.ts'
import { bestOf, searchAll, searchFitted } from '../../src/whole/push/designSearch.ts'
import { DesignTrials } from '../../src/whole/push/designTrials.ts'
import { probe } from '../../src/whole/push/probe.ts'

const fileOf = (name: string) => `${import.meta.dirname}/../../demo/${name}.yaml`

/** Sandpiper with a motor where its engines were: 4.5 kW on a battery, direct. */
function electric(): Craft {
  const motor =
    'engines:\n  - kind: electric\n    torque per current: 0.09 N·m/A\n    most current: 95 A\n    voltage: 72 V\n    resistance: 60 mΩ\n\n'
  // what names the two engines goes with them: their chain of links and their fuel lines
  const text = readFileSync(fileOf('sandpiper'), 'utf8')
    .replace(/^engines:[\s\S]*?^(?=drive:)/m, motor)
    .replace(/^shaft:[\s\S]*?^(?=jet:)/m, '')
    .replace(/^fuel:[\s\S]*?^(?=openings:)/m, '')
  const { craft, problems } = readCraft(text)
  if (!craft) throw new Error(problems.map((p) => p.says).join('\n'))
  return craft
}

const sandpiper = demoCraft('sandpiper')
const teal = demoCraft('teal')
const five: [string, Craft][] = [
  ['two engines direct', sandpiper],
  [
    'a small ring direct, heavily loaded',
    whatIf(sandpiper, { 'jet.rotor.bore': 0.09, 'jet.nozzle.bore': 0.046, 'rider.mass': 92 }),
  ],
  ['a belt', demoCraft('heron')],
  ['a motor', electric()],
  ['a jet each', { ...teal, drive: { ...teal.drive, arrangement: 'a jet each' } }],
]

const everyMm = (low: number, high: number, step = 1) =>
  Array.from({ length: Math.floor((high - low) / (step * 1e-3)) + 1 }, (_, i) => low + i * step * 1e-3)

test.each(five)(
  'on %s the search finds what trying every millimetre of pitch and nozzle with 2, 3 and 4 blades finds, to 1 %',
  async (_name, craft) => {
    const trials = new DesignTrials(craft)
    const here = async (requests: readonly Parameters<DesignTrials['run']>[0][]) =>
      requests.map((r) => trials.run(r))
    const found = await searchAll(craft, await searchFitted(craft, here), here)
    const best = found.lines.reduce((a, b) => (bestOf(b).merit > bestOf(a).merit ? b : a))
    // the search's own best, tried and not read between points
    const itself = trials.run({
      case: 'as written',
      designs: [{ ...best.design, pitch: bestOf(best).pitch }],
    })
    const now = designOfCraft(craft)
    let most = 0
    for (const blades of [2, 3, 4])
      for (const nozzle of everyMm(0.42 * now.bore, 0.72 * now.bore)) {
        const designs: Design[] = everyMm(0.4 * now.bore, 1.5 * now.bore).map((pitch) => ({
          ...now,
          blades,
          nozzle,
          pitch,
        }))
        for (const t of trials.run({ case: 'as written', designs }).tried) most = Math.max(most, t.merit)
      }
    expect(itself.tried[0]!.merit / most).toBeGreaterThan(0.99)
  },
  1_200_000,
)

test('on joint draws the impeller found for the nozzle that is fitted does as well as every other millimetre of pitch, to 1 %', async () => {
  const draws = 8
  const answer = await designAnswer(sandpiper, { draws })
  const found = answer.options.find((o) => o.id === 'pitch')!.design
  const trials = new DesignTrials(sandpiper)
  const designs = [found, ...everyMm(0.045, 0.11).map((pitch) => ({ ...found, pitch }))]
  const sums = designs.map(() => 0)
  for (let k = 0; k < draws; k++)
    trials.run({ case: k, designs }).tried.forEach((t, i) => {
      sums[i]! += Math.log(t.merit) / draws
    })
  expect(Math.exp(sums[0]! - Math.max(...sums))).toBeGreaterThan(0.99)
}, 600_000)

test('of 200 random craft none is offered a change that lowers pull and speed both, and each number is that of the whole balance', async () => {
  const bases = ['sandpiper', 'heron', 'teal'] as const
  const share = fc.double({ min: 0.5, max: 1.8, noNaN: true })
  await fc.assert(
    fc.asyncProperty(
      fc.nat(2),
      share,
      share,
      share,
      fc.integer({ min: 2, max: 5 }),
      async (k, pitch, nozzle, mass, blades) => {
        const name = bases[k]!
        const base = demoCraft(name)
        const craft = whatIf(base, {
          'jet.rotor.pitch': pitch * base.jet.rotor.pitch.value,
          'jet.nozzle.bore': Math.min(1.2, nozzle) * base.jet.nozzle.bore.value,
          'jet.rotor.blades': blades,
          'rider.mass': mass * base.rider.mass.value,
        })
        const maps = new MapStore(40)
        const answer = await designAnswer(craft, { draws: 2, maps })
        const now = probe(modelFromCraft(craft, maps))
        for (const o of answer.options.filter((x) => x.offered)) {
          const then = probe(modelFromCraft(whatIf(craft, o.values), maps))
          const pull = then.pull - (Number.isNaN(now.pull) ? 0 : now.pull)
          expect(o.pull.value - answer.now.pull.value, o.id).toBeCloseTo(pull, 6)
          expect(pull > 0 || !(then.topSpeed < now.topSpeed), o.id).toBe(true)
        }
      },
    ),
    { numRuns: 200 },
  )
}, 3_600_000)

test('a change typed into the file of the demo craft gives the pull that was promised', async () => {
  for (const name of ['sandpiper', 'heron', 'teal'] as const) {
    const maps = new MapStore(40)
    const text = readFileSync(fileOf(name), 'utf8')
    const answer = await designAnswer(demoCraft(name), { draws: 2, maps })
    for (const o of answer.options) {
      const { craft } = readCraft(o.changes.reduce((t, c) => setValue(t, c.path, c.to), text))
      expect(probe(modelFromCraft(craft!, maps)).pull, `${name} ${o.id}`).toBeCloseTo(o.pull.value, 2)
    }
  }
}, 600_000)
