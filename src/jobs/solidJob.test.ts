import { describe, expect, test } from 'vitest'
import { flawsOf } from '../physics/solid/closed.ts'
import { read3mf } from '../physics/solid/read3mf.ts'
import { readStl } from '../physics/solid/readStl.ts'
import { Cancelled } from './job.ts'
import { type SolidJobInput, solidJob } from './solidJob.ts'

const run = (input: SolidJobInput, cancelled = () => false, told: number[] = []) =>
  Promise.resolve(solidJob.run(input, { progress: (part) => told.push(part), cancelled }))
const degree = Math.PI / 180

describe('an impeller on the mesh', () => {
  test.each([
    ['one pitch', { pitch: 0.108, pitchOut: 0.108 }],
    ['a growing pitch', { pitch: 0.095, pitchOut: 0.125 }],
    ['left hand', { hand: -1, pitch: 0.1, pitchOut: 0.11, wrap: 140 * degree }],
    ['a coned hub', { hub: 0.044, hubOut: 0.052, shaft: 0.012, key: 0.004, keyHigh: 0.0018, root: 0.008 }],
  ])('a protractor reads its blade angles back within 0.2 degrees: %s', async (_, values) => {
    const { measured } = await run({ order: { shape: 'impeller', values }, title: 'impeller' })
    expect(measured).toHaveLength(3)
    for (const { read, ordered, hand } of measured!) {
      expect(hand).toBe((values as { hand?: number }).hand ?? 1)
      for (const k of [0, 1]) expect(Math.abs(read[k]! - ordered[k]!) / degree).toBeLessThan(0.2)
    }
  })

  test('tip radius is the ring less gap and growth, and it is in balance', async () => {
    const { bodies, offCentre } = await run({
      order: { shape: 'impeller', values: { ring: 0.12, gap: 0.4e-3, growth: 0.2e-3, key: 0 } },
      title: 'impeller',
    })
    const { corners } = bodies[0]!.mesh
    let most = 0
    for (let i = 0; i < corners.length; i += 3)
      most = Math.max(most, Math.hypot(corners[i]!, corners[i + 1]!))
    expect(most).toBeCloseTo(0.06 - 0.6e-3, 6)
    expect(offCentre! / bodies[0]!.volume).toBeLessThan(2e-6)
  })

  test('a blade left away puts it out of balance, and a hole opposite takes some of that back', async () => {
    const of = async (values: Record<string, number>) =>
      (await run({ order: { shape: 'impeller', values: { blades: 3, key: 0, ...values } }, title: 'i' }))
        .offCentre!
    const whole = await of({})
    const two = await of({ left: 1 })
    const drilled = await of({ left: 1, balance: 8e-3, balanceDeep: 60e-3 })
    expect(two).toBeGreaterThan(100 * whole)
    // what the hole takes: its volume on the middle of the hub's wall, 7.5 to 25 mm from the axis
    const taken = Math.PI * 4e-3 ** 2 * 60e-3 * 16.3e-3
    expect((two - drilled) / taken).toBeGreaterThan(0.85)
    expect((two - drilled) / taken).toBeLessThan(1.05)
  })
})

test('files are read back as the same closed bodies in millimetres, a file a body for STL, one for 3MF', async () => {
  const { bodies, files } = await run({
    order: { shape: 'cable gland', values: {} },
    title: 'Cable gland, 6 mm',
    printing: { chord: 0.1e-3, scale: 0.996, foot: 0.2e-3 },
    files: ['stl', '3mf'],
  })
  expect(bodies).toHaveLength(2)
  expect(files.map((f) => f.name)).toEqual([
    'cable-gland-6-mm-gland-body.stl',
    'cable-gland-6-mm-gland-nut.stl',
    'cable-gland-6-mm.3mf',
  ])
  for (const f of files.slice(0, 2)) expect(flawsOf(readStl(f.bytes), { touching: false })).toEqual([])
  expect(flawsOf(read3mf(files[2]!.bytes).mesh, { touching: false })).toEqual([])
})

test('a part larger than the bed comes in pieces that each fit, all closed, pinned, of the same volume less the dowels', async () => {
  const order = { shape: 'stator', values: {} }
  const one = await run({ order, title: 'stator', printing: { chord: 0.1e-3 } })
  const bed = [0.1, 0.12, 0.15] as const
  const { bodies } = await run({ order, title: 'stator', printing: { chord: 0.1e-3, bed } })
  expect(bodies.length).toBeGreaterThan(1)
  let sum = 0
  for (const { mesh, low, high, volume } of bodies) {
    expect(flawsOf({ points: mesh.corners, triangles: mesh.triangles }, { touching: false })).toEqual([])
    for (const k of [0, 1, 2]) expect(high[k]! - low[k]!).toBeLessThan(bed[k]! + 1e-6)
    sum += volume
  }
  expect(sum).toBeLessThan(one.bodies[0]!.volume + 1e-9)
  expect(sum).toBeGreaterThan(0.98 * one.bodies[0]!.volume)
})

test('a foot is drawn in by what the printer bulges', async () => {
  const [plain, drawn] = await Promise.all(
    [0, 0.3e-3].map((foot) =>
      run({ order: { shape: 'printer gauge', values: {} }, title: 'g', printing: { foot } }).then(
        (m) => m.bodies[0]!,
      ),
    ),
  )
  const wide = (b: typeof plain) => {
    let most = 0
    for (let i = 0; i < b!.mesh.corners.length; i += 3)
      if (b!.mesh.corners[i + 2]! < 1e-5) most = Math.max(most, b!.mesh.corners[i]!)
    return most
  }
  expect(wide(plain) - wide(drawn)).toBeCloseTo(0.3e-3, 5)
})

test('it tells how far it is, and stops when it is called off', async () => {
  const told: number[] = []
  const input = { order: { shape: 'drill jig', values: {} }, title: 'jig' }
  await run(input, () => false, told)
  expect(told.length).toBeGreaterThan(2)
  expect(told.every((p, i) => i === 0 || p >= told[i - 1]!)).toBe(true)
  expect(told.at(-1)).toBe(1)
  await expect(run(input, () => true)).rejects.toBeInstanceOf(Cancelled)
})

test('an order that cannot be says the value and its limit', async () => {
  await expect(async () =>
    run({ order: { shape: 'stator', values: { nozzle: 5 } }, title: 's' }),
  ).rejects.toThrow('nozzle: 5000 mm is outside 15 mm to 280 mm')
  await expect(async () =>
    run({ order: { shape: 'stator', values: { nozzle: 0.13 } }, title: 's' }),
  ).rejects.toThrow(/^nozzle: 130 mm, must be below the bore of 120 mm/)
})
