import { readFileSync } from 'node:fs'
import { resolve } from 'node:path'
import { expect, test } from 'vitest'
import { printed } from '../../src/base/answers/sentence.ts'
import { type Craft, readCraft } from '../../src/craft/index.ts'
import { askSheet } from '../../src/whole/asking/askSheet.ts'
import { calibrate } from '../../src/whole/calibrate/calibrate.ts'
import { calibrationSays } from '../../src/whole/calibrate/calibrateSays.ts'
import { nextChange } from '../../src/whole/next/nextChange.ts'
import { planText } from '../../src/whole/plan/planCard.ts'
import { runPlan } from '../../src/whole/plan/runPlan.ts'
import type { Balance } from '../../src/whole/push/balanceTypes.ts'
import { MapStore, NotBalanced } from '../../src/whole/push/craftModel.ts'
import { demoCraft } from '../../src/whole/push/demo.testkit.ts'
import { solveBalance } from '../../src/whole/push/solveBalance.ts'
import { wrongCrafts } from './wrongCrafts.ts'

/** What is planned, offered, fitted and asked for craft that are wrong: no number that is none, no empty sentence. */
const names = [
  'far too steep',
  'far too shallow',
  'direct drive',
  'far too heavy',
  'one engine off',
  'a fine nozzle',
  'a wide nozzle',
]
const sandpiper = demoCraft('sandpiper')
const jetEach = { ...sandpiper, drive: { ...sandpiper.drive, arrangement: 'a jet each' } } as unknown as Craft
const clutched = { ...sandpiper, drive: { ...sandpiper.drive, clutch: 'one-way' } } as unknown as Craft
const allOff = {
  ...sandpiper,
  engines: sandpiper.engines.map((e) => ({ ...e, running: false })),
} as unknown as Craft
const electric = (() => {
  const text = readFileSync(resolve(import.meta.dirname, '../../demo/heron.yaml'), 'utf8')
  const motor =
    'engines:\n  - kind: electric\n    torque per current: 0.09 N·m/A\n    most current: 95 A\n    voltage: 72 V\n    resistance: 60 mΩ\n\ndrive:'
  const { craft, problems } = readCraft(text.replace(/engines:\n[\s\S]*?\ndrive:/, motor), 'electric')
  if (!craft) throw new Error(problems.map((p) => p.says).join('\n'))
  return craft
})()
const crafts: [string, Craft][] = [
  ['an electric craft', electric],
  ...wrongCrafts().filter(([name]) => names.includes(name)),
  ['a jet each', jetEach],
  ['one-way clutches', clutched],
  ['all engines off', allOff],
]
const noNumber = /NaN|Infinity|undefined|\bnull\b/
const maps = new MapStore()
const balanceOf = (craft: Craft): Balance | undefined => {
  try {
    return solveBalance(craft, { maps, ranges: false, pitches: false })
  } catch (error) {
    if (error instanceof NotBalanced) return undefined
    throw error
  }
}

test.each(crafts)(
  '%s: the plan, the next change, a fit and the sheet hold no number that is none',
  (_name, craft) => {
    const balance = balanceOf(craft)
    expect(askSheet(craft, balance ? { balance } : {}).text).not.toMatch(noNumber)
    if (!balance) return
    const plan = runPlan(craft, balance, { maps })
    if (craft === electric) expect(planText(plan)).not.toMatch(/choke|fuel|spark|exhaust|pipes/)
    expect(planText(plan)).not.toMatch(noNumber)
    for (const step of plan.steps) for (const e of step.expected) expect(printed(e.says)).not.toMatch(/: $|—/)
    const next = nextChange(craft, balance)
    expect(printed(next.says).length).toBeGreaterThan(10)
    expect(printed(next.says)).not.toMatch(noNumber)
    const { rotation, thrust } = balance.tiedUp
    if (!(rotation > 0 && thrust > 0)) return
    for (const factor of [0.1, 1, 10]) {
      const c = calibrate(
        craft,
        balance,
        [
          { of: 'rotation', value: rotation, run: 'a' },
          { of: 'pull', value: factor * thrust, run: 'a' },
        ],
        { maps },
      )
      for (const s of calibrationSays(c)) expect(printed(s)).not.toMatch(noNumber)
      if (factor !== 1) expect(c.refused?.reading).toBe(1)
      else expect(c.refused).toBeUndefined()
    }
  },
)
