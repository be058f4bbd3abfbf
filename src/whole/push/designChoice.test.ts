import { readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import { printed } from '../../base/answers/sentence.ts'
import { readCraft, whatIf } from '../../craft/index.ts'
import { demoCraft } from './demo.testkit.ts'
import { madeUpDesign } from './design.testkit.ts'
import { choiceOf, filledIn, isOpen, startOf } from './designChoice.ts'
import type { PitchBand } from './designTypes.ts'

const sandpiper = demoCraft('sandpiper')
const made = madeUpDesign()

test('what is offered stands before what is only compared, each with change of pull and of speed', () => {
  const { lines, says, brief } = choiceOf(sandpiper, made)
  expect(lines.map((l) => l.offered)).toEqual([true, true, true, true, false])
  for (const l of lines) expect(printed(l.buys)).toMatch(/N .* to .*of pull, .*km\/h/)
  expect(printed(says)).toMatch(/^Best for .* is option together\.$/)
  expect(printed(brief)).toBe('option together')
})

test('the regret of the best and of the fitted blades is told with both powers, the same pitches once', () => {
  const band: PitchBand = { ...made.fitted!, low: 0.08, high: 0.09, within: 0.02 }
  const [first, ...rest] = made.options
  const two = choiceOf(sandpiper, { ...made, options: [{ ...first!, band }, ...rest] }).regret.map((s) =>
    printed(s),
  )
  expect(two[0]).toMatch(/^With those blades 80 mm to 90 mm .*2 %/)
  expect(two[1]).toMatch(/^With the blades that are fitted 56 mm to 69 mm .*6 %.*2\.1 kW or 3\.1 kW each/)
  const once = choiceOf(sandpiper, { ...made, options: [{ ...first!, band: { ...made.fitted! } }, ...rest] })
  expect(once.regret).toHaveLength(1)
})

test('with nothing offered that is said, and everything compared still stands there', () => {
  const none = { ...made, options: made.options.map((o) => ({ ...o, offered: false })) }
  const choice = choiceOf(sandpiper, none)
  expect(printed(choice.says)).toMatch(/^Nothing that can be printed does better/)
  expect(choice.lines).toHaveLength(made.options.length)
})

test('what the search chooses is no other craft to search from; everything else tried is', () => {
  expect(
    startOf({
      'jet.rotor.pitch': 0.06,
      'jet.rotor.trailing pitch': 0.07,
      'jet.nozzle.bore': 0.05,
      'rider.mass': 90,
    }),
  ).toEqual({ 'rider.mass': 90 })
})

test('open choices are put at what was found; one that is tried meanwhile stays as it is tried', () => {
  const text = readFileSync(`${import.meta.dirname}/../../../demo/sandpiper.yaml`, 'utf8')
  const open = readCraft(text.replace(/pitch: 100 mm.*/, 'pitch: undecided')).craft!
  expect(isOpen(sandpiper)).toBe(false)
  expect(isOpen(open)).toBe(true)
  const filled = filledIn(open, { 'jet.rotor.pitch': 0.061 })
  expect(filled.jet.rotor.pitch.value).toBe(0.061)
  expect(isOpen(filled)).toBe(false)
  const tried = whatIf(open, { 'jet.rotor.pitch': 0.07 })
  expect(filledIn(tried, { 'jet.rotor.pitch': 0.061 })).toBe(tried)
})
