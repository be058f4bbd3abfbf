import { expect, test } from 'vitest'
import { expectGolden } from '../../drawing/golden.testkit.ts'
import type { Sheet } from '../../drawing/sheet.ts'
import { madeUpCurve } from '../../trades/engine/curve.testkit.ts'
import { referenceEngine } from '../../trades/engine/engineReference.ts'
import { portFigures } from '../../trades/engine/portFigures.ts'
import { simulatedLine } from '../../trades/engine/torqueLine.ts'
import type { MufflerBox } from '../../trades/exhaust/muffler.ts'
import { inchLook, metricLook } from '../push/shown.ts'
import { madeUpPipe, madeUpStingers, madeUpTrace } from './breath.testkit.ts'
import { curveFigure } from './curveFigures.ts'
import { portFigure, portMoments, turnOrder } from './cycleFigures.ts'
import { mufflerFigure } from './mufflerFigures.ts'
import { pipeFigure, tunedEnd } from './pipeFigure.ts'
import { portsFigure } from './portsFigure.ts'
import { stingerFigure } from './stingerFigures.ts'
import { envelopeFigure, waveFigure } from './waveFigures.ts'

const air = 101300
const now = simulatedLine('front', madeUpCurve(), 1)
const other = simulatedLine('front, tried', madeUpCurve(8000), 1)
const found = simulatedLine('found', madeUpCurve(8500), 1)
const pipe = madeUpPipe()
const box: MufflerBox = {
  length: 0.2,
  area: 0.00785,
  inletBore: 0.02,
  outletBore: 0.024,
  inletReach: 0,
  outletReach: 0,
  packing: 0,
  resistivity: 15000,
}
const ports = portFigures(referenceEngine(), 9000)
const rows = madeUpStingers()
const words = (s: Sheet) => s.marks.flatMap((m) => (m.kind === 'text' ? [m.text] : []))
const names = (s: Sheet) => (s.plots?.[0]?.series ?? []).map((l) => l.name)

const muffler = { box, temperature: 900, simulated: true, air, rpm: 9000 }

test('the figures of the page look as they did, wide and narrow', () => {
  for (const [name, look] of [
    ['wide', { ...metricLook, width: 240 }],
    ['narrow', { ...metricLook, width: 94 }],
  ] as const) {
    const keep = (sheet: Sheet, figure: string) =>
      expectGolden(sheet, `${import.meta.dirname}/golden`, `${figure}-${name}`)
    keep(curveFigure({ what: 'torque', lines: [now], tried: other }, look), 'torque')
    const used = { from: 7500, to: 8500, label: 'used on the water' }
    keep(curveFigure({ what: 'power', lines: [now, found], used }, look), 'found')
    keep(portFigure(madeUpTrace(), madeUpTrace(8), air, look), 'port')
    keep(waveFigure(madeUpTrace(), pipe.segments, air, look), 'waves')
    keep(envelopeFigure(madeUpTrace(), pipe.segments, air, look), 'envelope')
    keep(pipeFigure(pipe, { name: 'tried', pipe: madeUpPipe(1.06) }, look), 'pipe')
    keep(portsFigure(ports, undefined, 9000, look), 'ports')
    keep(mufflerFigure({ ...muffler, tried: { ...box, length: 0.3 } }, look), 'muffler')
    keep(stingerFigure({ rows, now: rows[4]!, best: rows[3]! }, look), 'stinger')
  }
})

test('every text of the pipe stays on the sheet, on a phone too', () => {
  for (const width of [84, 94, 140, 240]) {
    const sheet = pipeFigure(pipe, undefined, { ...metricLook, width })
    for (const m of sheet.marks)
      if (m.kind === 'text') {
        expect(m.x).toBeGreaterThan(-1)
        expect(m.x).toBeLessThan(width + 1)
        expect(m.y).toBeGreaterThan(0)
        expect(m.y).toBeLessThan(sheet.height)
      }
  }
})

test('the pipe is to scale: its outline is as long against its width as the pipe is', () => {
  const sheet = pipeFigure({ segments: pipe.segments }, undefined, { ...metricLook, width: 240 })
  const points = sheet.marks.flatMap((m) => (m.kind === 'polygon' && m.layer === 'data' ? [...m.points] : []))
  const xs = points.filter((_, i) => i % 2 === 0)
  const ys = points.filter((_, i) => i % 2 === 1)
  const [long, wide] = [Math.max(...xs) - Math.min(...xs), Math.max(...ys) - Math.min(...ys)]
  const total = pipe.segments.reduce((s, p) => s + p.length, 0)
  expect(long / wide).toBeCloseTo(total / 0.08, 9)
})

test('the tuned length ends where the last cone narrows to its end, and a plain tube has none', () => {
  expect(tunedEnd(pipe)).toBeCloseTo(0.04 + 0.09 + 0.25 + 0.16 + 0.1 + 0.22, 12)
  expect(tunedEnd({ segments: [{ length: 1, d0: 0.03, d1: 0.03 }] })).toBeUndefined()
})

test('a turn is shown from top to top, each sample once', () => {
  const order = turnOrder(madeUpTrace())
  expect(new Set(order).size).toBe(360)
  const deg = order.map((i) => ((madeUpTrace().angle[i]! * 180) / Math.PI) % 360)
  deg.slice(1).forEach((d, i) => {
    expect(d).toBeGreaterThan(deg[i]!)
  })
})

test('suction is looked for while the transfers are open, the echo after they close', () => {
  const { suction, plug } = portMoments(madeUpTrace())
  expect(suction!.angle).toBeGreaterThan(185)
  expect(suction!.angle).toBeLessThan(195)
  expect(plug!.angle).toBeGreaterThan(248)
  expect(plug!.angle).toBeLessThan(256)
})

test('the port figure marks the timing and says what the pipe does', () => {
  const sheet = portFigure(madeUpTrace(), undefined, air, { ...metricLook, width: 240 })
  for (const w of ['burnt gas leaves', 'transfers open', 'pushed back']) expect(words(sheet)).toContain(w)
  expect(sheet.says).toMatch(/draws −0\.4\d bar at 19\d°/)
  expect(names(sheet)).toEqual(['exhaust port', 'crankcase', 'cylinder'])
})

test('without a turn or a curve the figures say that it is being worked out', () => {
  const text = (s: Sheet) => words(s).join(' ')
  expect(text(portFigure(undefined, undefined, air, metricLook))).toContain('Following the waves')
  expect(text(waveFigure(undefined, [], air, metricLook))).toContain('Following the waves')
  expect(text(curveFigure({ what: 'torque', lines: [], rough: true }, metricLook))).toContain('first curve')
})

test('a tried curve is dashed and has its own peak in words', () => {
  const sheet = curveFigure({ what: 'power', lines: [now], tried: other }, { ...metricLook, width: 240 })
  expect(sheet.plots![0]!.series.map((s) => s.tried)).toEqual([false, true])
  expect(words(sheet).some((w) => w.startsWith('tried: '))).toBe(true)
  expect(sheet.says).toMatch(/front [\d.]+ kW at \d+ rpm; front, tried [\d.]+ kW at \d+ rpm/)
})

test('inches go through: the pipe and the waves are labelled in inches', () => {
  expect(words(pipeFigure(pipe, undefined, inchLook)).some((w) => w.endsWith(' in'))).toBe(true)
  expect(waveFigure(madeUpTrace(), pipe.segments, air, inchLook).plots![0]!.x.unit).toBe('in')
})

test('the muffler figure names firing frequency and harmonics with what is taken off there', () => {
  const sheet = mufflerFigure(muffler, { ...metricLook, width: 240 })
  expect(words(sheet)).toContain('firing')
  expect(sheet.says).toMatch(/\d+ dB at 150 Hz, \d+ dB at 300 Hz/)
})

test('the stinger figure says bore by bore what it does and how risky it is', () => {
  const sheet = stingerFigure({ rows, now: rows[4]!, best: rows[3]! }, metricLook)
  expect(sheet.says).toContain('16.0 mm: 520 N, 677 °C, stop')
  expect(sheet.says).toContain('Now 20.0 mm; best 19.0 mm.')
})
