import fc from 'fast-check'
import { expect, test } from 'vitest'
import { CANDIDATES, type FrameStore, makeFrameStore, PAIRS } from './frameStore.ts'
import { pathOne } from './pathOne.ts'
import { isRational, pathTwo } from './pathTwo.ts'
import { usualCosts } from './settings.ts'
import { moveCost } from './trackMoves.ts'

interface Tiny {
  rates: number[]
  scores: number[]
  slopes: number[]
}
const tiny = fc.array(
  fc.record({
    rates: fc.array(fc.double({ min: 30, max: 200, noNaN: true }), { minLength: 3, maxLength: 3 }),
    scores: fc.array(fc.double({ min: 0, max: 9, noNaN: true }), { minLength: 3, maxLength: 3 }),
    slopes: fc.array(fc.nat(12), { minLength: 3, maxLength: 3 }),
  }),
  { minLength: 1, maxLength: 5 },
)

function storeOf(frames: readonly Tiny[]): FrameStore {
  const s = makeFrameStore(frames.length)
  s.frames = frames.length
  frames.forEach((f, i) => {
    s.count[i] = 3
    f.rates.forEach((r, k) => {
      s.rate[i * CANDIDATES + k] = r
      s.score[i * CANDIDATES + k] = f.scores[k]!
      s.slope[i * CANDIDATES + k] = f.slopes[k]!
    })
    let p = 0
    for (let a = 0; a < 3; a++)
      for (let b = a + 1; b < 3; b++, p++) {
        s.pairA[i * PAIRS + p] = a
        s.pairB[i * PAIRS + p] = b
        s.pairScore[i * PAIRS + p] = Math.round(800 * (f.scores[a]! + f.scores[b]!))
      }
    s.pairCount[i] = p
  })
  return s
}

// births pay within a frame or two, so that tiny cases are not all silence
const costs = { ...usualCosts, birth: 1, death: 0.5, restFrames: 2 }

/** Cost of one path, Infinity where a rest after a stop is broken. */
function costOfOne(s: FrameStore, path: readonly number[]): number {
  let cost = 0
  let sinceDeath = Number.POSITIVE_INFINITY
  for (let i = 0; i < path.length; i++) {
    const k = path[i]!
    const was = i > 0 ? path[i - 1]! : -1
    if (k < 0) {
      if (was >= 0) {
        cost += costs.death
        sinceDeath = 1
      } else sinceDeath++
      continue
    }
    if (was < 0) {
      if (sinceDeath < costs.restFrames) return Number.POSITIVE_INFINITY
      if (i > 0) cost += costs.birth
    } else {
      const p = (i - 1) * CANDIDATES + was
      const q = i * CANDIDATES + k
      cost += moveCost(Math.log(s.rate[q]! / s.rate[p]!), s.slope[p]!, s.slope[q]!, costs)
    }
    cost -= costs.reward * (s.score[i * CANDIDATES + k]! - costs.offset)
  }
  return cost
}

function everyPath(n: number): number[][] {
  let all: number[][] = [[]]
  for (let i = 0; i < n; i++) all = all.flatMap((p) => [-1, 0, 1, 2].map((k) => [...p, k]))
  return all
}

test('pathOne costs exactly what the best of all paths costs on small cases', () => {
  fc.assert(
    fc.property(tiny, (frames) => {
      const s = storeOf(frames)
      const best = Math.min(...everyPath(frames.length).map((p) => costOfOne(s, p)))
      const got = costOfOne(s, Array.from(pathOne(s, costs)))
      expect(got).toBeCloseTo(best, 5)
    }),
    { numRuns: 60 },
  )
})

test('pathTwo costs exactly what the best of all pairs of paths costs on small cases', () => {
  fc.assert(
    fc.property(
      tiny.filter((f) => f.length <= 2),
      (frames) => {
        const s = storeOf(frames)
        const cost = (a: readonly number[], b: readonly number[]) => {
          let c = 0
          for (let i = 0; i < a.length; i++) {
            c += stateCost(s, i, a[i]!, b[i]!)
            if (i > 0) c += stepCost(s, i, a[i - 1]!, a[i]!) + stepCost(s, i, b[i - 1]!, b[i]!)
          }
          return c
        }
        const all = everyPath(frames.length)
        let best = Number.POSITIVE_INFINITY
        for (const a of all) for (const b of all) best = Math.min(best, cost(a, b))
        const got = pathTwo(s, costs)
        expect(cost(Array.from(got.first), Array.from(got.second))).toBeCloseTo(best, 5)
      },
    ),
    { numRuns: 40 },
  )
})

function stateCost(s: FrameStore, i: number, a: number, b: number): number {
  const one = (k: number) => -costs.reward * (s.score[i * CANDIDATES + k]! - costs.offset)
  if (a < 0 && b < 0) return 0
  if (a < 0) return one(b)
  if (b < 0) return one(a)
  if (a === b) return one(a) + 0.3
  for (let p = 0; p < s.pairCount[i]!; p++) {
    const x = s.pairA[i * PAIRS + p]!
    const y = s.pairB[i * PAIRS + p]!
    if ((x !== a || y !== b) && (x !== b || y !== a)) continue
    const orders = isRational(s.rate[i * CANDIDATES + x]! / s.rate[i * CANDIDATES + y]!)
      ? costs.rationalOffset
      : 0
    return -costs.reward * (s.pairScore[i * PAIRS + p]! / 1000 - costs.offset - costs.pairOffset - orders)
  }
  return Number.POSITIVE_INFINITY
}

function stepCost(s: FrameStore, i: number, was: number, is: number): number {
  if (was < 0) return is < 0 ? 0 : costs.birth
  if (is < 0) return costs.death
  const p = (i - 1) * CANDIDATES + was
  const q = i * CANDIDATES + is
  return moveCost(Math.log(s.rate[q]! / s.rate[p]!), s.slope[p]!, s.slope[q]!, costs)
}
