import { readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import { readCraft } from '../craft/index.ts'
import { craftPicture } from './craftPicture.ts'
import { inchLook, metricLook } from './shown.ts'

const demos = ['heron', 'teal'].map((name) => {
  const text = readFileSync(`${import.meta.dirname}/../../demo/${name}.yaml`, 'utf8')
  return readCraft(text, `${name}.yaml`).craft!
})

test('each demo craft is drawn with its own length and beam, the words in the unit asked for', () => {
  for (const craft of demos) {
    const words = craftPicture(craft, { ...metricLook, width: 240 }).marks.flatMap((m) =>
      m.kind === 'text' ? [m.text] : [],
    )
    expect(words).toContain(`${(craft.hull.length.value * 1000).toFixed(0)} mm`)
    expect(words).toContain(`${(craft.hull.beam.value * 1000).toFixed(0)} mm`)
    expect(words.join()).toContain('draft')
    const inches = craftPicture(craft, inchLook).marks.flatMap((m) => (m.kind === 'text' ? [m.text] : []))
    expect(inches).toContain(`${(craft.hull.length.value / 0.0254).toFixed(1)} in`)
  }
})

test('a tank or engine without a size is drawn dashed', () => {
  const dashed = craftPicture(demos[0]!, metricLook).marks.filter((m) => m.kind === 'polygon' && m.style.dash)
  expect(dashed.length).toBeGreaterThan(2)
})
