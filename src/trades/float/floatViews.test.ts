import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { expectGolden } from '../../drawing/golden.testkit.ts'
import { textWidth } from '../../drawing/textWidth.ts'
import { settle } from '../../hull/afloat/settle.ts'
import { makeFrame } from '../../physics/solid/waterFrame.ts'
import { riderEnvelope } from './envelope.ts'
import { afloat, deg, sled } from './float.testkit.ts'
import { endView, sideView } from './floatViews.ts'
import { joinedRuns, outline } from './outline.ts'
import { roomEdges, roomFigure } from './roomFigure.ts'

const rest = settle(afloat(sled.mesh, 142, [0.9, 0.02, 0.25])).value
const view = {
  hull: sled,
  attitude: rest,
  centre: [0.9, 0.02, 0.25] as const,
  openings: [
    { name: 'intake', kind: 'air intake' as const, at: [1.2, 0, 0.42] as const, area: 0 },
    { name: 'outlet', kind: 'exhaust outlet' as const, at: [0, 0.2, 0.08] as const, area: 0 },
  ],
  rider: { x: 0.9, y: 0.02, deck: 0.24, stature: 1.76, stance: 'kneeling' as const },
}

const angle = (most: number) => fc.double({ min: -most * deg, max: most * deg, noNaN: true })

describe('true views', () => {
  test('the side view', () => expectGolden(sideView(view), import.meta.dirname, 'side-view'))
  test('the view from astern', () => expectGolden(endView(view), import.meta.dirname, 'end-view'))
  test('what is tried over what is now: two hulls on one water, both drafts, trims and heels in figures', () => {
    const before = { hull: sled, attitude: { ...rest, h: rest.h + 0.02, trim: 0.03, heel: 0.05 } }
    const both = sideView({ ...view, before })
    expectGolden(both, import.meta.dirname, 'side-view-tried')
    expectGolden(endView({ ...view, before }), import.meta.dirname, 'end-view-tried')
    const words = both.marks.flatMap((m) => (m.kind === 'text' ? [m.text] : []))
    expect(words.filter((w) => /^now [\d.]+ cm$/.test(w)).length).toBe(2)
    expect(words).toContain('now 1.7° bow up')
    expect(words.some((w) => /^tried .*bow/.test(w))).toBe(true)
    const heels = endView({ ...view, before }).marks.flatMap((m) => (m.kind === 'text' ? [m.text] : []))
    expect(heels).toContain('now 2.9° down to port')
    const hulls = (s: typeof both) => s.marks.filter((m) => m.kind === 'polyline' && m.name === 'hull').length
    expect(hulls(both)).toBeGreaterThan(hulls(sideView(view)))
  })
  test('while a drag goes on no view changes its height, wherever the rider goes, so that nothing below moves or is cut off', () => {
    const before = { hull: sled, attitude: rest }
    const openings = ['carburettor intake', 'exhaust outlet', 'tank vent', 'throttle cable'].map(
      (name, i) => ({
        name,
        kind: 'cable' as const,
        at: [0.5 * i, 0, 0.1 + 0.1 * i] as const,
        area: 0,
      }),
    )
    fc.assert(
      fc.property(
        fc.constantFrom(62, 94, 130, 160),
        fc.boolean(),
        fc.array(
          fc.record({ trim: angle(12), heel: angle(40), x: fc.double({ min: 0.1, max: 2.3, noNaN: true }) }),
          {
            minLength: 1,
            maxLength: 5,
          },
        ),
        (width, tried, places) => {
          const still = { ...view, openings, width, ...(tried ? { before } : {}) }
          const steady = { rest: still, frames: {} }
          for (const draw of [sideView, endView]) {
            const { height } = draw(still)
            for (const { trim, heel, x } of places) {
              const rider = { ...view.rider, x }
              const moved = { ...still, before, rider, attitude: { ...rest, trim, heel }, steady }
              const sheet = draw(moved)
              expect(sheet.height).toBeCloseTo(height, 9)
              // and the key’s words stay within the picture
              for (const m of sheet.marks)
                if (m.kind === 'text' && /^\d [a-z]/.test(m.text))
                  expect(m.x + textWidth(m.text, m.size, true)).toBeLessThan(width)
            }
          }
        },
      ),
      { numRuns: 40 },
    )
  })
  test('every opening is numbered in the picture and spelled out once below it, at any width', () => {
    for (const width of [94, 180]) {
      const words = sideView({ ...view, width }).marks.flatMap((m) => (m.kind === 'text' ? [m.text] : []))
      for (const [i, o] of view.openings.entries()) {
        expect(words.filter((w) => w === `${i + 1}`).length).toBe(1)
        expect(words.filter((w) => w.startsWith(`${i + 1} ${o.name} `)).length).toBe(1)
      }
    }
  })
  test('say trim and heel in words', () => {
    expect(sideView(view).says).toMatch(/° bow (up|down)/)
    expect(endView(view).says).toMatch(/down to port/)
    expect(endView({ ...view, attitude: { ...rest, heel: 0 } }).says).toMatch(/upright/)
  })
  test('are to scale: the hull is as long on the sheet as its length in the chosen scale, at any attitude', () => {
    for (const trim of [-5, 0, 4]) {
      const f = makeFrame(trim * deg, 0)
      const pieces = outline(sled.mesh, 'side', f, 0.1)
      let low = Infinity
      let high = -Infinity
      for (let i = 0; i < pieces.length; i += 2) {
        low = Math.min(low, pieces[i]!)
        high = Math.max(high, pieces[i]!)
      }
      let wantLow = Infinity
      let wantHigh = -Infinity
      for (let i = 0; i < sled.mesh.points.length; i += 3) {
        const p =
          f.e1x * sled.mesh.points[i]! + f.e1y * sled.mesh.points[i + 1]! + f.e1z * sled.mesh.points[i + 2]!
        wantLow = Math.min(wantLow, p)
        wantHigh = Math.max(wantHigh, p)
      }
      expect(low).toBeCloseTo(wantLow, 12)
      expect(high).toBeCloseTo(wantHigh, 12)
    }
  })
  test('joining pieces loses none and adds none', () => {
    const pieces = outline(sled.mesh, 'top', makeFrame(), 0)
    const runs = joinedRuns(pieces)
    const count = runs.reduce((n, r) => n + r.length / 2 - 1, 0)
    expect(count).toBe(pieces.length / 4)
  })
  test('the rider’s room is drawn over the deck', () => {
    const e = riderEnvelope({
      hull: sled,
      craft: {
        bodies: [{ name: 'h', mesh: sled.mesh, share: 1 }],
        mass: 64,
        centre: [1, 0, 0.13],
        density: 1000,
      },
      rider: 75,
      riderHeight: 0,
      grid: 0.1,
    })
    const s = roomFigure(sled, e, { x: 1, y: 0 })
    expect(s.marks.filter((m) => m.layer === 'fill').length).toBe(e.inside.filter((v) => v !== 2).length)
    expect(s.says).toMatch(/% of the deck/)
    // the outline of a room has a border wherever a place within stands beside one that is not
    const n = e.y.length
    const at = (i: number, j: number) => (e.inside[i * n + j] === 1 && j >= 0 && j < n ? 1 : 0)
    let borders = 0
    for (let i = 0; i <= e.x.length; i++)
      for (let j = 0; j <= n; j++)
        borders += Math.abs(at(i, j) - at(i, j - 1)) + Math.abs(at(i, j) - at(i - 1, j))
    const long = roomEdges(e).reduce((sum, [x0, y0, x1, y1]) => sum + Math.hypot(x1 - x0, y1 - y0), 0)
    expect(long).toBeCloseTo(0.1 * borders, 9)
    const both = roomFigure(sled, e, undefined, 180, { hull: sled, room: e })
    expect(both.says).toMatch(/tried .*now .*dashed/)
    expect(both.marks.length).toBeGreaterThan(s.marks.length)
  })
})
