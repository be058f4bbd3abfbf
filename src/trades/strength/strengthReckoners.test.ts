import { describe, expect, test } from 'vitest'
import { strengthReckoners } from './strengthReckoners.ts'

const ask = (id: string, given: Record<string, number>, words: Record<string, string> = {}) => {
  const r = strengthReckoners.find((x) => x.id === id)!
  const filled = Object.fromEntries(
    r.inputs.filter((p) => p.kind !== 'choice').map((p) => [p.name, given[p.name] ?? p.assumed]),
  )
  return r.reckon(filled as Record<string, number>, words)
}

describe('strength reckoners', () => {
  test('a square bay of 0.2 m in 1.5 mm sheet under 900 N: 2.9 mm held in, 15.3 mm by bending alone', () => {
    const r = ask('deck-bay', { a: 0.2, b: 0.2, t: 1.5e-3, load: 900 })
    expect(r['deflection']! * 1e3).toBeCloseTo(2.94, 1)
    expect(r['deflectionFree']! * 1e3).toBeCloseTo(15.3, 1)
  })
  test('sheet on foam: a softer foam is pressed less and lets the sheet sag more', () => {
    const soft = ask('sheet-on-foam', { t: 1.5e-3, depth: 0.1, load: 883 }, { foam: 'EPS 15' })
    const hard = ask('sheet-on-foam', { t: 1.5e-3, depth: 0.1, load: 883 }, { foam: 'XPS 35' })
    expect(soft['deflection']!).toBeGreaterThan(hard['deflection']!)
    expect(soft['pressure']!).toBeLessThan(hard['pressure']!)
  })
  test('sheet on foam: a foot far wider than the sheet can spread presses the foam with its own pressure and bends the sheet inside its rim', () => {
    const wide = ask('sheet-on-foam', { t: 0.8e-3, depth: 0.02, load: 1648 }, { foam: 'XPS 35' })
    // 22.8 MPa by a series of 399 terms summed outside this code
    expect(Math.abs(wide['stress']! / 22.8e6 - 1)).toBeLessThan(0.03)
    const wider = ask(
      'sheet-on-foam',
      { t: 0.2e-3, depth: 0.02, load: 1648, u: 0.2, v: 0.2 },
      { foam: 'XPS 35' },
    )
    expect(wider['pressure']!).toBeCloseTo(1648 / 0.04, 0)
    expect(wider['stress']!).toBeGreaterThan(0)
  })
  test('1.5 mm sheet over 200 mm square pops after 3 K', () => {
    const r = ask('oil-canning', { a: 0.2, b: 0.2, t: 1.5e-3 })
    expect(r['rise']).toBeCloseTo(2.96, 2)
    expect(r['stress']! / 1e6).toBeCloseTo(14.5, 1)
    expect(r['camber']).toBeCloseTo(0.002, 12)
  })
  test('rivets: 4.8 mm in 2 mm sheet carry 575 N in shear, and 5052 is soft beside a weld', () => {
    expect(ask('rivet-pitch', { t: 2e-3, pull: 70e3 }, { alloy: '5052-H32' })['carries']).toBeCloseTo(575, 6)
    expect(ask('sheet-strength', {}, { alloy: '5052-H32' })['weldedYield']).toBe(65e6)
  })
  test('heat: at the least distance the face stands at the limit; inside the pipe is refused', () => {
    const given = { diameter: 0.08, pipe: 673.15, distance: 0.2 }
    const { least } = ask('heat-distance', given)
    expect(ask('heat-distance', { ...given, distance: least! })['face']).toBeCloseTo(338.15, 2)
    expect(() => ask('heat-distance', { ...given, distance: 0.03 })).toThrow(/radius/)
    expect(() => ask('heat-shield', { ...given, distance: 0.03 })).toThrow(/radius/)
  })
  test('every reckoner about foam and heat carries its caution', () => {
    for (const id of ['heat-distance', 'heat-shield', 'pipe-wrap', 'sandwich-strip', 'rivet-pitch'])
      expect(strengthReckoners.find((r) => r.id === id)!.cautions!.length).toBeGreaterThan(0)
  })
})
