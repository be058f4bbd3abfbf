import { expect, test } from 'vitest'
import type { Spec, VariantSpec } from '../../../../craft/fields.ts'
import { fieldAt } from '../../../../craft/index.ts'
import { templateText } from '../../../../craft/templates.ts'
import { readText, removeValue, writeValue } from '../../state/craftFile.ts'
import { type Blank, blanksOf, firstWord, readBlank, requiredOf } from './blanks.ts'

/** a sound value for a blank, in the middle of what can be */
function sample({ spec, path }: Blank, turn: number): string {
  if (spec.type === 'choice') return firstWord(spec)
  if (spec.type === 'text') return spec.label === 'Date' ? '2026-05-14' : 'something'
  if (spec.type !== 'quantity') throw new Error(`${path} is a ${spec.type}`)
  const middle =
    spec.kind === 'count'
      ? Math.max(1, Math.ceil(spec.min))
      : Math.min(spec.max, Math.max(spec.min, 0.05 + 0.01 * turn))
  return spec.kind === 'count' || spec.kind === 'ratio'
    ? String(middle)
    : `${middle} ${siName[spec.kind] ?? 'm'}`
}
const siName: Record<string, string> = {
  length: 'm',
  mass: 'kg',
  rotation: 'rev/s',
  torque: 'N·m',
  power: 'W',
  volume: 'm³',
  angle: 'rad',
}

const engine = (fieldAt('engines') as Extract<Spec, { type: 'list' }>).item as VariantSpec

test('a new weight asks for its name, its mass and its place', () => {
  const item = (fieldAt('weights') as Extract<Spec, { type: 'list' }>).item as Spec
  expect(blanksOf(item, 'weights.1').map((b) => b.path)).toEqual([
    'weights.1.name',
    'weights.1.mass',
    'weights.1.at.0',
    'weights.1.at.1',
    'weights.1.at.2',
  ])
})

test('what is asked for is enough: a new weight makes a file that reads', () => {
  const item = (fieldAt('weights') as Extract<Spec, { type: 'list' }>).item as Spec
  const text = blanksOf(item, 'weights.1').reduce(
    (sum, b, i) => writeValue(sum, b.path, sample(b, i)),
    templateText('x'),
  )
  expect(readText(text, 'x.yaml').problems).toEqual([])
})

test('an engine made a curve is asked for the points of the curve', () => {
  const { fields } = engine.variants['curve']!
  const paths = requiredOf(fields, 'engines.0').map((b) => b.path)
  expect(paths).toContain('engines.0.curve.0.at')
  expect(paths).toContain('engines.0.curve.2.torque')
})

test('an engine made a curve with what is asked for reads', () => {
  const next = engine.variants['curve']!.fields
  const goes = Object.keys(engine.variants['peak']!.fields).filter((key) => !(key in next))
  let text = goes.reduce((sum, key) => removeValue(sum, `engines.0.${key}`), templateText('x'))
  text = writeValue(text, 'engines.0.kind', 'curve')
  for (const [i, blank] of requiredOf(next, 'engines.0').entries())
    if (!blank.path.endsWith('displacement'))
      text = writeValue(
        text,
        blank.path,
        blank.path.endsWith('.at') ? `${3000 + 500 * i} rpm` : sample(blank, i),
      )
  expect(readText(text, 'x.yaml').problems.map((p) => p.says)).toEqual([])
  expect(text).not.toContain('power at')
})

test('a blank takes a bare number in the unit shown, and says what is wrong with another', () => {
  const blank = { path: 'jet.rotor.pitch', spec: fieldAt('jet.rotor.pitch')! }
  expect(readBlank(blank, '95', 'metric')).toEqual({ text: '95 mm' })
  expect(readBlank(blank, '3.7', 'inch')).toEqual({ text: '3.7 in' })
  expect(readBlank(blank, '95 kg', 'metric')).toHaveProperty('fault')
  expect(readBlank(blank, '95 km', 'metric')).toHaveProperty('fault')
  expect(readBlank(blank, '', 'metric')).toHaveProperty('fault')
})
