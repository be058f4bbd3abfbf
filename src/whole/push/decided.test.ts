import { readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import { printed } from '../../base/answers/sentence.ts'
import { readCraft } from '../../craft/index.ts'
import { nextOf } from '../decisions.ts'
import { lookAt } from '../look.ts'
import { screenOf } from '../lookScreen.ts'
import { MapStore, modelFromCraft } from './craftModel.ts'
import { decided } from './decided.ts'
import { demoCraft } from './demo.testkit.ts'
import { probe } from './probe.ts'

const text = readFileSync(`${import.meta.dirname}/../../../demo/sandpiper.yaml`, 'utf8')
const opened = (...changes: [RegExp, string][]) => {
  const { craft, problems } = readCraft(changes.reduce((t, [from, to]) => t.replace(from, to), text))
  if (!craft) throw new Error(problems.map((p) => p.says).join('\n'))
  return craft
}
const maps = new MapStore()
const does = (craft: Parameters<typeof modelFromCraft>[0]) => probe(modelFromCraft(craft, maps))

test('an open pitch is put at what does best, and does better than the steep one of the demo', () => {
  const { craft, filled } = decided(opened([/pitch: 100 mm.*/, 'pitch: undecided']))
  expect(filled.map((f) => [f.path, f.from])).toEqual([['jet.rotor.pitch', 'undecided']])
  const now = does(demoCraft('sandpiper'))
  const then = does(craft)
  expect(then.pull).toBeGreaterThan(1.2 * now.pull)
  expect(then.topSpeed).toBeGreaterThan(1.2 * now.topSpeed)
  // a choice that is made carries no doubt of its own
  const { pitch } = craft.jet.rotor
  expect(pitch.low).toBe(pitch.high)
})

test('pitch, blades and nozzle open together do at least as well as the pitch alone', () => {
  const worth = (craft: ReturnType<typeof opened>) => {
    const { pull, topSpeed } = does(decided(craft).craft)
    return Math.sqrt(pull * topSpeed)
  }
  const alone = worth(opened([/pitch: 100 mm.*/, 'pitch: undecided']))
  const all = opened(
    [/pitch: 100 mm.*/, 'pitch: undecided'],
    [/blades: 3/, 'blades: undecided'],
    [/bore: 50.0 mm.*/, 'bore: undecided'],
  )
  expect(worth(all)).toBeGreaterThan(0.99 * alone)
  expect(
    decided(all)
      .filled.map((f) => f.path)
      .sort(),
  ).toEqual(['jet.nozzle.bore', 'jet.rotor.blades', 'jet.rotor.pitch'])
  expect(decided(all)).toBe(decided(all))
})

test('a craft with nothing open stays the craft it is', () => {
  const craft = demoCraft('heron')
  expect(decided(craft)).toEqual({ craft, filled: [] })
  expect(decided(craft).craft).toBe(craft)
})

test('a file of a ring, a hull and two engines of known volume and temper is enough for a look, with honest ranges and what was put in', () => {
  const { craft, problems } = readCraft(`wakewright: 1
name: Not built yet
engines:
  - { kind: peak, displacement: 41 cm³, power: undecided }
  - { kind: peak, displacement: 41 cm³, power: undecided, power at: undecided }
jet:
  rotor: { bore: 100 mm, pitch: undecided, blades: undecided }
  nozzle: { bore: undecided }
rider: { mass: 75 kg }
hull: { length: 2.3 m, beam: 0.78 m, depth: 0.22 m }
weights:
  - { name: everything, mass: 46 kg, at: [1 m, 0 m, 0.1 m] }
`)
  expect(problems.map((p) => p.says)).toEqual([])
  const look = lookAt(craft!)
  const b = look.balance!
  expect(b.pull.low).toBeGreaterThan(0)
  expect((b.pull.high - b.pull.low) / b.pull.value).toBeGreaterThan(0.3)
  const said = look.findings.find((f) => f.id === 'push.undecided')!
  expect(printed(said.says)).toMatch(
    /^Not decided yet, and worked out as what does best: the impeller’s pitch \d+ mm/,
  )
  expect(printed(said.says)).toMatch(/not known yet.*kW/)
  expect(printed(said.says)).toContain(': engine 1’s power')
  expect(said.changes!.length).toBe(3)
  // what to make is the decision at hand: it stands under what to do next, as an order
  const next = nextOf(look.decisions).find((d) => d.id === 'push.undecided')!
  expect(printed(next.act!)).toMatch(/^plan with \d+ mm for the impeller’s pitch, /)
  // and what is said to be measured is named
  expect(printed(screenOf(look).measure!)).toMatch(/^[A-Z][a-z]+ [a-z, ]+: /)
  for (const f of look.findings) expect(printed(f.says), f.id).not.toMatch(/NaN|Infinity|undefined/)
})
