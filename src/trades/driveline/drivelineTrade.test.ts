import { expect, test } from 'vitest'
import { deafLimits } from '../../base/answers/limit.testkit.ts'
import type { LimitTable } from '../../base/answers/limit.ts'
import { printed } from '../../base/answers/sentence.ts'
import { inLine, metal, nylon, setting, solved } from './chains.testkit.ts'
import { drivelineTrade } from './drivelineTrade.ts'
import { driveSettingOf } from './driveSetting.ts'
import { opensFirst } from './opensFirst.ts'

const findingsOf = (s: ReturnType<typeof solved>) =>
  new Map(drivelineTrade.judge(s, drivelineTrade.limits).map((f) => [f.id, f] as const))

const soft = 'mounts: { mass: 9 kg, across: 20 mm, height: 30 mm, hardness: 40 }\n'

test('every limit, moved, changes a verdict', () => {
  const all = [
    solved(inLine(metal)),
    solved(inLine(nylon)),
    solved(inLine(metal.replace('20 N·m ±1', '34 N·m ±1'))),
    solved(inLine(`${metal}, into: metal, engagement: 6 mm`)),
    solved(inLine(`${nylon}, into: plastic, engagement: 10 mm`)),
    solved(
      inLine(`${metal}, element: rubber`, ', thrust: ball bearing, length: 900 mm, overhang: 200 mm'),
      soft,
    ),
    solved(inLine(metal, ', thrust: ball bearing'), soft),
    solved(inLine(nylon.replace('printed nylon', 'PLA'))),
  ]
  const judgements = all.map((s) => (limits: LimitTable) => drivelineTrade.judge(s, limits))
  expect(deafLimits(drivelineTrade.limits, judgements)).toEqual([])
})

test('six M8 in steel hold through a season; the same chain in printed nylon by four M5 does not', () => {
  const good = findingsOf(solved(inLine(metal)))
  expect(good.get('driveline.joint.0')!.standing).toBe('good')
  expect(good.get('driveline.joint.0')!.low!).toBeGreaterThan(1)
  expect(findingsOf(solved(inLine(nylon))).get('driveline.joint.0')!.standing).toBe('stop')
})

test('margins do not depend on what stands beside them: parts are weakest first and each keeps its place in the chain', () => {
  const { answer } = solved(inLine(nylon))
  const margins = answer!.parts.map((p) => p.margin.value)
  expect(margins).toEqual([...margins].sort((a, b) => a - b))
  expect(answer!.inOrder.map((p) => p.letter).join('')).toBe('abcde')
  expect(answer!.inOrder.reduce((sum, p) => sum + p.first, 0)).toBeCloseTo(1, 9)
})

test('the chain behind both engines carries the mean of both, the coupling between them half of it', () => {
  const { answer } = solved(inLine(metal))
  const [between, behind] = answer!.inOrder
  expect(behind!.mean / between!.mean).toBeCloseTo(2, 6)
  for (const p of answer!.inOrder) expect(p.peak.low).toBeGreaterThan(p.mean * 0.8)
})

test('a chain by rubber has its own frequency lower than the same bolted face to face', () => {
  const stiff = solved(inLine(metal)).answer!.frequency
  const gives = solved(inLine(`${metal}, element: rubber`)).answer!.frequency
  expect(gives.value).toBeLessThan(stiff.value)
  expect(gives.low).toBeLessThan(gives.value)
})

test('an opening between the engines leaves the rear one driving at the handed root, one behind both leaves none', () => {
  const { inputs, answer } = solved(inLine(nylon))
  const opened = opensFirst(inputs.chain!, answer!, setting)
  const between = opened.find((o) => o.path === 'shaft.1')!
  expect(between).toMatchObject({
    where: 'between the engines',
    free: [0],
    driving: [1],
    races: 172,
    drives: setting.alone,
  })
  const behind = opened.find((o) => o.path === 'shaft.3')!
  expect(behind).toMatchObject({ where: 'towards the jet', free: [0, 1], driving: [], races: 172 })
  expect(behind.drives).toBeUndefined()
  expect(opened[0]!.share).toBeGreaterThanOrEqual(opened[1]!.share)
})

test('without a handed root no speed is told of the engine that drives on', () => {
  const { alone: _, ...bare } = setting
  const { inputs, answer } = solved(inLine(nylon), '', bare)
  expect(opensFirst(inputs.chain!, answer!, bare).find((o) => o.path === 'shaft.1')!.drives).toBeUndefined()
})

test('a simulated peak pressure takes the place of the fitted one', () => {
  const rotation = [50, 200]
  const low = solved(inLine(metal), '', {
    ...setting,
    peaks: new Map([[0, { rotation, pressure: [3e6, 3e6] }]]),
  })
  expect(low.answer!.peaks).toMatchObject({ simulated: true, pressure: 3e6 })
  expect(solved(inLine(metal)).answer!.peaks.simulated).toBe(false)
})

test('thrust that nobody takes is not known, thrust on the crankshaft is to watch, on a bearing it has a life', () => {
  const thrust = (word: string) =>
    findingsOf(solved(inLine(metal, `, thrust: ${word}`))).get('driveline.thrust')!
  expect(thrust('nobody knows').standing).toBe('unknown')
  expect(thrust('engine').standing).toBe('watch')
  expect(printed(thrust('angular contact').says)).toMatch(/hours/)
  expect(thrust('angular contact').value!).toBeGreaterThan(thrust('ball bearing').value!)
})

test('rubber under each engine against couplings bolted face to face is to watch; on one frame it is not asked', () => {
  const each = findingsOf(solved(inLine(metal), soft)).get('driveline.line')!
  expect(each.standing).toBe('watch')
  expect(each.changes).toEqual([{ path: 'mounts.under', from: 'each engine', to: 'one frame' }])
  const frame = findingsOf(solved(inLine(metal), soft.replace('mass:', 'under: one frame, mass:')))
  expect(frame.get('driveline.line')).toBeUndefined()
})

test('without torque curves it says so once and shows no number', () => {
  const { inputs } = solved(inLine(metal))
  const found = drivelineTrade.judge(
    { inputs: { ...inputs, setting: undefined }, answer: undefined },
    drivelineTrade.limits,
  )
  expect(found.map((f) => [f.id, f.standing, f.value])).toEqual([
    ['driveline.no-torque', 'unknown', undefined],
  ])
})

test('the setting of a balance is the same object as long as the balance is', () => {
  const at = { rotation: 118, engineTorque: 10, thrust: 600 }
  const balance = { tiedUp: at, matching: { rotation: [20, 172] } }
  expect(driveSettingOf(balance)).toBe(driveSettingOf(balance))
  expect(driveSettingOf(balance).states).toHaveLength(1)
  expect(driveSettingOf(balance, new Map())).not.toBe(driveSettingOf({ ...balance }))
})

test('the drawing names every part by its letter with its margin, at any width, and says so without a shaft', () => {
  const figure = drivelineTrade.figures![0]!
  const now = solved(inLine(nylon))
  for (const width of [90, 180]) {
    const sheet = figure.draw(now, undefined, { width, system: 'metric' })
    const words = sheet.marks.flatMap((m) => (m.kind === 'text' ? [m.text] : []))
    for (const p of now.answer!.inOrder) expect(words.some((w) => w.startsWith(`${p.letter}  `))).toBe(true)
    for (const m of sheet.marks)
      if (m.kind === 'polygon')
        for (let i = 0; i < m.points.length; i += 2) {
          expect(m.points[i]!).toBeGreaterThanOrEqual(0)
          expect(m.points[i]!).toBeLessThanOrEqual(width)
        }
  }
  const none = { inputs: { ...now.inputs, chain: undefined }, answer: undefined }
  expect(figure.draw(none, undefined, { width: 90, system: 'metric' }).says).toMatch(/names no shaft/)
})

test('what is tried stands beside what is', () => {
  const figure = drivelineTrade.figures![0]!
  const sheet = figure.draw(solved(inLine(nylon)), solved(inLine(metal)), { width: 180, system: 'inch' })
  expect(sheet.marks.some((m) => m.kind === 'text' && /^a {2}[\d.]+ → [\d.]+$/.test(m.text))).toBe(true)
  expect(sheet.marks.some((m) => m.kind === 'text' && / mm$/.test(m.text))).toBe(false)
})

test('tables hold a line for each part and each moment of a joint', () => {
  const tables = drivelineTrade.numbers!(solved(inLine(nylon)))
  expect(tables.map((t) => t.rows.length)).toEqual([5, 8, 7])
})
