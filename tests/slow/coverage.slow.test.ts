import { expect, test } from 'vitest'
import { type Coverage, coverageOf, coveredAnswers } from '../ranges/coverage.ts'
import { coveredCrafts } from '../ranges/crafts.ts'

const draws = 160
/** chance alone: standard deviation of the share of so many draws inside a true 95 %, with that of the range's own 1024 draws */
const scatter = Math.sqrt(0.95 * 0.05 * (1 / draws + 1 / 1024))

test('of fresh draws solved by the whole balance 95 in 100 fall inside the printed range, on thirty craft right and wrong', () => {
  const all: Coverage[] = coveredCrafts().flatMap((c, i) => coverageOf(c, coveredAnswers, draws, 1000 + i))
  for (const answer of coveredAnswers) {
    const of = all.filter((c) => c.answer === answer.name)
    expect(of.length).toBeGreaterThan(20)
    const mean = of.reduce((sum, c) => sum + c.inside / of.length, 0)
    expect(mean, answer.name).toBeGreaterThan(0.94)
    expect(mean, answer.name).toBeLessThan(0.97)
    // by chance one in twenty lies further off than twice the scatter; none may lie far outside
    const outside = of.filter((c) => Math.abs(c.inside - 0.95) > 2 * scatter)
    expect(
      outside.length / of.length,
      `${answer.name}: ${outside.map((c) => c.craft).join(', ')}`,
    ).toBeLessThan(0.21)
    for (const c of of) {
      expect(c.inside, `${c.craft}, ${c.answer}`).toBeGreaterThan(0.95 - 4 * scatter - 0.01)
      // the headline is the draws' own median
      expect(
        Math.abs(c.range.value - c.median) / (c.range.high - c.range.low),
        `${c.craft}, ${c.answer}`,
      ).toBeLessThan(0.12)
    }
  }
}, 1_800_000)
