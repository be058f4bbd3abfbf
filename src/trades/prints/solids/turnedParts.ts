/** Round parts: barbs, couplings, cups, the foot of an air tube, the cord's pulley. Proportions: common practice, no source. Lengths m. */
import { defineShape, holeOffset, length, misfit, number, wanted } from './solidShape.ts'

export const hoseBarb = defineShape({
  title: 'Hose barb',
  values: {
    hose: length('Hose, inside', 6, 3, 40),
    wall: length('Wall under the barbs', 1.6, 1, 6),
    barbs: number('Barbs', 3, 1, 6),
    flange: length('Flange, across', 28, 10, 120),
    flangeThick: length('Flange, thickness', 4, 2, 12),
    bolts: number('Screws', 3, 0, 8),
    bolt: length('Screw hole', 3.4, 2, 7),
    holeOffset,
  },
  build: (b, { n }) => {
    const r = n.hose / 2
    const bore = r - n.wall
    if (bore < 0.5e-3) throw misfit(hoseBarb, 'wall', n.wall, 'closes the bore: at least 1 mm must stay open')
    // each barb stands a twelfth of the hose past it
    const tall = Math.max(0.4e-3, n.hose / 12)
    const foot = r + tall + 2e-3
    if (n.flange / 2 < foot + (n.bolts > 0 ? n.bolt + n.holeOffset + 3e-3 : 0))
      throw misfit(hoseBarb, 'flange', n.flange, 'has no room for its screws beside the hose')
    const step = Math.max(2.5e-3, 0.5 * n.hose)
    const half: [number, number][] = [
      [bore, 0],
      [n.flange / 2, 0],
      [n.flange / 2, n.flangeThick],
      [r + 1e-3, n.flangeThick],
      [r, n.flangeThick + 1e-3],
    ]
    let z = n.flangeThick + 0.6 * n.hose + 3e-3
    for (let i = 0; i < n.barbs; i++) {
      // a shoulder of 45° below, so that it prints without support, then the long slope
      half.push([r, z], [r + tall, z + tall], [r, z + tall + step])
      z += tall + step
    }
    half.push([r, z + 0.5e-3], [bore, z + 0.5e-3])
    const body = b.lathe(half)
    if (n.bolts === 0) return [{ name: 'hose barb', solid: body }]
    const at = (foot + n.flange / 2) / 2
    const hole = b.moved(b.bore((n.bolt + n.holeOffset) / 2, n.flangeThick + 2e-3, -1e-3), at, 0, 0)
    return [{ name: 'hose barb', solid: b.cut(body, b.round(hole, n.bolts)) }]
  },
})

export const shaftCoupling = defineShape({
  title: 'Coupling disc for metal sleeves',
  values: {
    across: length('Across', 80, 30, 220),
    thick: length('Thickness', 10, 5, 40),
    bore: length('Hole in the middle', 16, 0, 120),
    bolts: number('Bolts', 6, 3, 16),
    circle: length('Circle of the bolts', 58, 18, 200),
    bolt: length('Bolt', 6, 3, 16),
    sleeve: length('Sleeve, wall', 1.5, 0, 5),
    holeOffset,
  },
  build: (b, { n }) => {
    const hole = n.bolt / 2 + n.sleeve + n.holeOffset / 2
    const [inner, outer] = [n.circle / 2 - hole, n.circle / 2 + hole]
    if (outer > n.across / 2 - 3e-3)
      throw misfit(shaftCoupling, 'circle', n.circle, 'leaves less than 3 mm between sleeves and rim')
    const middle = (n.bore + n.holeOffset) / 2
    if (inner < (wanted(n.bore) ? middle : 0) + 3e-3)
      throw misfit(shaftCoupling, 'bore', n.bore, 'leaves less than 3 mm between sleeves and the middle')
    if (2 * (n.circle / 2) * Math.sin(Math.PI / n.bolts) < 2 * hole + 3e-3)
      throw misfit(shaftCoupling, 'bolt', n.bolt, 'leaves less than 3 mm between neighbouring sleeves')
    const c = Math.min(0.8e-3, n.thick / 6)
    const r = n.across / 2
    const disc = b.lathe([
      [0, 0],
      [r - c, 0],
      [r, c],
      [r, n.thick - c],
      [r - c, n.thick],
      [0, n.thick],
    ])
    const tools = [b.round(b.moved(b.bore(hole, n.thick + 2e-3, -1e-3), n.circle / 2, 0, 0), n.bolts)]
    if (wanted(n.bore)) tools.push(b.bore(middle, n.thick + 2e-3, -1e-3))
    return [{ name: 'coupling disc', solid: b.cut(disc, ...tools) }]
  },
})

export const mountCup = defineShape({
  title: 'Mount cup',
  values: {
    across: length('Rubber, across', 30, 8, 120),
    high: length('Cup, depth', 8, 2, 40),
    wall: length('Wall', 4, 2, 15),
    floor: length('Floor', 6, 3, 25),
    bolt: length('Bolt hole', 8.4, 3, 20),
    flange: length('Flange, beyond the wall', 14, 0, 60),
    bolts: number('Screws in the flange', 3, 0, 8),
    screw: length('Screw hole', 5.4, 2.5, 10),
    holeOffset,
  },
  build: (b, { n }) => {
    const r = (n.across + n.holeOffset) / 2 + 0.15e-3
    if ((n.bolt + n.holeOffset) / 2 > r - 2e-3)
      throw misfit(mountCup, 'bolt', n.bolt, 'leaves no floor for the rubber to stand on')
    const screws = wanted(n.flange) ? n.bolts : 0
    if (screws > 0 && n.flange < n.screw + n.holeOffset + 3e-3)
      throw misfit(mountCup, 'flange', n.flange, 'is too narrow for its screws')
    const out = r + n.wall
    const top = n.floor + n.high
    const body = b.lathe([
      [0, 0],
      ...(wanted(n.flange)
        ? ([
            [out + n.flange, 0],
            [out + n.flange, n.floor],
            [out, n.floor],
          ] as const)
        : ([[out, 0]] as const)),
      [out, top],
      [r + 0.5e-3, top],
      [r, top - 0.5e-3],
      [r, n.floor],
      [0, n.floor],
    ])
    const tools = [b.bore((n.bolt + n.holeOffset) / 2, n.floor + 2e-3, -1e-3)]
    if (screws > 0)
      tools.push(
        b.round(
          b.moved(b.bore((n.screw + n.holeOffset) / 2, n.floor + 2e-3, -1e-3), out + n.flange / 2, 0, 0),
          screws,
        ),
      )
    return [{ name: 'mount cup', solid: b.cut(body, ...tools) }]
  },
})

export const airFoot = defineShape({
  title: 'Foot of an air tube, with drain',
  values: {
    tube: length('Tube, outside', 50, 16, 130),
    deep: length('Tube goes in', 25, 8, 80),
    wall: length('Wall', 3, 1.6, 10),
    sump: length('Sump below the tube', 20, 8, 60),
    drain: length('Drain', 5, 2, 15),
    outlet: length('Outlet at the side', 30, 8, 100),
    flange: length('Flange, beyond the wall', 14, 8, 40),
    flangeThick: length('Flange, thickness', 4, 2, 12),
    bolts: number('Screws', 4, 3, 8),
    bolt: length('Screw hole', 4.4, 2.5, 7),
    holeOffset,
  },
  build: (b, { n }) => {
    const socket = (n.tube + n.holeOffset) / 2
    const inner = n.tube / 2 - 2e-3
    const out = socket + n.wall
    const floor = n.wall
    // the outlet lies above the sump: water that came down the tube stays below it and runs out of the drain
    const outletR = n.outlet / 2
    if (outletR > inner - 1e-3)
      throw misfit(
        airFoot,
        'outlet',
        n.outlet,
        `must be narrower than the tube's ${Math.round(2e6 * inner) / 1e3} mm`,
      )
    if (n.bolt + n.holeOffset > n.flange - 3e-3)
      throw misfit(airFoot, 'bolt', n.bolt, 'must leave 1.5 mm of flange on both sides')
    if (n.drain + n.holeOffset > n.sump - 3e-3)
      throw misfit(airFoot, 'drain', n.drain, 'must lie below the outlet: the sump is not deep enough')
    const middle = floor + n.sump + outletR
    const shoulder = middle + outletR + 2e-3
    const top = shoulder + n.deep
    const pipe = b.turned(b.rod(outletR + n.wall, out + 12e-3), 0, Math.PI / 2, 0)
    const body = b.join(
      b.rod(out + n.flange, Math.max(floor, n.flangeThick)),
      b.rod(out, top),
      b.moved(pipe, 0, 0, middle),
    )
    const tools = [
      b.bore(inner, top, floor),
      b.bore(socket, n.deep + 1e-3, shoulder),
      b.moved(b.turned(b.bore(outletR, out + 14e-3), 0, Math.PI / 2, 0), 0, 0, middle),
      // out at the other side, on the floor
      b.moved(
        b.turned(b.bore((n.drain + n.holeOffset) / 2, out + n.flange + 5e-3), 0, -Math.PI / 2, 0),
        0,
        0,
        Math.max(floor, n.flangeThick) + (n.drain + n.holeOffset) / 2,
      ),
      b.round(
        b.moved(
          b.bore((n.bolt + n.holeOffset) / 2, Math.max(floor, n.flangeThick) + 2e-3, -1e-3),
          (out + n.flange / 2) * Math.SQRT1_2,
          (out + n.flange / 2) * Math.SQRT1_2,
          0,
        ),
        n.bolts,
      ),
    ]
    return [{ name: 'air tube foot', solid: b.cut(body, ...tools) }]
  },
})

export const cordPulley = defineShape({
  title: 'Pulley for the cord, with its bracket',
  values: {
    across: length('Pulley, across the bottom of its groove', 50, 15, 150),
    cord: length('Cord', 4, 2, 10),
    axle: length('Axle', 8, 4, 16),
    bush: length('Bush round the axle, wall', 1, 0, 4),
    cheek: length('Cheeks, thickness', 5, 3, 15),
    base: length('Base, thickness', 6, 4, 20),
    bolt: length('Screw hole', 6.4, 3, 10),
    holeOffset,
  },
  build: (b, { n }) => {
    const hole = n.axle / 2 + n.bush + n.holeOffset / 2
    const r = n.across / 2
    if (hole > r - 4e-3)
      throw misfit(cordPulley, 'axle', n.axle, 'leaves less than 4 mm of the pulley round it')
    // the groove is a half round of the cord, its sides lean out by 45°
    const deep = 1.5 * n.cord
    const wide = n.cord / 2 + deep + 1.2e-3
    const rim = r + deep
    const wheel = b.cut(
      b.lathe([
        [0, 0],
        [rim, 0],
        [rim, 1.2e-3],
        [r, 1.2e-3 + deep],
        [r - 0.3 * n.cord, wide],
        [r, 2 * wide - 1.2e-3 - deep],
        [rim, 2 * wide - 1.2e-3],
        [rim, 2 * wide],
        [0, 2 * wide],
      ]),
      b.bore(hole, 2 * wide + 2e-3, -1e-3),
    )
    const gap = 2 * wide + 1e-3
    const half = gap / 2 + n.cheek
    const up = n.base + rim + 2e-3
    const cheekR = Math.max(n.axle / 2 + 6e-3, 0.5 * rim)
    const long = rim + 4 * n.bolt
    const axle = (n.axle + n.holeOffset) / 2
    // cheeks: a post with a round head, lying along y
    const head = b.moved(b.turned(b.rod(cheekR, 2 * half), Math.PI / 2, 0, 0), 0, half, up)
    const post = b.box([-cheekR, -half, 0], [cheekR, half, up])
    const room = b.box([-long, -gap / 2, n.base], [long, gap / 2, up + cheekR + 1e-3])
    const base = b.box([-long, -half, 0], [long, half, n.base])
    const pin = b.moved(b.turned(b.bore(axle, 2 * half + 4e-3), Math.PI / 2, 0, 0), 0, half + 2e-3, up)
    const screw = (x: number) => b.moved(b.bore((n.bolt + n.holeOffset) / 2, n.base + 2e-3, -1e-3), x, 0, 0)
    const at = long - 1.3 * n.bolt
    const bracket = b.cut(b.join(base, post, head), room, pin, screw(at), screw(-at))
    return [
      { name: 'pulley', solid: wheel },
      { name: 'pulley bracket', solid: b.moved(bracket, rim + long + 4e-3, 0, 0) },
    ]
  },
})
