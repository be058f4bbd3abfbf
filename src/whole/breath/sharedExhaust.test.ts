import { expect, test } from 'vitest'
import { inWords } from '../../base/answers/printFinding.ts'
import { craftOf, problemsOf, rootFile, withoutSection } from '../../craft/craft.testkit.ts'
import { pipeEnd } from '../../craft/sharing.ts'
import { twoStrokeFromCraft } from '../../trades/engine/twoStrokeFromCraft.ts'
import { breathFindings } from './breathFindings.ts'
import { answerEngines } from './engineAnswers.ts'

const text = withoutSection(rootFile('demo/dabchick.yaml'), 'fuel')
const from = text.indexOf('  - name: engine\n')
const to = text.indexOf('drive:\n')
const first = text.slice(from, to).trimEnd()
const box = /\n {6}muffler:.*/.exec(first)![0]
const outlet = /\n {6}outlet:.*/.exec(first)![0]
const tube = /\n {4}snorkel:.*/.exec(first)![0]
const second = (pipe: string, air: string) =>
  first
    .replace('name: engine', 'name: rear')
    .replace(box, '')
    .replace(outlet, pipe && `\n      leads into: ${pipe}`)
    .replace(tube, air && `\n    breathes through: ${air}`)
/** Dabchick with a second engine like the first, its pipe and its air led into the first one's */
const twinText = (pipe = '1', air = '1', own = first) =>
  `${text.slice(0, from)}${own.replace('name: engine', 'name: front')}\n${second(pipe, air)}\n\n${text.slice(to)}`
const twin = (...how: Parameters<typeof twinText>) => craftOf(twinText(...how))

test('two pipes share box and outlet: a box twice as large with a hole of twice the area serves each as one of its own', () => {
  const alone = twoStrokeFromCraft(craftOf(text), 0).spec!
  const wide = first
    .replace('length: 240 mm (measured)', 'length: 480 mm (measured)')
    .replace('bore: 22 mm (measured)', `bore: ${22 * Math.SQRT2} mm (measured)`)
    .replace('outlet: { length: 150 mm', `outlet: { length: ${150 * Math.SQRT2} mm`)
  const shared = twin('1', '1', wide)
  for (const i of [0, 1]) {
    const own = twoStrokeFromCraft(shared, i).spec!
    if (own.outlet.kind !== 'box' || alone.outlet.kind !== 'box') throw new Error('no box')
    expect(own.outlet.volume).toBeCloseTo(alone.outlet.volume, 9)
    expect(own.outlet.bore).toBeCloseTo(alone.outlet.bore, 9)
    expect(own.outlet.discharge).toBeCloseTo(alone.outlet.discharge, 9)
    expect(own.pipe).toEqual(alone.pipe)
  }
})

test('what is shared is told once, for both, with both engines’ flow in it; a dead engine blows nothing', () => {
  const said = (craft: ReturnType<typeof craftOf>) => {
    const engines = answerEngines(craft, { coarse: true })!
    return breathFindings(craft, undefined, engines)
  }
  const alone = said(craftOf(text))
  const shared = said(twin())
  const value = (list: typeof alone, id: string) => list.find((f) => f.id === `breath.engines.0.${id}`)?.value
  for (const id of ['muffler', 'box-size', 'back-pressure', 'level', 'spill', 'suction', 'snorkel']) {
    expect(shared.filter((f) => f.id === `breath.engines.1.${id}`)).toEqual([])
    expect(value(shared, id)).toBeDefined()
  }
  const words = inWords(shared)
  expect(words.find((f) => f.id === 'breath.engines.0.back-pressure')!.says).toContain('front and rear')
  expect(words.find((f) => f.id === 'breath.engines.0.level')!.says).not.toContain('with the others')
  // the box holds half as many cylinders, the outlet passes twice the gas, the tube twice the air
  expect(value(shared, 'box-size')).toBeCloseTo(value(alone, 'box-size')! / 2, 9)
  expect(value(shared, 'back-pressure')!).toBeGreaterThan(2.5 * value(alone, 'back-pressure')!)
  expect(value(shared, 'snorkel')!).toBeGreaterThan(2 * value(alone, 'snorkel')!)
  expect(value(shared, 'suction')!).toBeGreaterThan(1.2 * value(alone, 'suction')!)
  const dead = twin('1', '1', first.replace('cooling: air', 'cooling: air\n    running: no'))
  expect(pipeEnd(dead, 1)).toMatchObject({ owner: 0, pipes: [0, 1], running: 1 })
})

test('a number that is no other engine, one that leads on, and a box beside a shared one are refused by name', () => {
  const wrong = (...how: Parameters<typeof twinText>) =>
    problemsOf(twinText(...how)).flatMap((p) => /engines\.\d\.(exhaust\.)?\w+ \w+(?= is)/.exec(p)?.[0] ?? [p])
  expect(wrong()).toEqual([])
  for (const n of ['2', '3', '8'])
    expect(wrong(n, n)).toEqual(['engines.1.exhaust.leads into', 'engines.1.breathes through'])
  const led = first.replace(box, '').replace(outlet, '\n      leads into: 2')
  expect(wrong('1', '1', led)).toEqual(['engines.0.exhaust.leads into', 'engines.1.exhaust.leads into'])
  expect(wrong(`1${box}`)).toEqual(['engines.1.exhaust.leads into'])
  expect(wrong('1', `1${tube}`)).toEqual(['engines.1.breathes through'])
})
