import fc from 'fast-check'
import { expect, test } from 'vitest'
import type { FlatPiece, FlatPoint } from '../base/answers/madePart.ts'
import { developElbow } from './elbow.ts'
import { nest, onSheet, pieceNumbers, type StockSheet } from './nest.ts'
import { distanceTo, isInside, roundedRectangle } from './outlines.ts'
import { plate } from './plate.ts'
import { tight } from './seam.ts'

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true })
const sheet = (more: Partial<StockSheet> = {}): StockSheet => ({
  id: 'sheet',
  width: 0.8,
  height: 0.5,
  thickness: 1e-3,
  count: 2,
  ...more,
})

const star = fc.record({
  points: fc.integer({ min: 3, max: 9 }),
  size: between(0.01, 0.12),
  waist: between(0.3, 1),
  count: fc.integer({ min: 1, max: 3 }),
  grain: fc.option(between(0, 3), { nil: undefined }),
})
const starPiece = (s: typeof star extends fc.Arbitrary<infer T> ? T : never, id: string): FlatPiece =>
  plate({
    id,
    title: id,
    thickness: 1e-3,
    count: s.count,
    outline: Array.from({ length: 2 * s.points }, (_, i): FlatPoint => {
      const r = i % 2 === 0 ? s.size : s.size * s.waist
      return [r * Math.cos((Math.PI * i) / s.points), r * Math.sin((Math.PI * i) / s.points)]
    }),
    ...(s.grain === undefined ? {} : { grain: s.grain }),
  })

const outlineOn = (laid: Parameters<typeof onSheet>[0] & { piece: FlatPiece }) =>
  laid.piece.lines[0]!.points.map(onSheet(laid))

test('no two pieces come nearer than kerf and gap, all lie inside the edge, grain runs along the sheet, and none is lost', () => {
  fc.assert(
    fc.property(
      fc.array(star, { minLength: 1, maxLength: 8 }),
      between(0, 3e-3),
      between(0, 6e-3),
      between(0, 0.02),
      (stars, kerf, gap, edge) => {
        const pieces = stars.map((s, i) => starPiece(s, `p${i}`))
        const done = nest(pieces, [sheet()], { kerf, gap, edge })
        const wanted = pieces.flatMap((p) => Array.from({ length: p.count }, (_, k) => `${p.id} ${k}`))
        const got = [...done.sheets.flatMap((s) => s.laid), ...done.left].map(
          (l) => `${l.piece.id} ${l.copy}`,
        )
        expect(got.sort()).toEqual(wanted.sort())
        for (const { laid, used } of done.sheets) {
          expect(used).toBeLessThan(1)
          const outlines = laid.map(outlineOn)
          outlines.forEach((o, i) => {
            const { grain } = laid[i]!.piece
            if (grain !== undefined) expect(Math.abs(Math.sin(laid[i]!.turn + grain))).toBeLessThan(1e-9)
            for (const [x, y] of o) {
              expect(Math.min(x, y, 0.8 - x, 0.5 - y)).toBeGreaterThanOrEqual(edge - 1e-9)
              for (const other of outlines) {
                if (other === o) continue
                expect(isInside([x, y], other)).toBe(false)
                expect(distanceTo([x, y], other)).toBeGreaterThanOrEqual(kerf + gap - 1e-9)
              }
            }
          })
        }
      },
    ),
    { numRuns: 25 },
  )
})

test('what is there is used before anything is bought, the smallest first, and inside an offcut’s own outline', () => {
  const outline: FlatPoint[] = [
    [0, 0],
    [0.3, 0],
    [0, 0.3],
  ]
  const offcut = sheet({ id: 'offcut', width: 0.3, height: 0.3, count: 1, outline })
  const square = plate({
    id: 'q',
    title: 'Square',
    thickness: 1e-3,
    count: 5,
    outline: roundedRectangle(0, 0, 0.1, 0.1, 0),
  })
  const done = nest([square], [sheet({ id: 'new', width: 0.25, height: 0.12, toBuy: true }), offcut], {
    kerf: 1e-3,
    gap: 1e-3,
    edge: 2e-3,
  })
  expect(done.left).toEqual([])
  expect(done.sheets.map((s) => s.stock.id)).toEqual(['offcut', 'new', 'new'])
  expect(done.buy).toEqual({ new: 2 })
  for (const l of done.sheets[0]!.laid)
    for (const p of outlineOn(l)) {
      expect(isInside(p, outline)).toBe(true)
      expect(distanceTo(p, outline)).toBeGreaterThan(2e-3 - 1e-9)
    }
})

test('small pieces go into the holes of large ones', () => {
  const frame = plate({
    id: 'f',
    title: 'Frame',
    thickness: 1e-3,
    outline: roundedRectangle(0, 0, 0.4, 0.4, 0),
    holes: [roundedRectangle(0, 0, 0.36, 0.36, 0)],
  })
  const disc = plate({
    id: 'd',
    title: 'Disc',
    thickness: 1e-3,
    count: 4,
    outline: roundedRectangle(0, 0, 0.1, 0.1, 0.05),
  })
  const done = nest([disc, frame], [sheet({ width: 0.42, height: 0.42, count: 1 })], {
    kerf: 0,
    gap: 3e-3,
    edge: 5e-3,
  })
  expect(done.left).toEqual([])
})

test('a piece larger than every sheet is told with the sheet’s size and in how many parts it would go', () => {
  const strip = plate({
    id: 'long',
    title: 'Strip',
    thickness: 1e-3,
    outline: roundedRectangle(0, 0, 1.9, 0.1, 0),
  })
  const [lost] = nest([strip], [sheet()], { kerf: 1e-3, gap: 3e-3, edge: 5e-3 }).left
  expect(lost!.fault).toMatchObject({ field: 'pieces.long', limit: 0.79 })
  expect(lost!.fault.message).toMatch(/larger than the largest sheet/)
  expect(JSON.stringify(lost!.fault.act)).toMatch(/3 parts/)
  const thick = { ...strip, thickness: 2e-3 }
  expect(nest([thick], [sheet()], { kerf: 0, gap: 0, edge: 0 }).left[0]!.fault.message).toMatch(
    /no sheet of 2\.0 mm/,
  )
  expect(() => nest([strip], [sheet({ width: Number.NaN })], { kerf: 0, gap: 0, edge: 0 })).toThrow(
    /stock\.0\.width/,
  )
  expect(() => nest([strip], [sheet()], { kerf: -1, gap: 0, edge: 0 })).toThrow(/kerf/)
  const rules = { kerf: 0, gap: 0, edge: 0 }
  expect(() => nest([{ ...strip, count: Number.NaN }], [sheet()], rules)).toThrow(
    /pieces\.long\.count is not a number/,
  )
  const cut = strip.lines[0]!
  const torn = { ...strip, lines: [{ ...cut, points: [...cut.points, [Number.NaN, 0] as FlatPoint] }] }
  expect(() => nest([torn], [sheet()], rules)).toThrow(/pieces\.long is not a number/)
})

test('forty pieces of a pipe go on sheets, and their mass is their area’s', () => {
  const e = { startRadius: 0.03, endRadius: 0.02, bendRadius: 0.09, turn: 1.5, joints: 4 }
  const pieces = developElbow(e, { id: 'e', title: 'Elbow', thickness: 1e-3, seam: tight, count: 8 }).pieces
  const flats = pieces.map((p) => p.piece)
  const done = nest(flats, [sheet({ width: 2, height: 1, toBuy: true })], {
    kerf: 1e-3,
    gap: 3e-3,
    edge: 5e-3,
  })
  expect(done.sheets.flatMap((s) => s.laid)).toHaveLength(40)
  expect(done.buy).toEqual({ sheet: 1 })
  expect(pieceNumbers(flats[0]!, 7850).mass).toBeCloseTo(pieces[0]!.area * 1e-3 * 7850, 9)
})
