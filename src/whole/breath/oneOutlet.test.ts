import { expect, test } from 'vitest'
import { craftOf, demoCraft, rootFile } from '../../craft/craft.testkit.ts'
import { engineOutlets } from '../../craft/outlets.ts'
import { openingsAtRest } from '../../trades/float/atRest.ts'
import { floatSaid } from '../../trades/float/float.testkit.ts'
import { floatFromCraft } from '../../trades/float/floatFromCraft.ts'
import { outletAfloat } from '../../trades/float/outletAfloat.ts'
import { breathFindings } from './breathFindings.ts'

const text = rootFile('demo/dabchick.yaml')
const place = '[0 m, 0.24 m, 0.235 m]'
/** Dabchick with its outlet's place so many m up, and its height under the exhaust left as it is or not given */
const moved = (up: string, height = ', height: 120 mm ±15 (measured)') =>
  craftOf(text.replace(place, `[0 m, 0.24 m, ${up} m]`).replace(', height: 120 mm ±15 (measured)', height))
const noOpening = (height: string) =>
  craftOf(
    text.replace(/ {2}- \{ name: exhaust outlet.*\n/, '').replace('height: 120 mm ±15', `height: ${height}`),
  )
const find = (craft: ReturnType<typeof craftOf>, id: string) => floatSaid(craft).find((f) => f.id === id)

test('wherever the outlet is put, Breath leans on the height and standing that Float gives it', () => {
  for (const up of ['0.1', '0.13', '0.15', '0.17', '0.2', '0.235', '0.3']) {
    const craft = moved(up)
    const float = find(craft, 'float.opening.2')!
    const lean = outletAfloat(craft, 0)!
    expect(lean).toMatchObject({ standing: float.standing, path: 'openings.2.at' })
    expect(lean.height).toBeCloseTo(float.value!, 9)
    const breath = breathFindings(craft, undefined, undefined)
    expect(breath.map((f) => f.id)).not.toContain('breath.engines.0.outlet')
  }
})

test('a place and a height that differ are a contradiction that names both, and those that agree are none', () => {
  const apart = find(moved('0.15'), 'float.outlet-twice.0')!
  expect(apart.standing).toBe('watch')
  expect(apart.because.map((b) => b.link)).toEqual(['openings.2.at', 'engines.0.exhaust.outlet.height'])
  expect(find(demoCraft('dabchick'), 'float.outlet-twice.0')).toBeUndefined()
  // a height that is only assumed contradicts nothing
  expect(find(moved('0.15', ''), 'float.outlet-twice.0')).toBeUndefined()
})

test('an outlet that only has a height becomes an opening by itself, at that height', () => {
  const craft = noOpening('90 mm')
  expect(engineOutlets(craft)).toEqual([{ engine: 0 }])
  const { input } = floatFromCraft(craft)
  const gained = input.openings.findIndex((o) => o.placeAssumed)
  expect(input.openings[gained]).toMatchObject({
    kind: 'exhaust outlet',
    path: 'engines.0.exhaust.outlet.height',
  })
  // as ridden its lip is where the file says; with nobody aboard it may be lower
  const lip = 0.09 - 0.011
  expect(openingsAtRest(input)[gained]!).toBeLessThanOrEqual(lip + 1e-9)
  expect(find(craft, `float.opening.${gained}`)).toMatchObject({ standing: 'watch' })
  expect(outletAfloat(craft, 0)).toMatchObject({ standing: 'watch', path: 'engines.0.exhaust.outlet.height' })
  expect(find(noOpening('5 mm'), `float.opening.${gained}`)!.standing).toBe('stop')
})

test('each engine with an exhaust has the outlet of its number, and one alone serves all', () => {
  const { engines, openings } = demoCraft('dabchick')
  const outlet = openings.find((o) => o.kind === 'exhaust outlet')!
  const two = [...engines, ...engines]
  expect(engineOutlets({ engines: two, openings: [outlet] })).toEqual([
    { engine: 0, opening: 0 },
    { engine: 1, opening: 0 },
  ])
  expect(engineOutlets({ engines: two, openings: [outlet, ...openings] })).toEqual([
    { engine: 0, opening: 0 },
    { engine: 1, opening: 3 },
  ])
  expect(engineOutlets({ engines: two, openings: [] })).toEqual([{ engine: 0 }, { engine: 1 }])
  expect(engineOutlets(demoCraft('heron'))).toEqual([])
})
