import { readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { printed } from '../../base/answers/sentence.ts'
import { readCraft, whatIf } from '../../craft/index.ts'
import { boundsOf } from '../../drawing/flatSheet.ts'
import { deckHeight } from '../../hull/lines/hullBody.ts'
import { hullMeshFromCraft } from '../../hull/mesh/hullFromCraft.ts'
import { deckAsksOf } from './deckAsks.ts'
import { handsOn, massOf, partsOfCraft } from './partsOfCraft.ts'

const heronText = readFileSync('demo/heron.yaml', 'utf8')
const craftOf = (text: string) => readCraft(text).craft!
const heron = craftOf(heronText)
const tankOf = (sheet: string, kind = '') =>
  partsOfCraft(
    craftOf(
      heronText
        .replace('height: 136 mm, liquid', `height: 136 mm, sheet: ${sheet}, liquid`)
        .replace(/^ {2}- \{ kind: box, name: fuel tank.*$/m, (line) => kind || line),
    ),
  ).find((p) => p.id === 'tank-1')

describe('holes, frames and the skin', () => {
  const asks = deckAsksOf(heron)
  test('a hole under a lid wants half the cut section back on each side', () => {
    const [one] = asks.doublers
    const bay = heron.deck.bays[one!.bay]!
    expect(bay.name).toMatch(/lid/)
    expect(one!.wide * bay.skin.value).toBeCloseTo((bay.skin.value * bay.width.value) / 2, 12)
    expect(one!.corner).toBeCloseTo(0.125 * Math.min(bay.length.value, bay.width.value), 12)
  })
  test('a frame has the section of the hull where it stands; a bay on foam has none', () => {
    const [frame] = asks.frames
    expect(heron.deck.bays[frame!.bay]!.kind).not.toBe('foam')
    const { mesh } = hullMeshFromCraft(heron)
    const top = frame!.section.at(-1)!
    expect(frame!.section[0]![0]).toBe(0)
    expect(top[0]).toBe(0)
    expect(top[1]).toBeCloseTo(deckHeight(mesh, frame!.x, 0)!, 3)
    expect(asks.frames.every((f) => heron.deck.bays[f.bay]!.kind !== 'foam')).toBe(true)
  })
  test('the skin lies on the deck, and counts in no sum', () => {
    const { mesh } = hullMeshFromCraft(heron)
    for (const row of asks.skin!)
      for (const [x, y, z] of row) expect(z).toBeCloseTo(deckHeight(mesh, x, y)!, 9)
    const parts = partsOfCraft(heron)
    const skin = parts.find((p) => p.id === 'deck-skin')!
    expect(skin.instead).toBe(true)
    expect(massOf(parts)).toBeCloseTo(
      parts.filter((p) => p !== skin).reduce((sum, p) => sum + (p.mass ?? 0), 0),
      12,
    )
    expect(handsOn([skin]).high).toBeGreaterThan(0)
    const flats = skin.flats!()
    const wide = flats.reduce((sum, piece) => {
      const { bottom, top } = boundsOf([{ piece }])
      return sum + top - bottom
    }, 0)
    // laid flat it is as wide as the deck or more
    expect(wide).toBeGreaterThan(0.95 * heron.hull.beam.value)
  })
  test('a hull whose measures close to none has doublers and no more', () => {
    const odd = whatIf(heron, { 'hull.chine beam': 1.9, 'hull.beam': 0.4 })
    expect(deckAsksOf(odd).doublers.length).toBe(1)
  })
})

describe('a tank to be welded', () => {
  test('is made where the file gives its sheet, and left out where one has it', () => {
    expect(partsOfCraft(heron).some((p) => p.id === 'tank-1')).toBe(false)
    const part = tankOf('1.5 mm')!
    expect(printed(part.says)).toMatch(/236 mm by 256 mm by 136 mm inside, of sheet 1.5 mm/)
    expect(part.findings).toEqual([])
    expect(part.flats!().map((f) => f.id)).toEqual(['tank-1-body', 'tank-1-end', 'tank-1-neck'])
    expect(part.flats!()[1]!.count).toBe(2)
  })
  test('its body wraps round the inside size of the file, and its ends go into it', () => {
    const [body, end] = tankOf('1.5 mm')!.flats!()
    const size = (piece: typeof body) => {
      const { left, right, bottom, top } = boundsOf([{ piece: piece! }])
      return [right - left, top - bottom].sort((a, b) => b - a) as [number, number]
    }
    // round the middle of the sheet: less than round its outside, more than round its inside
    const [round, along] = size(body)
    expect(along).toBeCloseTo(0.236, 3)
    expect(round).toBeGreaterThan(2 * (0.256 + 0.136) - 8 * 3.5e-3)
    expect(round).toBeLessThan(2 * (0.259 + 0.139))
    const [wide, high] = size(end)
    expect(wide).toBeGreaterThan(0.256)
    expect(high).toBeGreaterThan(0.136)
    expect(wide).toBeLessThan(0.256 + 2 * 13e-3)
  })
  test('a round one is a tube with dished ends', () => {
    const lying =
      '  - { kind: lying cylinder, name: fuel tank, holds: petrol and oil, foot: [1.45 m, 0 m, 0.09 m], diameter: 200 mm, length: 300 mm, sheet: 2 mm }'
    const part = tankOf('2 mm', lying)!
    const [body] = part.flats!()
    const { left, right, bottom, top } = boundsOf([{ piece: body! }])
    expect(Math.max(right - left, top - bottom)).toBeCloseTo(Math.PI * 0.202, 3)
    expect(part.steps.map((s) => printed(s)).join(' ')).toMatch(/leak test/)
  })
  test('sheet too thick to fold so small is told by its field, and nothing is cut', () => {
    const part = tankOf(
      '8 mm',
      '  - { kind: box, name: fuel tank, foot: [1.45 m, 0 m, 0.09 m], length: 236 mm, width: 256 mm, height: 21 mm, sheet: 8 mm }',
    )!
    expect(part.findings.length).toBe(1)
    expect(part.flats).toBeUndefined()
    expect(part.findings[0]!.because[0]!.link).toMatch(/^tanks\.0\./)
  })
})
