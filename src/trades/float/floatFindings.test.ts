import { readFileSync } from 'node:fs'
import { resolve } from 'node:path'
import { describe, expect, test } from 'vitest'
import type { Finding } from '../../base/answers/finding.ts'
import { type Craft, readCraft } from '../../craft/index.ts'
import { importHull } from '../../hull/mesh/importMesh.ts'
import { meshChoices } from '../../hull/mesh/namedMesh.ts'
import { boxMesh } from '../../physics/solid/primitives.ts'
import { openingsAtRest } from './atRest.ts'
import { floatSaid } from './float.testkit.ts'
import { floatFromCraft } from './floatFromCraft.ts'

const floatFindings = (craft: Craft) => floatSaid(craft)

const demo = (name: string) =>
  readFileSync(resolve(import.meta.dirname, `../../../demo/${name}.yaml`), 'utf8')
const craftOf = (text: string) => {
  const r = readCraft(text)
  expect(r.problems.filter((p) => p.severity === 'error')).toEqual([])
  return r.craft!
}
const heron = craftOf(demo('heron'))
const find = (list: readonly Finding[], id: string) => list.find((f) => f.id === id)!

describe('float findings', () => {
  for (const name of ['heron', 'teal'])
    test(`${name} gives a sentence, a number and a reason for each question, and promises nothing`, () => {
      const list = floatFindings(craftOf(demo(name)))
      const ids = list.map((f) => f.id)
      for (const id of [
        'float.draft',
        'float.stability',
        'float.room',
        'float.swamped',
        'float.foam',
        'float.leak',
        'float.guidance',
      ])
        expect(ids).toContain(id)
      expect(new Set(ids).size).toBe(ids.length)
      for (const f of list) {
        expect(f.question).toBe('float')
        expect(f.says, f.id).toMatch(/\.$|\?$/)
        expect(f.says).not.toMatch(/NaN|Infinity|undefined/)
        expect([f.says, ...f.because.map((b) => b.says)].join(' ')).not.toMatch(
          /\b(is safe|complies|compliant)\b/i,
        )
        expect(f.because.length, f.id).toBeGreaterThan(0)
        expect(f.sources.length, f.id).toBeGreaterThan(0)
        if (f.low !== undefined) expect(f.low, f.id).toBeLessThanOrEqual(f.value! + 1e-9)
        if (f.high !== undefined) expect(f.high, f.id).toBeGreaterThanOrEqual(f.value! - 1e-9)
      }
    })
  test('a craft too heavy for its hull is said to sink, and by how much', () => {
    const heavy = craftOf(demo('heron').replace('mass: 34 kg ±1.5 (measured)', 'mass: 434 kg (measured)'))
    const list = floatFindings(heavy)
    expect(list[0]!.standing).toBe('stop')
    expect(list[0]!.says).toMatch(/It sinks: \d+ kg all told is \d+ kg more/)
  })
  test('an air intake moved under water is a stop', () => {
    const low = craftOf(demo('heron').replace('[1.02 m, 0.12 m, 0.44 m]', '[1.02 m, 0.12 m, 0.03 m]'))
    const f = floatFindings(low).find((x) => /^Carburettor intake/.test(x.says))!
    expect(f.standing).toBe('stop')
    expect(f.says).toMatch(/under water at rest/)
  })
  test('without foam listed it would sink swamped, which is not known until the foam is listed, and litres are asked for', () => {
    const text = demo('heron').replace(/\nfoam:[\s\S]*?\n\ncompartments/, '\ncompartments')
    const list = floatFindings(craftOf(text))
    expect(find(list, 'float.swamped')).toMatchObject({
      standing: 'unknown',
      says: expect.stringContaining('No foam'),
    })
    // a little foam listed is a list, and too little of it is a stop
    const little = text.replace(
      '\ncompartments',
      '\nfoam:\n  - { name: nose, from: [1.9 m, -0.1 m, 0.1 m], to: [2.0 m, 0.1 m, 0.2 m], foam: XPS 25 }\n\ncompartments',
    )
    expect(find(floatFindings(craftOf(little)), 'float.swamped').standing).toBe('stop')
    expect(find(list, 'float.foam').value!).toBeGreaterThan(0.08)
    expect(find(list, 'float.foam').says).toMatch(/\d+ L/)
  })
  test('a craft without weights, openings or foam is answered with what is not known', () => {
    const bare = craftOf(demo('heron').replace(/\nweights:[\s\S]*$/, '\n'))
    const list = floatFindings(bare)
    expect(find(list, 'float.draft').standing).toBe('unknown')
    expect(find(list, 'float.openings').standing).toBe('unknown')
  })
  test('a mesh handed in is used in place of the few numbers', () => {
    const { input } = floatFromCraft(heron, boxMesh([0, -0.4, 0], [2.4, 0.4, 0.3]))
    expect(input.hull.volume).toBeCloseTo(0.576, 9)
    const named = { ...heron, hull: { ...heron.hull, mesh: 'hull.stl' } }
    expect(floatFromCraft(named).input.hull.flags[0]?.text).toMatch(/hull.stl was not at hand/)
  })
  test('the file’s mesh is read in the unit the craft names', () => {
    const box = boxMesh([0, -400, 0], [2400, 400, 300])
    const bytes = new Uint8Array(84 + 50 * 12)
    const view = new DataView(bytes.buffer)
    view.setUint32(80, 12, true)
    for (let i = 0; i < 36; i++)
      for (let k = 0; k < 3; k++)
        view.setFloat32(
          84 + 50 * Math.floor(i / 3) + 12 + 12 * (i % 3) + 4 * k,
          box.points[3 * box.triangles[i]! + k]!,
          true,
        )
    const { mesh } = importHull(bytes, meshChoices(heron))
    const { input } = floatFromCraft(heron, mesh)
    expect(input.hull.length).toBeCloseTo(2.4, 9)
  })
  test('half sections from the craft file are lofted', () => {
    const points = '{ at: X m, points: [[0 mm, 0 mm], [340 mm, 30 mm], [400 mm, 240 mm], [0 mm, 240 mm]] }'
    const stations = [0, 1.2, 2.4].map((x) => `    - ${points.replace('X', String(x))}`).join('\n')
    const craft = craftOf(
      demo('heron').replace('  tail width: 0.92 # of the widest chine beam', `  stations:\n${stations}`),
    )
    const { input } = floatFromCraft(craft)
    expect(input.hull.volume).toBeCloseTo(2.4 * (0.34 * 0.03 + 0.74 * 0.21), 6)
  })
})

test('openingsAtRest gives the heights the findings show, without the rest of the answer', () => {
  const { input } = floatFromCraft(heron)
  const heights = openingsAtRest(input)
  const shown = floatFindings(heron).filter((f) => /^float\.opening\.\d+$/.test(f.id))
  expect(shown.length).toBeGreaterThan(2)
  for (const f of shown) expect(heights[Number(f.id.split('.')[2])]).toBeCloseTo(f.value!, 9)
})

describe('ill input is told in a builder’s words', () => {
  const asked = (text: string) => floatFindings(craftOf(text)).map((f) => f.says)

  test('too heavy: it sinks, by how much, how much with nobody aboard, and what is heaviest', () => {
    const heavy = craftOf(demo('heron').replace('mass: 34 kg ±1.5 (measured)', 'mass: 400 kg'))
    const sinks = find(floatFindings(heavy), 'float.sinks')
    expect(sinks.standing).toBe('stop')
    expect(sinks.says).toMatch(
      /^It sinks: 508 kg all told is 18\d kg more than the whole hull can displace\.$/,
    )
    const because = sinks.because.map((b) => b.says).join('\n')
    expect(because).toMatch(/\d+ kg too much even with nobody aboard/)
    expect(because).toMatch(/heaviest: hull and deck 400 kg, engine and pipe 14 kg/)
    expect(because).toMatch(/the hull, taken from a few measures, encloses 32\d L/)
  })

  test('things outside the hull are asked about, each with its place', () => {
    const heron = demo('heron')
    expect(
      asked(heron.replace('at: [1.50 m, 0.05 m, 0.40 m]', 'at: [3.5 m, 0.05 m, 0.40 m]')).join('\n'),
    ).toMatch(
      /The opening "tank vent" is placed at 3\.50 m forward, 0\.05 m to port, 0\.40 m up: outside the hull/,
    )
    expect(asked(heron.replace('foot: [1.45 m, 0 m', 'foot: [1.45 m, 0.35 m')).join('\n')).toMatch(
      /\d+ % of fuel tank lies outside the hull/,
    )
    expect(
      asked(
        heron.replace(
          'from: [1.72 m, -0.32 m, 0.03 m], to: [2.34 m',
          'from: [3 m, -0.32 m, 0.03 m], to: [3.4 m',
        ),
      ).join('\n'),
    ).toMatch(/The foam "bow block" lies wholly outside the hull, so none of it counts/)
    expect(asked(heron.replace('from: 1.25 m, to: 2.40 m', 'from: 1.25 m, to: 4.40 m')).join('\n')).toMatch(
      /The compartment "fore bay" reaches to 4\.40 m, past the nose at 2\.40 m/,
    )
  })

  test('a weight far forward: no depth below nought is told, but what it does', () => {
    const nose = craftOf(
      demo('heron').replace('mass: 34 kg ±1.5 (measured), at: [1.12 m', 'mass: 34 kg, at: [2.9 m'),
    )
    const draft = floatFindings(nose).find((f) => f.id === 'float.draft')!
    expect(draft.says).toMatch(/the lowest deck edge \d.* under water/)
    expect([draft.says, ...draft.because.map((b) => b.says)].join('\n')).not.toMatch(/-\d/)
  })
})

test('a low deck under a tall standing rider: balanced like a bicycle, no room to the side, and a leak that rolls it over is no good news', () => {
  const text = `wakewright: 1
name: low
rider: { mass: 85 kg, height: 1.8 m, stance: standing, position: 1.0 m }
engines: [{ name: motor, kind: peak, displacement: 80 cm³, power: 6 kW, power at: 6000 rpm }]
jet: { rotor: { bore: 110 mm, pitch: 100 mm }, nozzle: { bore: 60 mm } }
hull: { length: 2.2 m, beam: 0.65 m, depth: 0.16 m }
`
  const found = floatFindings(readCraft(text).craft!)
  const of = (id: string) => found.find((f) => f.id === id)!
  expect(of('float.stability').says).toMatch(
    /^Standing, you balance it like a bicycle: held stiff it finds no level rest, with the weight on the deck it stands \(GM \d+ cm\)/,
  )
  expect(of('float.stability')).toMatchObject({ standing: 'watch' })
  expect(of('float.stability').value).toBeUndefined()
  expect(of('float.room')).toMatchObject({
    says: expect.stringMatching(/and less than 5\.0 cm off the middle/),
    standing: 'watch',
  })
  expect(of('float.leak')).toMatchObject({
    says: expect.stringMatching(/rolls over after/),
    standing: 'watch',
  })
})
