import { expect, test } from 'vitest'
import { seededRandom } from '../../base/numerics/random.ts'
import { solveJet } from './jet.ts'
import { referenceJet } from './jetReference.ts'
import { belowKnee, calibrateJet } from './tieUpFit.ts'

test('a tie-up test with 3 % noise gives back the turning it was made with within 0.03', () => {
  for (const [turning, seed] of [
    [0.78, 1],
    [0.85, 2],
    [0.91, 3],
  ] as const) {
    const truth = { ...referenceJet(), model: { turning } }
    const noise = seededRandom(seed).normal
    const readings = [2500, 3000, 3500, 4000, 4500, 5000, 5500, 6000].map((rpm) => {
      const p = solveJet(truth, rpm / 60, 0)
      return { n: rpm / 60, F: p.F * (1 + 0.03 * noise()), T: p.T * (1 + 0.03 * noise()) }
    })
    const fit = calibrateJet(referenceJet(), readings, { n: 0.002, F: 0.03, T: 0.03 })
    expect(fit.converged).toBe(true)
    expect(Math.abs(fit.value.turning - turning)).toBeLessThan(0.03)
  }
})

test('without noise the fit returns turning exactly and leaves no residuals', () => {
  const truth = { ...referenceJet(), model: { turning: 0.8 } }
  const readings = [3000, 4000, 5000].map((rpm) => ({ n: rpm / 60, F: solveJet(truth, rpm / 60, 0).F }))
  const fit = calibrateJet(referenceJet(), readings, { n: 1e-4, F: 1e-4, T: 1e-4 })
  expect(fit.value.turning).toBeCloseTo(0.8, 4)
  for (const r of fit.value.residuals) expect(Math.abs(r.F)).toBeLessThan(1e-3)
})

test('readings past the knee are left out, one odd reading is not a knee', () => {
  const spec = referenceJet()
  const readings = [4000, 5000, 6000, 7000, 8000, 8500, 9000].map((rpm) => ({
    n: rpm / 60,
    F: solveJet(spec, rpm / 60, 0).F,
  }))
  expect(belowKnee(readings).beyond.map((r) => Math.round(r.n * 60))).toEqual([8000, 8500, 9000])
  const odd = [3, 4, 5, 6].map((n) => ({ n, F: n === 4 ? 0.9 * n * n : n * n }))
  expect(belowKnee(odd).beyond).toEqual([])
})

test('one reading alone is not a calibration', () => {
  expect(calibrateJet(referenceJet(), [{ n: 80, F: 700 }]).converged).toBe(false)
})
