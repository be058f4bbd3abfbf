import { describe, expect, test } from 'vitest'
import { wakewright } from './commandLine.ts'

describe('breathe', () => {
  test('--json tells how a two-stroke breathes: findings, and a curve that settled', async () => {
    const { code, out, err } = await wakewright(['breathe', 'demo/dabchick.yaml', '--json'])
    expect(err).toBe('')
    expect([0, 1]).toContain(code)
    const { findings, engines, units } = JSON.parse(out)
    expect(units.torque).toBe('N·m')
    expect(findings.every((f: { question: string }) => f.question === 'breath')).toBe(true)
    expect(findings.length).toBeGreaterThan(8)
    const settled = engines[0].curve.points.filter((p: { converged: boolean }) => p.converged)
    expect(settled.length).toBeGreaterThan(6)
  })

  test('a second look takes the kept curve and says the same', async () => {
    const first = await wakewright(['breathe', 'demo/dabchick.yaml', '--json'])
    const second = await wakewright(['breathe', 'demo/dabchick.yaml', '--json'])
    expect(second.out).toBe(first.out)
  })

  test.each([
    [['--search', 'muffler'], /not pipe or stinger/],
    [['--engine', '3'], /from 1 to 1/],
    [['--rpm', 'fast'], /1000 to 20000/],
  ])('bad input %j ends with code 2 and a word on it', async (more, says) => {
    const { code, err } = await wakewright(['breathe', 'demo/dabchick.yaml', ...more])
    expect(code).toBe(2)
    expect(err).toMatch(says)
  })

  test('a search on an engine without a pipe is refused by its path', async () => {
    const { code, err } = await wakewright(['breathe', 'demo/heron.yaml', '--search', 'pipe'])
    expect(code).toBe(2)
    expect(err).toMatch(/engines\.0.*two-stroke/)
  })
})
