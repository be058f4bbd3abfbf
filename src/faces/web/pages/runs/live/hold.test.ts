import { expect, test } from 'vitest'
import { type Held, lasting } from './hold.ts'

/** seconds at which an engine is shown, of a line heard where `on` says so */
function shown(on: (time: number) => boolean): number[] {
  const held: Held = {}
  const out: number[] = []
  for (let k = 0; k < 60; k++) {
    const time = k / 10
    const engines = on(time) ? [{ label: 'A' as const, rpm: 6000, confidence: 0.9 }] : []
    if (lasting(held, { time, engines }).engines.length > 0) out.push(time)
  }
  return out
}

test('a line that lasts is shown from its first second on, and no longer than it is heard', () => {
  const times = shown((t) => t >= 1 && t < 4)
  expect(times[0]).toBe(2)
  expect(times[times.length - 1]).toBe(3.9)
})

test('shouts of less than a second are not shown, a moment’s loss does not hide an engine', () => {
  expect(shown((t) => t % 1.5 < 0.9)).toEqual([])
  expect(shown((t) => t !== 3).length).toBe(49)
})

test('a line heard without confidence is not shown', () => {
  const held: Held = {}
  for (let time = 0; time < 5; time += 0.1) {
    const point = { time, engines: [{ label: 'B' as const, rpm: 6000, confidence: 0.3 }] }
    expect(lasting(held, point).engines).toEqual([])
  }
})
