import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { deafLimits } from '../../base/answers/limit.testkit.ts'
import { printed } from '../../base/answers/sentence.ts'
import { readCraft } from '../../craft/index.ts'
import type { Craft } from '../../craft/schema/craftSchema.ts'
import { flawsOf } from '../../physics/solid/closed.ts'
import { facetsFor } from '../../shapes/solid/kernel.ts'
import { partLimits } from './partLimits.ts'
import { printedParts } from './printedParts.ts'
import { impellerValues, pitchSet } from './printedRotor.ts'
import { printerOf } from './printerOf.ts'
import { printsAnswer } from './printsAnswer.ts'
import { printsFromCraft } from './printsFromCraft.ts'
import { makeSolid } from './solids/makeSolid.ts'
import { sectionFigure } from './solids/sectionFigure.ts'
import { gaugeThread } from './threadGauge.ts'

const demo = join(import.meta.dirname, '../../../demo')
const craftOf = (text: string): Craft => {
  const { craft } = readCraft(text)
  if (!craft) throw new Error('the demo does not read')
  return craft
}
const files = readdirSync(demo)
  .filter((f) => f.endsWith('.yaml'))
  .map((f) => [f, readFileSync(join(demo, f), 'utf8')] as const)
const neck =
  ', neck: { over crests: 27.8 mm ±0.1, span: 12.1 mm ±0.1, pitches: 8, bore: 19 mm, cap: printed } }\n'
/** the demo with a measured neck on its first tank */
const withNeck = (text: string) => text.replace(/(liquid: [\d.]+ L[^}]*?) \}\n/, `$1${neck}`)
const partsOf = (craft: Craft, known = {}, limits = partLimits) => {
  const inputs = printsFromCraft(craft)
  return printedParts(craft, { inputs, answer: printsAnswer(inputs) }, known, limits)
}
const heron = files.find(([f]) => f === 'heron.yaml')![1]

describe.each(files)('%s', (_, text) => {
  test('every part has words, a mass, times and a body that is closed and near the volume it was thought to have', async () => {
    const parts = partsOf(craftOf(text))
    expect(parts.length).toBeGreaterThan(4)
    expect(new Set(parts.map((p) => p.id)).size).toBe(parts.length)
    for (const part of parts) {
      for (const s of [part.says, ...part.steps, ...part.findings.map((f) => f.says)]) {
        expect(printed(s)).not.toMatch(/NaN|undefined|Infinity/)
        expect(printed(s).length).toBeGreaterThan(15)
      }
      const { bodies } = await makeSolid(part.solid!, { chord: 0.2e-3 })
      let volume = 0
      for (const { mesh, volume: v } of bodies) {
        expect(
          flawsOf({ points: mesh.corners, triangles: mesh.triangles }, { touching: false }),
          part.id,
        ).toEqual([])
        volume += v
      }
      const thought = part.mass! / 1000
      expect(thought / volume, `${part.id}: mass over water's`).toBeGreaterThan(0.5)
      expect(thought / volume, `${part.id}: mass over water's`).toBeLessThan(2.5)
    }
  })
})

test('a measured neck brings try-rings and then a cap of the same thread and clearance', () => {
  const parts = partsOf(craftOf(withNeck(heron)))
  const [rings, cap] = ['try-ring-1', 'cap-1'].map((id) => parts.find((p) => p.id === id)!)
  expect(parts.indexOf(rings!)).toBeLessThan(parts.indexOf(cap!))
  for (const key of ['d', 'pitch', 'clearance'])
    expect(rings!.solid!.values[key]).toBe(cap!.solid!.values[key])
  expect(cap!.solid!.values.pitch).toBeCloseTo(1.5e-3, 5)
})

test('the cap made for the measured neck goes on a neck of the tightest size, and its flanks hold', async () => {
  const craft = craftOf(heron)
  const inputs = printsFromCraft(craft)
  const { thread } = printsAnswer(inputs).necks[0]!
  const { values } = partsOf(craft).find((p) => p.id === 'cap-1')!.solid!
  const chord = 0.03e-3
  const { bodies } = await makeSolid({ shape: 'screw cap', values }, { chord })
  const pitch = thread!.pitch
  const top = values.top as number
  const facets = facetsFor(thread!.d / 2 + (values.clearance as number), chord)
  const order = {
    thread: thread!,
    side: 'internal' as const,
    from: top + pitch,
    to: top + ((values.turns as number) - 1.5) * pitch,
    facets,
  }
  const got = gaugeThread(bodies[0]!.mesh.corners, order, 0.35e-3)
  // its crest and its root, twice a turn, wherever round the axis
  expect(got.corners).toBeGreaterThan(3)
  expect(got.goes).toBe(true)
  expect(got.gap).toBeCloseTo(values.clearance as number, 4)
  expect(got.held).toBe(true)
  // a left-hand neck does not take it
  expect(gaugeThread(bodies[0]!.mesh.corners, { ...order, hand: 'left' }, 0.35e-3).goes).toBe(false)
})

test('a section shows the outline with the size of the part in the reader’s units', async () => {
  const { bodies } = await makeSolid({ shape: 'screw cap', values: {} }, { chord: 0.1e-3 })
  const sheet = sectionFigure(bodies[0]!, { width: 120, system: 'metric' })
  expect(sheet.marks.filter((m) => m.kind === 'polygon' && m.layer === 'cut').length).toBeGreaterThan(0)
  const wide = bodies[0]!.high[0] - bodies[0]!.low[0]
  expect(sheet.says).toContain(`${(1e3 * wide).toFixed(1)} mm wide`)
  expect(sectionFigure(bodies[0]!, { width: 120, system: 'inch' }).says).toContain(' in wide')
  for (const m of sheet.marks)
    if (m.kind === 'polygon') for (const v of m.points) expect(v).toBeGreaterThan(-1)
})

test('a fuel cap of what petrol attacks is stopped, of PETG watched, of nylon left alone', () => {
  const standing = (material: string) => {
    const craft = craftOf(withNeck(heron))
    const printer = { ...printerOf(craft), material: material as 'PETG' }
    const inputs = { ...printsFromCraft(craft), printer }
    return printedParts(craft, { inputs, answer: printsAnswer(inputs) })
      .find((p) => p.id === 'cap-1')!
      .findings.find((f) => f.id.endsWith('petrol'))?.standing
  }
  expect(['ABS', 'PETG', 'PA12'].map(standing)).toEqual(['stop', 'watch', undefined])
})

test('the set of impellers spans the doubt of the pitch, the middle first, and differs in nothing else', () => {
  const craft = craftOf(heron)
  const set = partsOf(craft, { pitch: { value: 0.108, low: 0.1, high: 0.115 } }).filter((p) =>
    p.id.startsWith('impeller'),
  )
  expect(set.map((p) => p.solid!.values.pitch)).toEqual([0.108, 0.1, 0.115])
  const { pitch: _, pitchOut: __, ...rest } = set[0]!.solid!.values
  for (const p of set) expect(p.solid!.values).toMatchObject(rest)
  fc.assert(
    fc.property(
      fc.double({ min: 0.03, max: 0.5, noNaN: true }),
      fc.double({ min: 0, max: 0.3, noNaN: true }),
      fc.double({ min: 0, max: 0.3, noNaN: true }),
      (value, down, up) => {
        const pitches = pitchSet({ value, low: value * (1 - down), high: value * (1 + up) })
        expect(pitches.length).toBe(down + up < 0.04 ? 2 : 3)
        expect(Math.min(...pitches)).toBeLessThan(pitches[0]! - 1e-4)
        if (pitches.length === 3) expect(Math.max(...pitches)).toBeGreaterThan(pitches[0]! + 1e-4)
      },
    ),
  )
})

test('a metal impeller is not printed', () => {
  const craft = craftOf(heron.replace('material: PETG', 'material: bronze'))
  expect(partsOf(craft).filter((p) => /impeller|stator/.test(p.id))).toEqual([])
})

test('another bore, clearance or hole offset makes another part, and another name does not', () => {
  const textOf = (text: string, id: string) => partsOf(craftOf(text)).find((p) => p.id === id)!.madeFrom
  expect(textOf(heron, 'impeller-1')).not.toBe(
    textOf(heron.replace('bore: 120.0 mm', 'bore: 121.0 mm'), 'impeller-1'),
  )
  expect(textOf(heron, 'impeller-1')).toBe(textOf(heron.replace(/^name: .*$/m, 'name: other'), 'impeller-1'))
})

test('the impeller made has the thickness, gap and edges that the file has, whatever they are', () => {
  const craft = craftOf(heron.replace('trailing edge: 1.5 mm', 'trailing edge: 2.1 mm'))
  const { rotor } = craft.jet
  expect(impellerValues(craft, printerOf(craft), rotor.pitch.value)).toMatchObject({
    ring: rotor.bore.value,
    gap: rotor.gap.value,
    trailing: rotor.trailingEdge.value,
    nose: rotor.leadingEdgeRadius.value,
    root: rotor.rootThickness.value,
    wrap: rotor.wrap.value,
    pitchOut: rotor.trailingPitch.value,
  })
})

test('every limit of printed parts can be heard', () => {
  const craft = craftOf(withNeck(heron.replace(/^deck:/m, 'mounts: { number: 4, mass: 12 kg }\n\ndeck:')))
  const lying = craftOf(
    heron
      .replace(
        /- \{ kind: box, name: fuel tank[^\n]*/,
        '- { kind: lying cylinder, name: fuel tank, holds: petrol and oil, foot: [1.45 m, 0 m, 0.09 m], diameter: 200 mm, length: 300 mm }',
      )
      .replace('clear: 300 mm (measured), shut: clamped lid', 'clear: 180 mm (measured), shut: screw lid'),
  )
  expect(
    deafLimits(partLimits, [
      (l) => partsOf(craft, {}, l as typeof partLimits).flatMap((p) => p.findings),
      (l) => partsOf(lying, {}, l as typeof partLimits).flatMap((p) => p.findings),
    ]),
  ).toEqual([])
})

test('fillets of a fine pitch shrink to what goes between the blades; roots that meet are told, and nothing is ordered', async () => {
  const fine = craftOf(heron.replace('pitch: 108 mm ±3 (measured)', 'pitch: 56 mm ±3 (measured)'))
  const usual = impellerValues(craftOf(heron), printerOf(craftOf(heron)), 0.108).fillet!
  const values = impellerValues(fine, printerOf(fine), 0.056)
  expect(values.fillet!).toBeLessThan(usual)
  const { bodies } = await makeSolid({ shape: 'impeller', values }, { chord: 0.3e-3 })
  expect(bodies).toHaveLength(1)
  const thick = craftOf(
    heron
      .replace('pitch: 108 mm ±3 (measured)', 'pitch: 40 mm ±1 (measured)')
      .replace('root thickness: 9 mm', 'root thickness: 14 mm')
      .replace('blades: 3', 'blades: 4'),
  )
  const part = partsOf(thick).find((p) => p.id === 'impeller-1')!
  expect(part.solid).toBeUndefined()
  expect(part.findings.map((f) => printed(f.says)).join(' ')).toMatch(/cannot be made: roots of 14.0 mm meet/)
})
