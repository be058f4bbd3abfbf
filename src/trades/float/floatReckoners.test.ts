import { describe, expect, test } from 'vitest'
import { floatReckoners } from './floatReckoners.ts'

const ask = (id: string, given: Record<string, number>) => {
  const r = floatReckoners.find((x) => x.id === id)!
  const filled = Object.fromEntries(r.inputs.map((p) => [p.name, given[p.name] ?? p.assumed]))
  return r.reckon(filled as Record<string, number>, {})
}

describe('float reckoners', () => {
  test('a 10 mm hole 0.1 m down lets in 4 litres a minute', () => {
    expect(ask('leak-rate', { diameter: 0.01, head: 0.1 })['flow']! * 6e4).toBeCloseTo(3.96, 2)
    expect(() => ask('leak-rate', { diameter: 0.01, head: 0 })).toThrow(/head/)
  })
  test('30 kg of aluminium and 15 kg of steel want 36 L of foam with a tenth in hand', () => {
    const r = ask('foam-needed', { metal: 30, engine: 15, water: 999 })
    expect(r['weight']).toBeCloseTo(30 * (1 - 999 / 2700) + 15 * (1 - 999 / 7850), 9)
    expect(r['lift']).toBe(881)
    expect(r['volume']! * 1e3).toBeCloseTo((1.1 * r['weight']!) / 0.881, 9)
  })
  test('a board with a standing rider is the one of the check: GM −8 cm', () => {
    const r = ask('board-stability', { length: 2.4, beam: 0.7, load: 190, centre: 0.5, water: 1000 })
    expect(r['gm']).toBeCloseTo(-0.0824, 3)
    expect(r['arm']).toBeCloseTo(-0.013334, 4)
    expect(r['loll']!).toBeGreaterThan(0.5)
  })
  test('the period for a GM gives that GM back', () => {
    const T = ask('roll-period', { beam: 0.8, gm: 0.25 })['period']!
    expect(ask('roll-period', { beam: 0.8, timed: T })['gmTimed']).toBeCloseTo(0.25, 9)
  })
  test('two scales: weight, place and doubt', () => {
    const r = ask('centre-by-scales', { at1: 0.2, reading1: 40, at2: 2.2, reading2: 24 })
    expect(r['mass']).toBe(64)
    expect(r['centre']).toBeCloseTo((0.2 * 40 + 2.2 * 24) / 64, 12)
    expect(r['doubt']!).toBeLessThan(0.01)
  })
  test('four cells lose a sixteenth of what one tank loses', () => {
    const one = ask('free-surface', { tankLength: 0.4, tankWidth: 0.3, craft: 150 })['loss']!
    expect(one).toBeCloseTo(((745 / 150) * 0.4 * 0.027) / 12, 12)
    expect(
      ask('free-surface', { tankLength: 0.4, tankWidth: 0.3, craft: 150, cells: 4 })['loss']! / one,
    ).toBeCloseTo(1 / 16, 12)
  })
  test('guidance says in its own words that it is no proof', () => {
    const r = floatReckoners.find((x) => x.id === 'flotation-guidance')!
    expect(r.cautions!.join(' ')).toMatch(/no proof/)
  })
})
