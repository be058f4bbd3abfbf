/** Pieces that screw: caps, hatches, glands, try-pieces. The section of a thread comes from the threads themselves. Lengths m, angles rad. */
import { facetsFor, type Solid, type Workbench } from '../../../shapes/solid/kernel.ts'
import { threadSweep } from '../../../shapes/solid/threadSweep.ts'
import { ownThread, type Thread } from '../threadForms.ts'
import { type ThreadSide, type TurnProfile, threadProfile } from '../threadProfile.ts'
import {
  angle,
  defineShape,
  holeOffset,
  length,
  misfit,
  number,
  type ValueRange,
  wanted,
} from './solidShape.ts'

/** Values that tell a thread: of any standard, or of one's own. */
const threadValues = {
  d: length('Thread, across the crests of its outside half', 27, 6, 300),
  d2: length('Pitch diameter', 26.026, 5, 300),
  d1: length('Across the crests of its inside half', 25.376, 4, 300),
  pitch: length('Pitch', 1.5, 0.5, 12),
  half: angle('Flank, from the plane across', 30, 10, 60),
  clearance: length('Clearance, on the radius', 0.2, 0, 1),
  line: length('Width of a laid line', 0.45, 0.02, 1.8),
}
type ThreadGiven = Record<keyof typeof threadValues, number>

/** Values of a thread as an order carries them. */
export const threadOrder = ({ d, d2, d1, pitch, half }: Thread): Record<string, number> => ({
  d,
  d2,
  d1,
  pitch,
  half,
})

function profileOf(n: ThreadGiven, side: ThreadSide): TurnProfile {
  if (!(n.d > n.d2 && n.d2 > n.d1)) throw misfit(undefined, 'd2', n.d2, 'must lie between d1 and d')
  const profile = threadProfile({ ...n, form: 'own', name: 'own' } as Thread, side, {
    clearance: n.clearance,
    crestFlat: n.line,
  })
  const { z } = profile
  if (!(z[0]! > 0 && z[1]! > z[0]! && z[2]! > z[1]! && z[3]! > z[2]! && z[3]! < n.pitch))
    throw misfit(undefined, 'pitch', n.pitch, 'has no room for the flats and flanks of these diameters')
  if (!(Math.min(profile.crest, profile.root) > 1e-3)) throw misfit(undefined, 'd1', n.d1, 'leaves no core')
  return profile
}

/** turns over which a thread fades in, rad */
const fade = Math.PI / 4
/** how far a lead-in opens past the root, m */
const opens = 0.2e-3

/** A thread along z, to be cut out (`internal`) or to stay (`external`); its entrance at z = 0 or, `up`, at its top. */
function thread(b: Workbench, profile: TurnProfile, long: number, up: boolean): Solid {
  const hollow = profile.side === 'internal'
  const mesh = threadSweep({
    section: profile,
    length: long,
    facets: facetsFor(Math.max(profile.crest, profile.root), b.chord),
    hollow,
    lead: [profile.root + (hollow ? opens : -opens), undefined],
    fade,
  })
  const solid = b.given(mesh)
  // turned round, not mirrored: a right-hand thread stays one
  return up ? b.moved(b.turned(solid, Math.PI, 0, 0), 0, 0, long) : solid
}

/** Flutes to hold on to, taken out of a rim of radius r. */
function flutes(b: Workbench, r: number, count: number, low: number, high: number): Solid[] {
  if (count === 0) return []
  const size = Math.min(0.45 * ((2 * Math.PI * r) / count / 2), 3e-3)
  return [b.round(b.moved(b.rod(size, high - low, low), r + 0.5 * size, 0, 0), count)]
}

const capValues: Record<
  | keyof typeof threadValues
  | 'turns'
  | 'wall'
  | 'top'
  | 'seat'
  | 'grooveWide'
  | 'grooveDeep'
  | 'flutes'
  | 'vent'
  | 'holeOffset',
  ValueRange
> = {
  ...threadValues,
  turns: number('Turns', 4, 1, 12),
  wall: length('Wall beyond the root', 3, 1.6, 12),
  top: length('Top', 5, 2, 20),
  seat: length('Groove for the ring, outside; 0 for none', 0, 0, 300),
  grooveWide: length('Groove, width', 3.6, 1, 12),
  grooveDeep: length('Groove, depth', 2, 0.5, 8),
  flutes: number('Flutes', 16, 0, 60),
  vent: length('Vent hole; 0 for none', 0, 0, 12),
  holeOffset,
}

export const screwCap = defineShape({
  title: 'Screw cap',
  values: capValues,
  build: (b, { n }) => {
    const profile = profileOf(n, 'internal')
    const long = n.turns * n.pitch
    const rim = profile.root + n.wall + (n.flutes > 0 ? 1.5e-3 : 0)
    const high = n.top + long
    const c = Math.min(0.6e-3, n.wall / 3, n.top / 3)
    const body = b.lathe([
      [0, 0],
      [rim - c, 0],
      [rim, c],
      [rim, high],
      [0, high],
    ])
    // the thread is cut from the top of the closed end up and out
    const hollow = b.moved(thread(b, profile, long + 0.5e-3, true), 0, 0, n.top)
    const tools = [hollow, ...flutes(b, rim, n.flutes, -1e-3, high + 1e-3)]
    if (wanted(n.seat)) {
      if (n.seat / 2 > profile.root)
        throw misfit(
          screwCap,
          'seat',
          n.seat,
          `must lie inside the thread, ${Math.round(2e6 * profile.root) / 1e3} mm`,
        )
      if (n.grooveDeep > n.top - 1.2e-3)
        throw misfit(screwCap, 'grooveDeep', n.grooveDeep, 'must leave 1.2 mm of the top')
      if (n.grooveWide > n.seat / 2 - 1e-3)
        throw misfit(screwCap, 'grooveWide', n.grooveWide, 'must leave a post of 1 mm inside the ring')
      tools.push(
        ringTool(b, n.seat / 2 - n.grooveWide, n.seat / 2, n.top - n.grooveDeep, n.top + 0.5 * n.pitch),
      )
    }
    if (wanted(n.vent)) {
      if (n.vent / 2 + 1e-3 > (wanted(n.seat) ? n.seat / 2 - n.grooveWide : profile.crest))
        throw misfit(screwCap, 'vent', n.vent, 'must lie inside the ring')
      tools.push(b.bore((n.vent + n.holeOffset) / 2, n.top + 2e-3, -1e-3))
    }
    return [{ name: 'screw cap', solid: b.cut(body, ...tools) }]
  },
})

/** A ring to cut out, between two radii and two heights. */
function ringTool(b: Workbench, inner: number, outer: number, low: number, high: number): Solid {
  return b.lathe([
    [inner, low],
    [outer, low],
    [outer, high],
    [inner, high],
  ])
}

export const screwHatch = defineShape({
  title: 'Screw hatch, ring and lid',
  values: {
    clear: length('Clear opening', 110, 30, 220),
    pitch: length('Pitch', 6, 3, 10),
    height: length('Height of the thread', 1.5, 0.6, 2.4),
    half: angle('Flank, from the plane across', 45, 30, 50),
    clearance: length('Clearance, on the radius', 0.35, 0.05, 0.8),
    line: length('Width of a laid line', 0.45, 0.02, 1),
    turns: number('Turns', 2, 1, 5),
    frame: length('Frame between opening and thread', 4, 2.4, 12),
    flange: length('Flange, width', 22, 14, 60),
    flangeThick: length('Flange, thickness', 5, 3, 12),
    bolts: number('Screws', 8, 4, 24),
    bolt: length('Screw hole', 4.4, 2.5, 9),
    top: length('Lid', 6, 4, 16),
    wall: length('Lid, wall beyond the root', 3, 2, 10),
    grooveWide: length('Groove, width', 3.6, 1, 5),
    grooveDeep: length('Groove, depth', 2, 0.5, 2.8),
    ribs: number('Ribs to turn it by', 6, 2, 16),
    holeOffset,
  },
  build: (b, { n }) => {
    if (n.height > n.pitch / 2 / Math.tan(n.half))
      throw misfit(screwHatch, 'height', n.height, 'is more than the flanks leave of the pitch')
    const own = ownThread({
      d: n.clear + 2 * n.frame + 2 * n.height,
      pitch: n.pitch,
      height: n.height,
      half: n.half,
    })
    const given = { ...own, clearance: n.clearance, line: n.line }
    const outside = profileOf(given, 'external')
    const inside = profileOf(given, 'internal')
    const long = n.turns * n.pitch
    if (n.bolt + n.holeOffset > n.flange - 8e-3)
      throw misfit(screwHatch, 'bolt', n.bolt, 'must leave 4 mm of flange on both sides')
    const lidOut = inside.root + n.wall
    // the flange reaches out past the lid, and its screws stand clear of it
    const out = lidOut + n.flange
    const hole = n.clear / 2
    const foot = b.rod(out, n.flangeThick)
    const neck = b.moved(thread(b, outside, long, true), 0, 0, n.flangeThick)
    const ring = b.cut(
      b.join(foot, neck),
      b.bore(hole, long + n.flangeThick + 2e-3, -1e-3),
      b.round(
        b.moved(
          b.bore((n.bolt + n.holeOffset) / 2, n.flangeThick + 2e-3, -1e-3),
          lidOut + n.flange / 2,
          0,
          0,
        ),
        n.bolts,
      ),
    )
    // a ring lies on the neck's end: its groove in the lid is over the frame
    const middle = hole + n.frame / 2
    const groove = Math.min(n.grooveWide, n.frame + 2 * n.height)
    const deep = Math.min(n.grooveDeep, n.top - 1.2e-3)
    const plate = b.rod(lidOut, n.top + long - 0.5e-3)
    const ribOut = 0.92 * hole
    const rib = b.box([0.2 * hole, -2e-3, n.top - 0.5e-3], [ribOut - n.grooveWide, 2e-3, n.top + 0.7 * long])
    const lid = b.cut(
      plate,
      b.moved(thread(b, inside, long, true), 0, 0, n.top),
      ringTool(b, middle - groove / 2, middle + groove / 2, n.top - deep, n.top + 0.2 * n.pitch),
      ...flutes(b, lidOut, 24, -1e-3, n.top + long + 1e-3),
    )
    const ribbed = ribOut - n.grooveWide > 0.25 * hole ? b.join(lid, b.round(rib, n.ribs)) : lid
    return [
      { name: 'hatch ring', solid: ring },
      { name: 'hatch lid', solid: b.moved(ribbed, out + lidOut + 5e-3, 0, 0) },
    ]
  },
})

export const cableGland = defineShape({
  title: 'Cable gland, body and nut',
  values: {
    cable: length('Cable', 6, 2, 20),
    d: length('Thread', 20, 8, 60),
    pitch: length('Pitch', 2, 1, 4),
    clearance: length('Clearance, on the radius', 0.25, 0.05, 0.5),
    line: length('Width of a laid line', 0.45, 0.02, 0.9),
    turns: number('Turns', 5, 3, 10),
    panel: length('Thickness of what it goes through', 4, 1, 20),
    flange: length('Flange, beyond the thread', 5, 2, 20),
    holeOffset,
  },
  build: (b, { n }) => {
    const height = 0.541 * n.pitch
    const own = ownThread({ d: n.d, pitch: n.pitch, height, half: Math.PI / 6 })
    const given = { ...own, clearance: n.clearance, line: n.line }
    const outside = profileOf(given, 'external')
    const inside = profileOf(given, 'internal')
    const cable = n.cable + n.holeOffset
    if (cable / 2 > outside.root - 2.5e-3)
      throw misfit(cableGland, 'cable', n.cable, 'must leave 2.5 mm of wall inside the thread')
    const plate = 4e-3
    const long = n.turns * n.pitch + n.panel
    const six = (r: number) =>
      [0, 1, 2, 3, 4, 5].map((i) => {
        const at = (Math.PI / 3) * i
        return [r * Math.cos(at), r * Math.sin(at)] as const
      })
    const across = n.d / 2 + n.flange
    // a cone at the mouth takes a ring of rubber that the cap presses round the cable
    const mouth = Math.min(outside.root - 1.2e-3, cable / 2 + 2e-3)
    const body = b.cut(
      b.join(b.pulled([six(across)], plate), b.moved(thread(b, outside, long, true), 0, 0, plate)),
      b.bore(cable / 2, plate + long + 2e-3, -1e-3),
      b.lathe([
        [0, plate + long - (mouth - cable / 2) - 0.1e-3],
        [cable / 2 - 0.1e-3, plate + long - (mouth - cable / 2) - 0.1e-3],
        [mouth, plate + long],
        [mouth, plate + long + 1e-3],
        [0, plate + long + 1e-3],
      ]),
    )
    const tall = Math.max(6e-3, 3 * n.pitch)
    const nut = b.cut(
      b.pulled([six(across)], tall),
      b.moved(thread(b, inside, tall + 2e-3, true), 0, 0, -1e-3),
    )
    return [
      { name: 'gland body', solid: body },
      { name: 'gland nut', solid: b.moved(nut, 2 * across + 4e-3, 0, 0) },
    ]
  },
})

export const fitThree = defineShape({
  title: 'Try-pieces in three clearances',
  values: {
    ...threadValues,
    step: length('Step of the clearance', 0.1, 0.01, 0.25),
    turns: number('Turns', 3, 2, 6),
    wall: length('Wall beyond the root', 2, 1.2, 6),
  },
  words: { side: { label: 'Thread', usual: 'internal', words: ['internal', 'external'] } },
  build: (b, { n, word }) => {
    const side = word.side as ThreadSide
    const long = n.turns * n.pitch
    return [-1, 0, 1].map((k) => {
      const profile = profileOf({ ...n, clearance: Math.max(n.step / 2, n.clearance + k * n.step) }, side)
      const out = side === 'internal' ? profile.root + n.wall : profile.crest
      let solid: Solid
      if (side === 'internal')
        solid = b.cut(b.rod(out, long), b.moved(thread(b, profile, long + 1e-3, true), 0, 0, -0.5e-3))
      else {
        const core = profile.root - n.wall
        const plug = thread(b, profile, long, true)
        solid = core > 1e-3 ? b.cut(plug, b.bore(core, long + 2e-3, -1e-3)) : plug
      }
      // as many knobs as its place from the tightest
      const knobs = Array.from({ length: k + 2 }, (_, i) =>
        b.turned(b.moved(b.rod(1.2e-3, Math.min(long, 3e-3)), out + 0.6e-3, 0, 0), 0, 0, 0.35 * i),
      )
      const knobbed = side === 'internal' ? b.join(solid, ...knobs) : solid
      return { name: `try-piece ${k + 2}`, solid: b.moved(knobbed, k * (2 * out + 6e-3), 0, 0) }
    })
  },
})
