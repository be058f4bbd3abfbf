import { afterAll, beforeAll, expect, test, vi } from 'vitest'
import { demoCraft } from '../../src/craft/craft.testkit.ts'

/** floats at rest solved, and hulls lofted, since the file began */
const counts = { settles: 0, lofts: 0 }
const settling = '../../src/hull/afloat/settle.ts'
const lofting = '../../src/hull/lines/loft.ts'

let lookAt: typeof import('../../src/whole/look.ts').lookAt
let craftPicture: typeof import('../../src/whole/picture/craftPicture.ts').craftPicture

// unit tests share one module graph: this file loads one of its own, with two modules that count
beforeAll(async () => {
  vi.resetModules()
  vi.doMock(settling, async (original) => {
    const module = await original<typeof import('../../src/hull/afloat/settle.ts')>()
    const settle: typeof module.settle = (...given) => {
      counts.settles++
      return module.settle(...given)
    }
    return { ...module, settle }
  })
  vi.doMock(lofting, async (original) => {
    const module = await original<typeof import('../../src/hull/lines/loft.ts')>()
    const lofted: typeof module.lofted = (...given) => {
      counts.lofts++
      return module.lofted(...given)
    }
    return { ...module, lofted }
  })
  lookAt = (await import('../../src/whole/look.ts')).lookAt
  craftPicture = (await import('../../src/whole/picture/craftPicture.ts')).craftPicture
})

afterAll(() => {
  vi.doUnmock(settling)
  vi.doUnmock(lofting)
  vi.resetModules()
})

/** hulls with one measure at either bound, for the ranges of draft and openings: seven measures move Heron's draft */
const others = 14

test('one look at Heron lofts its hull once and each measure in doubt at its bounds, floats it sixty times at most, its picture not once more', () => {
  const craft = demoCraft('heron')
  lookAt(craft)
  expect(counts.lofts).toBe(1 + others)
  expect(counts.settles).toBeGreaterThan(10)
  expect(counts.settles).toBeLessThanOrEqual(60)
  const before = counts.settles
  craftPicture(craft)
  lookAt(craft)
  expect(counts).toMatchObject({ settles: before, lofts: 1 + others })
})

test('another rider floats the same hull anew, another pipe does not', () => {
  const craft = demoCraft('dabchick')
  lookAt(craft)
  const { settles, lofts } = counts
  const { mass } = craft.rider
  const heavier = { ...craft, rider: { ...craft.rider, mass: { ...mass, value: mass.value + 5 } } }
  lookAt(heavier)
  expect(counts.lofts).toBe(lofts)
  expect(counts.settles).toBeGreaterThan(settles)
  const then = counts.settles
  lookAt({ ...heavier, drive: { ...heavier.drive } })
  expect(counts.settles).toBe(then)
})
