import { expect, test } from 'vitest'
import { deafLimits } from '../../base/answers/limit.testkit.ts'
import { type EngineView, twoStrokeFindings } from './engineFindings.ts'
import { type EngineLimits, engineLimits } from './engineLimits.ts'
import type { TwoStrokeSpec } from './engineSpec.ts'
import type { CyclePoint } from './point.ts'
import { type CurveResult, type PointResult, simulateCurve } from './simulate.ts'
import { craftWith, sportEngine } from './twoStroke.testkit.ts'
import { twoStrokeFromCraft } from './twoStrokeFromCraft.ts'

const reading = twoStrokeFromCraft(craftWith(sportEngine), 0)
const spec = reading.spec!
const curve = simulateCurve(spec, [8500, 9000, 9500], { dx: 0.03 })

/** The engine with its points, or its own measures, spoilt. */
function spoilt(
  point: (p: CyclePoint) => Partial<CyclePoint> = () => ({}),
  result: Partial<PointResult> = {},
  own: Partial<TwoStrokeSpec> = {},
): EngineView {
  const points = curve.points.map((r) => ({ ...r, ...result, point: { ...r.point!, ...point(r.point!) } }))
  return view({ ...curve, points }, { ...spec, ...own })
}
const view = (c: CurveResult, s: TwoStrokeSpec): EngineView => ({
  at: 'engines.0',
  name: 'engine',
  class: reading.class,
  cylinders: 1,
  faults: [],
  spec: s,
  curve: c,
})

const books = (change: Partial<CyclePoint['books']>) => (p: CyclePoint) => ({
  books: { ...p.books, ...change },
})
const even = { mass: 0, energy: 0, ledger: 0, fresh: 0 }
const sound = books(even)
/** the books of one of three speeds do not close */
const oneOff: EngineView = (() => {
  const whole = spoilt(sound)
  const points = whole.curve!.points.map((r, i) =>
    i === 0 ? { ...r, point: { ...r.point!, books: { ...r.point!.books, mass: 0.2 } } } : r,
  )
  return { ...whole, curve: { ...whole.curve!, points } }
})()

const views: EngineView[] = [
  spoilt(sound),
  ...(['mass', 'energy', 'ledger', 'fresh'] as const).map((key) => spoilt(books({ ...even, [key]: 0.04 }))),
  spoilt(sound, { residual: 0.015 }),
  oneOff,
  spoilt((p) => ({ ...sound(p), backflow: 0.2 })),
  spoilt((p) => ({ ...sound(p), scavenging: 0.4 })),
  spoilt((p) => ({ ...sound(p), exhaustT: 1050 })),
  spoilt((p) => ({ ...sound(p), endGasT: 950, pMax: 50e5 })),
  spoilt(sound, {}, { clearance: spec.clearance * 0.7 }),
  spoilt((p) => ({ ...sound(p), rpm: 13_000 })),
  spoilt(sound, {}, { inlet: { ...spec.inlet, frequency: 150 } as TwoStrokeSpec['inlet'] }),
]

test('every limit, moved, changes what is said of some engine', () => {
  const judgements = views.map((v) => (limits: EngineLimits) => twoStrokeFindings(v, limits))
  // an engine faster than any says more of it in the same sentence: it is judged by its words
  const words = (limits: EngineLimits) =>
    twoStrokeFindings(views.at(-2)!, limits).map((f) => ({ ...f, id: `${f.id} ${JSON.stringify(f.says)}` }))
  expect(deafLimits(engineLimits as EngineLimits, [...judgements, words])).toEqual([])
})
