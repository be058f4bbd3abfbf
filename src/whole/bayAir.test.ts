import { readFileSync } from 'node:fs'
import { resolve } from 'node:path'
import { expect, test } from 'vitest'
import { type Craft, readCraft, whatIf } from '../craft/index.ts'
import { lightestDeckJob } from '../jobs/lightestDeckJob.ts'
import { strengthFromCraft } from '../trades/strength/strengthFromCraft.ts'
import { bayAirOf, bayRunOf } from './bayAir.ts'
import { fuelKnown } from './fuel/fuelKnown.ts'
import { lookAt } from './look.ts'
import { solveBalance } from './push/solveBalance.ts'
import { trades } from './trades.ts'

const text = readFileSync(resolve(import.meta.dirname, '../../demo/heron.yaml'), 'utf8')
const craftOf = (t: string) => readCraft(t).craft!
const noBay = text.replace(/^bay:[\s\S]*?(?=^\S)/m, '')
const heron = craftOf(text)
const balance = solveBalance(heron, { ranges: false })

test('the run of the engines is the same object for a balance, and for a craft without one', () => {
  expect(bayRunOf({ craft: heron, balance })).toBe(bayRunOf({ craft: heron, balance }))
  expect(bayRunOf({ craft: heron })).toBe(bayRunOf({ craft: heron }))
  expect(bayAirOf({ craft: heron, balance })).toBe(bayAirOf({ craft: heron, balance }))
  const [tied] = bayRunOf({ craft: heron, balance }).states
  expect(tied!.engines[0]!.power).toBeCloseTo(
    2 * Math.PI * balance.tiedUp.rotation * balance.tiedUp.engineTorque,
    6,
  )
})

test('where a bay is known foam beside hot parts stands in its air, and no more in that of the place and 15 K', () => {
  const air = bayAirOf({ craft: heron, balance })
  expect(air.known).toBe(true)
  const inputs = strengthFromCraft(heron, air)
  for (const hot of inputs.hot) expect(hot.spot.air).toBe(air.value)
  const hotter = craftOf(
    text.replace(
      /^bay:[\s\S]*?(?=^\S)/m,
      'bay: { cooling: ducted, pipe: bare, engine air: tube, openings: [{ name: a, area: 60 cm², height: 100 mm }] }\n\n',
    ),
  )
  const heat = (craft: Craft) => lookAt(craft, { ranges: false }).findings.find((f) => f.id === 'heat.0')!
  expect(heat(hotter).value! - heat(heron).value!).toBeGreaterThan(5)
  expect(heat(heron).because.some((b) => b.link === 'bay')).toBe(true)
})

test('without a bay the usual 15 K stand in, with a range, for foam, and fuel keeps its own', () => {
  const craft = craftOf(noBay)
  const air = bayAirOf({ craft })
  expect(air.known).toBe(false)
  expect(air.value).toBe(craft.place.airTemperature.value + 15)
  expect(fuelKnown({ craft, push: {} }).temperature).toBeUndefined()
  expect(fuelKnown({ craft: heron, push: {}, balance }).temperature!.value).toBeGreaterThan(
    heron.place.airTemperature.value,
  )
})

test('look, page and search are handed the same air', () => {
  const entry = trades.find((e) => e.trade.id === 'strength')!
  expect(entry.apart).toBeUndefined()
  const known = { craft: heron, push: {}, balance }
  expect(entry.setting!(known)).toBe(bayAirOf({ craft: heron, balance }))
})

test('the lightest build knows a hot bay: foam it would melt is left out', async () => {
  const order = { text, bay: 1 }
  const context = { progress: () => {}, cancelled: () => false }
  const foams = async (T: number) => {
    const air = { ...bayAirOf({ craft: heron }), value: T, low: T, high: T }
    const found = await lightestDeckJob.run({ ...order, bayAir: air }, context)
    return found.compared.filter((a) => 'foam' in a.bay.support).length
  }
  expect(await foams(300)).toBeGreaterThan(0)
  expect(await foams(400)).toBe(0)
})

test('an engine that is off warms nothing, and with none running the usual bay stands in', () => {
  const off = whatIf(heron, { 'engines.0.running': false })
  expect(bayRunOf({ craft: off }).states).toEqual([])
  expect(bayAirOf({ craft: off }).known).toBe(false)
})
