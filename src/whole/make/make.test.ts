import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { readCraft } from '../../craft/index.ts'
import { handsOn, partsOfCraft, stateOf } from './partsOfCraft.ts'
import { partSheet, patternFile, stacked } from './patternFiles.ts'

const craftOf = (name: string) => readCraft(readFileSync(`demo/${name}.yaml`, 'utf8'), name).craft!

describe('the parts of a craft', () => {
  it('are those of its pipe, muffler, flanges and deck; without an exhaust only the deck', () => {
    const ids = partsOfCraft(craftOf('dabchick')).map((p) => p.id)
    for (const id of ['pipe-1-1', 'muffler-1', 'flange-1', 'outlet-flange-1', 'deck-1'])
      expect(ids).toContain(id)
    const heron = partsOfCraft(craftOf('heron')).filter((p) => p.how === 'sheet')
    expect(heron.length).toBeGreaterThan(0)
    for (const part of heron) expect(part.id).toMatch(/^(deck|doubler|frame)-/)
  })

  it('keep their text while nothing of theirs changes, and get another when it does', () => {
    const text = readFileSync('demo/dabchick.yaml', 'utf8')
    const made = (of: string) =>
      new Map(partsOfCraft(readCraft(of, 'x').craft!).map((p) => [p.id, p.madeFrom]))
    const [was, now] = [
      made(text),
      made(text.replace('name: belly, length: 95 mm', 'name: belly, length: 96 mm')),
    ]
    const changed = [...was].filter(([id, from]) => now.get(id) !== from).map(([id]) => id)
    expect(changed).toEqual(['pipe-1-4'])
  })

  it('take hours that add up', () => {
    const parts = partsOfCraft(craftOf('dabchick'))
    const sum = parts
      .filter((p) => !p.instead)
      .map((p) => handsOn([p]).high)
      .reduce((a, b) => a + b, 0)
    expect(handsOn(parts).high).toBeCloseTo(sum, 6)
  })
})

describe('the state of a part', () => {
  const part = { id: 'deck-1', madeFrom: '500 200 1.5' }
  const made = (at: string, madeFrom: string, id = 'deck-1') => ({ at, part: id, madeFrom })

  it('is not made until the log says so of this very part', () => {
    expect(stateOf(part, [])).toBe('not made')
    expect(stateOf(part, [made('2026-05-01', part.madeFrom, 'deck-2')])).toBe('not made')
    expect(stateOf(part, [made('2026-05-01', part.madeFrom)])).toBe('made')
  })

  it('goes by the newest entry: values that changed since, and made anew', () => {
    const old = made('2026-05-01', '480 200 1.5')
    expect(stateOf(part, [old])).toBe('changed since made')
    expect(stateOf(part, [made('2026-06-01', part.madeFrom), old])).toBe('made')
    // of one day the later one counts
    expect(stateOf(part, [old, made('2026-05-01', part.madeFrom)])).toBe('made')
  })
})

describe('the files of a part', () => {
  const elbow = partsOfCraft(craftOf('dabchick')).find((p) => p.id === 'pipe-1-1')!

  it('hold its pieces one above the other, none over another', () => {
    const tops = stacked(elbow.flats!()).map(({ piece, laid }) => {
      const ys = piece.lines.flatMap((l) => l.points.map((p) => laid!(p)[1]))
      return [Math.min(...ys), Math.max(...ys)] as const
    })
    expect(tops.length).toBeGreaterThan(1)
    tops.slice(1).forEach(([low], i) => {
      expect(low).toBeGreaterThan(tops[i]![1])
    })
  })

  it('are a PDF, an SVG as large as the drawing and a DXF; none for a part that cannot be drawn', async () => {
    const text = async (format: 'pdf' | 'svg' | 'dxf') =>
      new TextDecoder('latin1').decode(await patternFile(elbow, format, { paper: 'A4' }))
    expect(await text('pdf')).toMatch(/^%PDF-/)
    const sheet = partSheet(elbow)!
    const width = /width="([\d.]+)mm"/.exec(await text('svg'))?.[1]
    expect(Number(width)).toBeCloseTo(sheet.width, 1)
    expect(await text('dxf')).toMatch(/EOF\s*$/)
    const { flats, ...none } = elbow
    expect(await patternFile(none, 'svg', { paper: 'A4' })).toBeUndefined()
  })
})
