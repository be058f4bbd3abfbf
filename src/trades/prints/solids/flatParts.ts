/** Brackets, frames, jigs and the gauge of a printer. Proportions: common practice, no source. Lengths m. */
import type { Rings } from '../../../shapes/solid/kernel.ts'
import { gaugeDrawn } from '../fitPieces.ts'
import { angle, defineShape, holeOffset, length, misfit, number } from './solidShape.ts'

export const engineBracket = defineShape({
  title: 'Engine bracket',
  values: {
    foot: length('Foot, length', 60, 25, 200),
    wide: length('Width', 50, 20, 200),
    high: length('Upright, height', 55, 20, 200),
    thick: length('Thickness', 8, 4, 25),
    gusset: length('Gussets, thickness', 6, 3, 20),
    bolt: length('Bolt hole in the upright', 8.4, 4, 14),
    screw: length('Screw hole in the foot', 6.4, 3, 12),
    holeOffset,
  },
  build: (b, { n }) => {
    const edge = Math.max(n.bolt, n.screw) + n.holeOffset + 3e-3
    if (n.wide - 2 * n.gusset < 2 * edge)
      throw misfit(
        engineBracket,
        'wide',
        n.wide,
        'has no room for two holes side by side between the gussets',
      )
    if (n.foot - n.thick < 1.5 * edge)
      throw misfit(engineBracket, 'foot', n.foot, 'is too short for its holes')
    if (n.high - n.thick < 1.5 * edge) throw misfit(engineBracket, 'high', n.high, 'is too low for its holes')
    const h = n.wide / 2
    const tri: Rings = [
      [
        [0, 0],
        [n.foot, 0],
        [n.foot, n.thick],
        [n.thick, n.high],
        [0, n.high],
      ],
    ]
    // pulled up along z, then laid over so that the upright stands: x stays, y becomes up
    const side = b.turned(b.pulled(tri, n.gusset), Math.PI / 2, 0, 0)
    const body = b.join(
      b.box([0, -h, 0], [n.foot, h, n.thick]),
      b.box([0, -h, 0], [n.thick, h, n.high]),
      b.moved(side, 0, -h + n.gusset, 0),
      b.moved(side, 0, h, 0),
    )
    const y = (n.wide - 2 * n.gusset) / 4
    const low = (r: number, x: number, at: number) => b.moved(b.bore(r, n.thick + 2e-3, -1e-3), x, at, 0)
    const across = (r: number, z: number, at: number) =>
      b.moved(b.turned(b.bore(r, n.thick + 2e-3, -1e-3), 0, Math.PI / 2, 0), 0, at, z)
    const s = (n.screw + n.holeOffset) / 2
    const t = (n.bolt + n.holeOffset) / 2
    const x = (n.thick + n.foot) / 2
    const z = (n.thick + n.high) / 2
    const solid = b.cut(body, low(s, x, y), low(s, x, -y), across(t, z, y), across(t, z, -y))
    // printed on its side: layers then run along the L, not across its corner
    return [{ name: 'engine bracket', solid: b.moved(b.turned(solid, Math.PI / 2, 0, 0), 0, 0, h) }]
  },
})

export const tankBracket = defineShape({
  title: 'Tank cradle with strap slots',
  values: {
    across: length('Tank, across where it lies', 160, 50, 500),
    wide: length('Width', 40, 20, 120),
    floor: length('Thickness under the tank', 8, 5, 30),
    arc: angle('Angle the cradle reaches round', 80, 20, 150),
    strap: length('Strap', 25, 10, 60),
    strapThick: length('Slot', 4, 2, 8),
    bolt: length('Screw hole', 6.4, 3, 10),
    holeOffset,
  },
  build: (b, { n }) => {
    if (n.strap > n.wide - 6e-3)
      throw misfit(tankBracket, 'strap', n.strap, 'must leave 3 mm on both sides of it')
    const r = n.across / 2
    const reach = r * Math.sin(n.arc / 2)
    const rise = r * (1 - Math.cos(n.arc / 2))
    const ear = 2 * n.bolt + 8e-3
    const x = reach + ear + n.strapThick
    const high = n.floor + rise
    const h = n.wide / 2
    const body = b.join(
      b.box([-reach - n.strapThick - 4e-3, -h, 0], [reach + n.strapThick + 4e-3, h, high]),
      b.box([-x - 6e-3, -h, 0], [x + 6e-3, h, n.floor]),
    )
    const tank = b.moved(b.turned(b.bore(r, n.wide + 4e-3), Math.PI / 2, 0, 0), 0, h + 2e-3, n.floor + r)
    const slot = (at: number) =>
      b.box([at - n.strapThick / 2, -n.strap / 2, -1e-3], [at + n.strapThick / 2, n.strap / 2, high + 1e-3])
    const screw = (at: number) =>
      b.moved(b.bore((n.bolt + n.holeOffset) / 2, n.floor + 2e-3, -1e-3), at, 0, 0)
    const s = reach + n.strapThick / 2 + 1e-3
    const solid = b.cut(body, tank, slot(s), slot(-s), screw(x - n.bolt / 2), screw(-x + n.bolt / 2))
    return [{ name: 'tank cradle', solid }]
  },
})

export const flapFrame = defineShape({
  title: 'Frame of a flap',
  values: {
    wide: length('Opening, width', 60, 15, 250),
    high: length('Opening, height', 40, 15, 250),
    border: length('Border', 14, 9, 50),
    thick: length('Thickness', 6, 3, 20),
    seat: length('Seat the flap lies on', 3, 1.5, 8),
    pin: length('Hinge pin', 2, 1, 4),
    bolt: length('Screw hole', 4.4, 2.5, 7),
    holeOffset,
  },
  build: (b, { n }) => {
    if (n.bolt + n.holeOffset > n.border - 3e-3)
      throw misfit(flapFrame, 'bolt', n.bolt, 'must leave 1.5 mm of border on both sides')
    const [w, h] = [n.wide / 2, n.high / 2]
    const [W, H] = [w + n.border, h + n.border]
    const lug = Math.max(5e-3, n.pin + n.holeOffset + 3e-3)
    const body = b.box([-W, -H, 0], [W, H, n.thick])
    // a raised lip round the opening keeps the flap off the border's water
    const lip = b.box([-w - n.seat, -h - n.seat, 0], [w + n.seat, h + n.seat, n.thick + 2e-3])
    const top = h + n.seat + lug / 2
    const lugs = [-1, 1].map((s) => {
      const x = s * (w - lug / 4)
      return b.box([x - lug / 2, top - lug / 2, 0], [x + lug / 2, top + lug / 2, n.thick + lug + 2e-3])
    })
    const pin = b.moved(
      b.turned(b.bore((n.pin + n.holeOffset) / 2, 2 * W + 4e-3), 0, Math.PI / 2, 0),
      -W - 2e-3,
      top,
      n.thick + 2e-3 + lug / 2,
    )
    const [sx, sy] = [W - n.border / 2, H - n.border / 2]
    const screws = [
      [sx, sy],
      [-sx, sy],
      [sx, -sy],
      [-sx, -sy],
    ].map(([x, y]) => b.moved(b.bore((n.bolt + n.holeOffset) / 2, n.thick + 2e-3, -1e-3), x!, y!, 0))
    const hole = b.box([-w, -h, -1e-3], [w, h, n.thick + 5e-3])
    return [{ name: 'flap frame', solid: b.cut(b.join(body, lip, ...lugs), hole, pin, ...screws) }]
  },
})

export const drillJig = defineShape({
  title: 'Drill jig for a row of holes',
  values: {
    drill: length('Drill', 4.9, 1, 13),
    pitch: length('Pitch of the holes', 28, 8, 80),
    holes: number('Holes', 5, 1, 12),
    edge: length('From the sheet’s edge', 12, 4, 60),
    thick: length('Thickness', 10, 5, 30),
    fence: length('Fence, depth below', 6, 2, 20),
    holeOffset,
  },
  build: (b, { n }) => {
    const r = (n.drill + n.holeOffset) / 2
    if (2 * r > n.pitch - 3e-3)
      throw misfit(drillJig, 'drill', n.drill, 'leaves less than 3 mm between two holes')
    if (r > n.edge - 1.5e-3) throw misfit(drillJig, 'drill', n.drill, 'reaches past the edge of the sheet')
    const long = n.pitch * (n.holes - 1) + Math.max(16e-3, 4 * r)
    const wide = n.edge + r + 8e-3
    // printed upside down: the fence stands up
    const body = b.join(
      b.box([-long / 2, 0, 0], [long / 2, wide, n.thick]),
      b.box([-long / 2, -5e-3, 0], [long / 2, 0, n.thick + n.fence]),
    )
    const tools = Array.from({ length: n.holes }, (_, i) =>
      b.moved(b.bore(r, n.thick + 2e-3, -1e-3), n.pitch * (i - (n.holes - 1) / 2), n.edge, 0),
    )
    return [{ name: 'drill jig', solid: b.cut(body, ...tools) }]
  },
})

export const printerGauge = defineShape({
  title: 'Gauge for the printer',
  values: { long: length('Across its bars', 1e3 * gaugeDrawn.bars, 40, 120) },
  build: (b, { n }) => {
    const { wide, height, hole } = gaugeDrawn
    const L = n.long / 2
    const bar = 4e-3
    const plate = b.box([-L, -wide / 2, 0], [L, wide / 2, height / 2])
    const ends = [-1, 1].map((s) =>
      b.box(
        [Math.min(s * L, s * (L - bar)), -wide / 2, 0],
        [Math.max(s * L, s * (L - bar)), wide / 2, height],
      ),
    )
    // as drawn: the hole is there to show how small it comes out
    return [
      { name: 'printer gauge', solid: b.cut(b.join(plate, ...ends), b.bore(hole / 2, height + 2e-3, -1e-3)) },
    ]
  },
})
