import { expect, test } from 'vitest'
import { inWords } from '../../base/answers/printFinding.ts'
import { type EngineView, twoStrokeAnswer, twoStrokeFindings } from './engineFindings.ts'
import { sweptVolume } from './geometry.ts'
import { simulateCurve } from './simulate.ts'
import { speedsToRun, tunedLength, tunedSpeed, usualRedline } from './speeds.ts'
import { craftWith, sportEngine } from './twoStroke.testkit.ts'
import { twoStrokeFromCraft } from './twoStrokeFromCraft.ts'

const degree = Math.PI / 180
const read = (engines = sportEngine) => twoStrokeFromCraft(craftWith(engines), 0)

test('a two-stroke of the craft file becomes a spec in SI without faults', () => {
  const { spec, faults, cylinders, class: kind } = read()
  expect(faults).toEqual([])
  expect(cylinders).toBe(1)
  expect(kind).toBe('sport')
  expect(sweptVolume(spec!.crank) * 1e6).toBeCloseTo(99.35, 1)
  expect(spec!.exhaust.opens).toBeCloseTo(94 * degree, 9)
  expect(spec!.exhaust.width).toBeCloseTo(0.03, 9)
  expect(spec!.inlet.kind).toBe('reed')
  expect(spec!.transfers.inertance).toBe(true)
  expect(spec!.outlet).toMatchObject({ kind: 'box', bore: 0.024 })
  // duct, five cones, stinger; the box ends the pipe
  expect(spec!.pipe).toHaveLength(7)
  expect(spec!.pipe[2]!.bend).toBeCloseTo(60 * degree, 9)
})

test('without a muffler the pipe ends open, longer by the end correction', () => {
  const bare = sportEngine.replace(/ {6}muffler:.*\n/, '').replace(/ {6}outlet:.*\n/, '')
  const { spec } = read(bare)
  expect(spec!.outlet.kind).toBe('open')
  expect(spec!.pipe.at(-1)!.length).toBeCloseTo(0.6133 * 0.01, 6)
})

test('an engine without an exhaust says what it lacks', () => {
  const text = sportEngine.slice(0, sportEngine.indexOf('    exhaust:\n'))
  const r = read(text)
  expect(r.spec).toBeUndefined()
  expect(r.missing).toMatch(/pipe/)
  const view = {
    at: 'engines.0',
    name: 'engine',
    class: r.class,
    cylinders: 1,
    faults: r.faults,
    missing: r.missing!,
  }
  expect(twoStrokeAnswer(view)).toMatchObject({ standing: 'unknown' })
})

test('a wheel reading that contradicts the height is a stop finding that names the field', () => {
  const r = read(
    sportEngine.replace('opens: 94 deg (measured)', 'opens: 94 deg (measured), height: 24 mm (measured)'),
  )
  expect(r.faults[0]!.path).toBe('engines.0.ports.exhaust.opens')
  expect(r.faults[0]!.says).toMatch(/agree within 1.5°/)
  const f = twoStrokeFindings({ at: 'engines.0', name: 'engine', ...r })
  expect(f[0]).toMatchObject({ standing: 'stop', question: 'breath' })
  expect(f[0]!.because[0]!.link).toBe('engines.0.ports.exhaust.opens')
})

test('a box smaller than the cylinder is named by its craft path', () => {
  const r = read(
    sportEngine.replace(
      'muffler: { length: 200 mm, width: 100 mm }',
      'muffler: { length: 50 mm, width: 40 mm }',
    ),
  )
  expect(r.faults.map((f) => f.path)).toContain('engines.0.exhaust.muffler')
})

test('the tuned length ends with the last narrowing cone, and speeds run from idle to redline, closest round it', () => {
  const { spec, span } = read()
  expect(tunedLength(spec!.pipe)).toBeCloseTo(0.04 + 0.82, 9)
  expect(tunedLength([{ length: 1, d0: 0.03, d1: 0.03 }])).toBeUndefined()
  for (const coarse of [false, true]) {
    const rpms = speedsToRun(spec!, span, coarse)
    expect(rpms[0]).toBeCloseTo(60 * span.idle, -1)
    expect(rpms.at(-1)).toBe(11000)
    expect([...new Set(rpms)].sort((a, b) => a - b)).toEqual(rpms)
    const peak = tunedSpeed(spec!)!
    const near = rpms.filter((n) => Math.abs(n / peak - 1) < 0.2)
    expect(near.length).toBeGreaterThanOrEqual(coarse ? 3 : 5)
    expect(rpms.length).toBeLessThanOrEqual(coarse ? 10 : 17)
  }
})

test('a redline that nobody gave follows stroke and kind, and the curve reaches it', () => {
  const { spec, span } = read(sportEngine.replace('    redline: 11000 rpm\n', ''))
  expect(span.redline).toBeCloseTo(usualRedline(0.0506, 'sport'), 9)
  expect(2 * 0.0506 * span.redline).toBeCloseTo(18, 9)
  expect(usualRedline(0.0506, 'utility')).toBeLessThan(usualRedline(0.0506, 'race'))
  expect(speedsToRun(spec!, span).at(-1)! / (60 * span.redline)).toBeCloseTo(1, 2)
})

test('findings say the curve with a range, how far to trust it, and which port holds it back', () => {
  const r = read()
  const curve = simulateCurve(r.spec!, [8500, 9000, 9500], { dx: 0.03 })
  const view = {
    at: 'engines.0',
    name: 'engine',
    class: r.class,
    cylinders: 1,
    faults: r.faults,
    spec: r.spec!,
    curve,
  }
  const out = inWords(twoStrokeFindings(view))
  const ids = out.map((f) => f.id)
  expect(new Set(ids).size).toBe(ids.length)
  const [main] = inWords([twoStrokeAnswer(view)])
  if (!main) throw new Error('no answer')
  // what it gives is said once, as the answer
  expect(out.every((f) => !/ gives /.test(f.says))).toBe(true)
  expect(main.low).toBeLessThan(main.value!)
  expect(main.high).toBeGreaterThan(main.value!)
  expect(main.says).toMatch(/kW \([\d.]+ to [\d.]+ kW\) at .* N·m \([\d.]+ to [\d.]+ N·m\) at 9\d{3} rpm/)
  const trust = out.find((f) => f.id === 'breath.engines.0.trust')!
  expect(trust.says).toMatch(/3 of 3 speeds settled/)
  expect(trust.because.map((b) => b.says).join()).toMatch(/left out/)
  const ports = out.find((f) => f.id === 'breath.engines.0.ports')!
  expect(ports.because.map((b) => b.says).join()).toMatch(/exhaust: time-area/)
  for (const f of out) expect(f.question).toBe('breath')
})

test('a curve in which nothing settled is unknown, not a number', () => {
  const r = read()
  const curve = simulateCurve(r.spec!, [9000], { dx: 0.03, cycles: 3 })
  const view: EngineView = {
    at: 'engines.0',
    name: 'engine',
    class: 'sport',
    cylinders: 1,
    faults: [],
    spec: r.spec!,
    curve,
  }
  const answer = twoStrokeAnswer(view)
  expect([answer.id, answer.standing, answer.value]).toEqual([
    'breath.engines.0.unknown',
    'unknown',
    undefined,
  ])
  expect(twoStrokeFindings(view).some((f) => f.id.endsWith('.trust'))).toBe(false)
})
