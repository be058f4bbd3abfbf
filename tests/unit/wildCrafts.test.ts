import { expect, test } from 'vitest'
import { type Random, seededRandom } from '../../src/base/numerics/random.ts'
import { type Craft, fieldAt, type Quantity } from '../../src/craft/index.ts'
import { floatSaid } from '../../src/trades/float/float.testkit.ts'
import { strengthFindingsOf } from '../../src/trades/strength/deckFindings.ts'
import { strengthFromCraft } from '../../src/trades/strength/strengthFromCraft.ts'
import { demoCraft } from '../../src/whole/push/demo.testkit.ts'

/** Every quantity inside a part of a craft. */
function quantitiesIn(part: unknown, found: Quantity[] = []): Quantity[] {
  if (part === null || typeof part !== 'object') return found
  if ('value' in part && 'path' in part) found.push(part as Quantity)
  else for (const inner of Object.values(part)) quantitiesIn(inner, found)
  return found
}

/** The craft with a few values thrown anywhere in the range their fields allow, ends included. */
function wild(craft: Craft, random: Random): Craft {
  const copy = structuredClone(craft) as Craft
  const parts = [
    copy.hull,
    copy.weights,
    copy.rider,
    copy.openings,
    copy.foam,
    copy.compartments,
    copy.deck,
    copy.hotParts,
  ]
  const all = quantitiesIn(parts) as { -readonly [K in keyof Quantity]: Quantity[K] }[]
  for (let i = random.next() < 0.5 ? 3 : 12; i > 0; i--) {
    const q = all[Math.floor(random.next() * all.length)]!
    const spec = fieldAt(q.path) as unknown as
      | { min?: number; max?: number; each?: { min: number; max: number } }
      | undefined
    const { min, max } = { min: -1, max: 10, ...(spec?.each ?? spec) } as { min: number; max: number }
    const most = max < 1e6 ? max : 20 * Math.abs(q.value) + 1
    const throwAt = random.next()
    const value =
      throwAt < 0.15
        ? min
        : throwAt < 0.3
          ? most
          : throwAt < 0.65
            ? q.value * random.between(0.3, 2.3)
            : random.between(min, most)
    q.value = Math.min(most, Math.max(min, value))
    q.low = q.value - 0.05 * Math.abs(q.value)
    q.high = q.value + 0.05 * Math.abs(q.value)
  }
  return copy
}

test('a craft with wild values still gets sentences with numbers in them from float and strength, and never a crash', () => {
  const bases = [demoCraft('heron'), demoCraft('teal')]
  const random = seededRandom(20)
  for (let k = 0; k < 10; k++) {
    const craft = wild(bases[k % 2]!, random)
    for (const f of [...floatSaid(craft), ...strengthFindingsOf(strengthFromCraft(craft))]) {
      const words = [f.says, ...f.because.map((b) => b.says)].join(' ')
      expect(words, `${k} ${f.id}`).not.toMatch(/NaN|Infinity|undefined/)
      for (const v of [f.value, f.low, f.high])
        if (v !== undefined) expect(Number.isFinite(v), `${k} ${f.id}`).toBe(true)
      if (f.low !== undefined) expect(f.low, `${k} ${f.id}`).toBeLessThanOrEqual(f.value! + 1e-9)
      if (f.high !== undefined) expect(f.high, `${k} ${f.id}`).toBeGreaterThanOrEqual(f.value! - 1e-9)
    }
  }
}, 90_000)
