import { expect, test } from 'vitest'
import { jetReckoners } from './jetReckoners.ts'

const run = (id: string, given: Record<string, number>, words: Record<string, string> = {}) => {
  const r = jetReckoners.find((x) => x.id === id)!
  const assumed = Object.fromEntries(
    r.inputs.filter((p) => p.assumed !== undefined).map((p) => [p.name, p.assumed!]),
  )
  return r.reckon({ ...assumed, ...given }, words)
}
const degree = Math.PI / 180

test('pitch and angle are each other’s inverse at every radius', () => {
  for (const radius of [0.03, 0.05, 0.08])
    for (const angle of [11, 15, 30].map((d) => d * degree)) {
      const { pitch } = run('pitch-from-angle', { radius, angle })
      expect(run('angle-from-pitch', { radius, pitch: pitch! }).angle).toBeCloseTo(angle, 12)
    }
})

test('100 mm of pitch at a 60 mm radius reads 14.86° on the protractor', () => {
  expect(run('angle-from-pitch', { radius: 0.06, pitch: 0.1 }).angle! / degree).toBeCloseTo(14.86, 2)
})

test('thrust from flow and flow from pull undo each other, at rest and under way, with the wake and without', () => {
  for (const speed of [0, 5, 10])
    for (const wake of [0, 0.06]) {
      const { thrust } = run('jet-thrust', { flow: 0.06, nozzle: 0.065, speed, wake })
      expect(run('flow-from-pull', { pull: thrust!, nozzle: 0.065, speed, wake }).flow).toBeCloseTo(0.06, 9)
    }
})

test('specific speeds survive the round trip through every system', () => {
  const made = run('specific-speed', { rotation: 100, flow: 0.06, head: 170 })
  for (const [from, value] of [
    ['no unit', made.specific!],
    ['US', made.us!],
    ['metric', made.metric!],
  ] as const) {
    const back = run('specific-speed-convert', { value }, { from })
    expect(back.specific).toBeCloseTo(made.specific!, 9)
    expect(back.us).toBeCloseTo(made.us!, 6)
    expect(back.metric).toBeCloseTo(made.metric!, 6)
  }
})

test('the likely pull lies below the bound', () => {
  const b = run('bollard-bound', { power: 5500, nozzle: 0.065 })
  expect(b.likelyLow).toBeLessThan(b.likelyHigh!)
  expect(b.likelyHigh).toBeLessThan(b.pull!)
})

test('G 16 lets a 250 g impeller at 6000 rpm keep 6.4 g·mm', () => {
  // ISO 21940-11: e ω = 16 mm/s
  const b = run('balance-grade', { mass: 0.25, rotation: 100 }, { grade: 'G 16' })
  expect(b.unbalance! * 1e6).toBeCloseTo(6.37, 2)
  expect(b.offset! * 1e6).toBeCloseTo(25.5, 1)
})

test('a hub wider than the bore is refused by name', () => {
  expect(() => run('screw-slip', { flow: 0.05, rotation: 90, pitch: 0.1, bore: 0.1, hub: 0.12 })).toThrow(
    /hub/,
  )
})

test('the cavitation reckoner and the tip-speed ceiling agree', () => {
  const bore = 0.12
  const c = run('tip-speed-ceiling', { bore, number: 0.0575, flowCoefficient: 0.169 })
  const hub = 0.05
  const axial = 0.169 * c.tipSpeed!
  const flow = axial * 0.25 * Math.PI * (bore ** 2 - hub ** 2)
  const b = run('blade-cavitation', { bore, hub, pitch: 0.1, rotation: c.rotation!, flow })
  expect(b.number).toBeCloseTo(0.0575, 9)
})
