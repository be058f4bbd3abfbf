import { describe, expect, test } from 'vitest'
import { sled } from './float.testkit.ts'
import { floatAnswer } from './floatAnswer.ts'
import type { FloatInput } from './input.ts'
import { liveFloat } from './live.ts'

const input: FloatInput = {
  hull: sled,
  water: 999,
  weights: [{ name: 'craft', mass: 64, at: [1, 0, 0.13] }],
  rider: { mass: 78, stature: 1.76, stance: 'kneeling', x: 0.95, y: 0 },
  openings: [{ name: 'intake', kind: 'air intake', at: [1.3, 0, 0.4], area: 0 }],
  foam: [],
  compartments: [],
}

describe('the rider dragged along', () => {
  const live = liveFloat(input)
  test('at his own place he gets the answer of the page', () => {
    const page = floatAnswer(input).ridden
    const now = live(0.95, 0)!
    expect(now.draftAft).toBeCloseTo(page.draftAft, 6)
    expect(now.freeboard).toBeCloseTo(page.freeboard, 6)
    expect(now.attitude.trim).toBeCloseTo(page.attitude.trim, 6)
  })
  test('the answer depends on where he is, not on how he got there', () => {
    const straight = liveFloat(input)(1.2, 0.03)!
    for (let x = 0.4; x < 1.2; x += 0.05) live(x, -0.04)
    const dragged = live(1.2, 0.03)!
    expect(dragged.attitude.heel).toBeCloseTo(straight.attitude.heel, 6)
    expect(dragged.attitude.trim).toBeCloseTo(straight.attitude.trim, 6)
  })
  test('too far out it does not stay, and the next place is answered afresh; off the deck there is no answer', () => {
    expect(live(1, 0.34)!.stays).toBe(false)
    expect(live(1, 0)!.stays).toBe(true)
    expect(live(1, 0.6)).toBeUndefined()
  })
  test('a craft that stands on its nose does not stay, upright as it is', () => {
    const low = liveFloat({
      ...input,
      weights: [{ name: 'craft', mass: 120, at: [1.1, 0, 0.13] }],
      rider: { ...input.rider, mass: 130 },
    })
    const states = [1, 1.4, 1.8, 2.2].map((x) => low(x, 0)!)
    for (const s of states) if (s.stays) expect(Math.abs(s.attitude.trim)).toBeLessThan(Math.PI / 4)
    expect(states[0]!.stays).toBe(true)
    expect(states.at(-1)!.stays).toBe(false)
  })
})
