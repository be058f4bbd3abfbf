import { expect, test } from 'vitest'
import type { Port } from '../base/answers/reckoner.ts'
import { describeReckoner, readInput, reckonTexts } from '../base/answers/reckonTexts.ts'
import { findUnit } from '../base/units/convert.ts'
import { findReckoner, reckoners } from './reckoners.ts'

test('ids are unique, and each port has a unit of its kind and sensible limits', () => {
  expect(reckoners.length).toBeGreaterThan(11)
  expect(new Set(reckoners.map((r) => r.id)).size).toBe(reckoners.length)
  for (const r of reckoners) {
    expect(r.sources.length, r.id).toBeGreaterThan(0)
    expect(r.outputs.length, r.id).toBeGreaterThan(0)
    for (const p of [...r.inputs, ...r.outputs]) {
      const at = `${r.id}.${p.name}`
      expect(p.name, at).toMatch(/^[a-zA-Z][a-zA-Z0-9]*$/)
      if (p.kind === 'choice') expect(p.choices?.length, at).toBeGreaterThan(1)
      else expect(findUnit(p.kind, p.unit), at).toBeDefined()
      if (p.min !== undefined && p.max !== undefined) expect(p.min, at).toBeLessThan(p.max)
      if (p.assumed !== undefined) {
        if (p.min !== undefined) expect(p.assumed, at).toBeGreaterThanOrEqual(p.min)
        if (p.max !== undefined) expect(p.assumed, at).toBeLessThanOrEqual(p.max)
      }
    }
  }
})

/** a value inside an input's range: its assumed one, or the geometric or arithmetic middle */
function middle(p: Port, part: number): string {
  if (p.kind === 'choice') return p.choices![0]!
  if (p.assumed !== undefined) return String(p.assumed)
  const low = p.min ?? 1
  const high = p.max ?? low * 10 + 1
  return String(low > 0 ? low ** (1 - part) * high ** part : low + (high - low) * part)
}

test('every reckoner gives finite numbers or a named problem anywhere in its range, and never throws', () => {
  for (const r of reckoners) {
    let answered = 0
    for (const part of [0, 0.1, 0.3, 0.5, 0.7, 0.9, 1]) {
      const texts = Object.fromEntries(r.inputs.map((p) => [p.name, middle(p, part)]))
      const answer = reckonTexts(r, texts)
      if (!answer.ok) continue
      answered++
      for (const p of r.outputs)
        expect(Number.isFinite(answer.outputs[p.name]), `${r.id}.${p.name}`).toBe(true)
    }
    expect(answered, `${r.id} answered nowhere on the diagonal of its range`).toBeGreaterThan(0)
  }
})

test('a slip in an input name, a wrong unit, a missing input and a value out of range are each named', () => {
  const r = findReckoner('ittc57')!
  expect(r).toBeDefined()
  const input = r.inputs[0]!
  const slip = reckonTexts(r, { [`${input.name}x`]: '1' })
  expect(slip.ok).toBe(false)
  if (!slip.ok) expect(slip.problems.map((p) => p.says).join('\n')).toContain(`"${input.name}" may be meant`)
  expect(
    readInput({ name: 'a', says: '', kind: 'length', unit: 'mm', min: 0, max: 1 }, '3 kg'),
  ).toMatchObject({ input: 'a' })
  expect(readInput({ name: 'a', says: '', kind: 'length', unit: 'mm', min: 0, max: 1 }, '3 m')).toMatchObject(
    {
      says: '3000 mm is outside 0 mm to 1000 mm',
    },
  )
  expect(readInput({ name: 'a', says: '', kind: 'length', unit: 'mm' }, '25 mm')).toBeCloseTo(0.025, 12)
  expect(
    readInput({ name: 'a', says: '', kind: 'choice', unit: '', choices: ['round', 'square'] }, 'roud'),
  ).toMatchObject({
    says: expect.stringContaining('"round" may be meant'),
  })
})

test('describeReckoner is plain data', () => {
  for (const r of reckoners)
    expect(JSON.parse(JSON.stringify(describeReckoner(r)))).toMatchObject({ id: r.id })
})
