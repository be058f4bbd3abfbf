import { expect, test } from 'vitest'
import type { StingerRow } from './exhaustTypes.ts'
import { tubeBores } from './pipeShape.ts'
import { boresToTry, stingerFindings, stingerRisk } from './stinger.ts'

/** a stinger of 0.62 of the port, as hot as now, with 9 kPa in the belly */
const calm = { bore: 0.0186, port: 0.03, exhaustT: 900, exhaustTNow: 900, inside: 9e3 }

test.each([
  [{}, 'good', 'bore is 0.62 of the exhaust port'],
  [{ bore: 0.0168 }, 'watch', 'bore is 0.56'],
  [{ bore: 0.0149 }, 'stop', 'bore is 0.50'],
  [{ exhaustT: 914 }, 'good', 'bore'],
  [{ exhaustT: 916 }, 'watch', '16 K hotter than now'],
  [{ exhaustT: 941 }, 'stop', '41 K hotter than now'],
  [{ inside: 15e3 }, 'watch', '15.0 kPa stay in the pipe'],
  [{ inside: 26e3 }, 'stop', '26.0 kPa stay in the pipe'],
  // what stops is said before what is only watched
  [{ exhaustT: 920, inside: 26e3 }, 'stop', '26.0 kPa'],
  [{ bore: 0.0149, exhaustT: 941 }, 'stop', 'bore is 0.50'],
] as const)('a stinger that differs by %j is of risk %s, because %s', (change, risk, because) => {
  const judged = stingerRisk({ ...calm, ...change })
  expect(judged.risk).toBe(risk)
  expect(judged.because).toContain(because)
})

test('bores to try are tube that is sold, from 0.48 to 0.85 of the port, and the present one', () => {
  const [port, now] = [0.03, 0.0193]
  const list = boresToTry(port, now)
  const sold = list.filter((b) => b !== now)
  expect(sold.every((b) => tubeBores.includes(b))).toBe(true)
  expect(Math.min(...sold)).toBeGreaterThanOrEqual(0.48 * port)
  expect(Math.max(...sold)).toBeLessThanOrEqual(0.85 * port)
  // none that is sold within these ends is left out, but for one the same as the present
  const within = tubeBores.filter((b) => b >= 0.48 * port && b <= 0.85 * port && Math.abs(b - now) > 2e-4)
  expect(sold).toHaveLength(within.length)
})

const row = (bore: number, thrust: number, over: Partial<StingerRow> = {}): StingerRow => ({
  bore,
  length: 0.2,
  pull: 500,
  thrust,
  pullAt: 7000,
  torque: 10,
  exhaustT: 900,
  gauge: 4000,
  inside: 9000,
  risk: 'good',
  because: 'made up',
  cells: 'fine',
  ...over,
})

test('a gain of a hundredth or more of the thrust is told as a change, a smaller one as none', () => {
  const now = row(0.02, 400)
  const says = (best: StingerRow) =>
    stingerFindings({ final: true, rows: [now, best], now, best }, 'engines.0')[0]!.says
  expect(says(row(0.019, 404.1))).toBe(
    'A stinger of 19 mm bore, 200 mm long, gives 4 N more thrust than the present 20 mm by 200 mm.',
  )
  expect(says(row(0.019, 403.9))).toContain('is within 1 % of the best')
  expect(says(now)).toContain('The present stinger, 20 mm by 200 mm')
})

test('before the end nothing is judged; at the end a risky present stinger is watched', () => {
  const standing = (final: boolean, now: StingerRow) =>
    stingerFindings({ final, rows: [now], now, best: now }, 'engines.0')[0]!.standing
  expect(standing(false, row(0.02, 400))).toBe('unknown')
  expect(standing(true, row(0.02, 400))).toBe('good')
  expect(standing(true, row(0.02, 400, { risk: 'stop' }))).toBe('watch')
})
