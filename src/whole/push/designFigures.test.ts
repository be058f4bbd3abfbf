import { expect, test } from 'vitest'
import { printed } from '../../base/answers/sentence.ts'
import { expectGolden } from '../../drawing/golden.testkit.ts'
import type { Sheet } from '../../drawing/sheet.ts'
import { madeUpDesign } from './design.testkit.ts'
import { choiceFigure, pitchFigure } from './designFigures.ts'
import { bandSays, optionSays } from './designWords.ts'
import { inchLook, metricLook } from './shown.ts'

const answer = madeUpDesign()
const words = (s: Sheet) => s.marks.flatMap((m) => (m.kind === 'text' ? [m.text] : []))

test('pull against speed and both over the pitch look as they did, wide and narrow', () => {
  for (const [name, look] of [
    ['wide', { ...metricLook, width: 200 }],
    ['narrow', { ...metricLook, width: 94 }],
  ] as const) {
    const folder = `${import.meta.dirname}/golden`
    expectGolden(choiceFigure(answer, look), folder, `choice-${name}`)
    expectGolden(pitchFigure(answer, 'pull', look), folder, `pitch-pull-${name}`)
    expectGolden(pitchFigure(answer, 'topSpeed', look), folder, `pitch-speed-${name}`)
  }
})

test('what is fitted is marked, and of the options the four best that may be offered', () => {
  const said = words(choiceFigure(answer, { ...metricLook, width: 240 }))
  expect(said).toContain('now')
  expect(said).toContain('2 blades, 66 mm')
  expect(said).toContain('nozzle 64 mm')
  expect(said.join(' ')).not.toContain('of these blades')
})

test('over the pitch there is a line for each number of blades, in the units asked for', () => {
  const sheet = pitchFigure(answer, 'pull', inchLook)
  expect((sheet.plots?.[0]?.series ?? []).map((l) => l.name)).toEqual(['2 blades', '3 blades', '4 blades'])
  expect(words(sheet)).toContain('pitch, in')
})

test('a craft whose impeller is not turned, or whose speed is not known, is drawn without a made-up number', () => {
  const none = { value: Number.NaN, low: Number.NaN, high: Number.NaN }
  const lost = {
    ...answer,
    now: { ...answer.now, pull: { value: 0, low: 0, high: 0 }, topSpeed: none },
    options: answer.options.map((o) => ({ ...o, topSpeed: none })),
    fitted: undefined,
    lines: [],
  }
  for (const sheet of [choiceFigure(lost, metricLook), pitchFigure(lost, 'topSpeed', metricLook)]) {
    for (const w of [...words(sheet), sheet.says]) expect(w).not.toMatch(/NaN|undefined/)
    for (const m of sheet.marks)
      if (m.kind === 'polyline' || m.kind === 'polygon') expect(m.points.every(Number.isFinite)).toBe(true)
  }
})

test('a band says what it may lose, and for which power; without doubt of the engines it leaves that out', () => {
  const band = answer.fitted!
  expect(printed(bandSays(band, 2))).toBe(
    '56 mm to 69 mm of pitch stays within 6 % of the best whether the engines give 2.1 kW or 3.1 kW each',
  )
  expect(printed(bandSays(band, 1))).toMatch(/the engine gives 2.1 kW or 3.1 kW$/)
  const { power: _, ...sure } = band
  expect(printed(bandSays({ ...sure, low: 0.0621, high: 0.0624 }, 2))).toBe(
    '62 mm of pitch stays within 6 % of the best',
  )
})

test('an option says what is to be made and what stays', () => {
  const now = answer.now.design
  const said = (id: Parameters<typeof optionSays>[0], change: Partial<typeof now>) =>
    printed(optionSays(id, now, { ...now, ...change }))
  expect(said('pitch', { pitch: 0.062 })).toBe(
    'an impeller of 62 mm pitch instead of 100 mm, 3 blades as now',
  )
  expect(said('blade-cut', { blades: 2 })).toMatch(/out of balance/)
  expect(said('together', { pitch: 0.08, blades: 2, nozzle: 0.06, ratio: 1.5, bore: 0.11 })).toBe(
    'an impeller of 80 mm pitch with 2 blades and in a ring of 110 mm and a nozzle of 60 mm and a ratio of 1.50',
  )
})
