/** Handbook questions of what holds a deck up and together: stringers, frames, rivets, hatches, loads. */
import {
  count,
  kgPerCubicMetre,
  kilograms,
  megapascals,
  metresPerSecond,
  mm,
  plainRatio,
} from '../../base/answers/portMakers.ts'
import { defineReckoner, type Reckoner } from '../../base/answers/reckoner.ts'
import { alloyOf, aluminium } from './alloys.ts'
import { beamEvenLoad, beamMiddleLoad, flatBar, hatSection, withSkin } from './beams.ts'
import { rivetPitchInCompression } from './buckling.ts'
import { hatchNeeds } from './hatchHole.ts'
import { dropFactor, slamPressure } from './loads.ts'
import { bearingAllowable, pitchFor, pitchLimits, rivetAllowable, rivetOf } from './rivets.ts'
import { sharedByFrame } from './sheetSpread.ts'
import { alloy, force, out, sheet, size } from './strengthPorts.ts'

const stringer = defineReckoner({
  id: 'stringer',
  title: 'Stringer or frame under a deck',
  trade: 'strength',
  says: 'A flat bar on edge or a folded hat with the skin that works with it, a load in the middle of its span and an even one along it. Ends between free and built in.',
  inputs: [
    { name: 'kind', says: 'Flat bar or hat.', kind: 'choice', unit: '', choices: ['flat bar', 'hat'] },
    size('height', 'Height.', { min: 3e-3, max: 0.5 }),
    size('width', 'Width of a hat; not used for a bar.', { assumed: 0.03, min: 5e-3, max: 0.5 }),
    size('thickness', 'Thickness of bar or hat sheet.', { max: 0.05 }),
    size('skin', 'Thickness of the deck sheet.', { max: 0.03 }),
    size('span', 'Between its supports.', { min: 0.05 }),
    force('load', 'Load in the middle.'),
    {
      name: 'even',
      says: 'Even load along it.',
      kind: 'lineLoad',
      unit: 'N/mm',
      min: 0,
      max: 1e6,
      assumed: 0,
    },
    plainRatio('fixed', 'Ends: 0 free to turn, 1 built in.', 0, 1, 0.3),
  ],
  outputs: [
    out('stress', 'At the far edge.', 'pressure', 'MPa'),
    out('deflection', 'In the middle.', 'length', 'mm'),
    out('spanOver', 'Span over deflection; above 150 feels stiff.', 'ratio', ''),
    out('inertia', 'Second moment with the skin.', 'areaMoment', 'mm⁴'),
  ],
  reckon: (g, w) => {
    const bar = w.kind === 'hat' ? hatSection(g.height, g.width, g.thickness) : flatBar(g.height, g.thickness)
    // fifteen thicknesses of skin a side work with it
    const joint = withSkin(bar, g.skin, 30 * g.skin)
    const middle = beamMiddleLoad(joint, g.span, g.load, aluminium.modulus, g.fixed)
    const even = beamEvenLoad(joint, g.span, g.even, aluminium.modulus, g.fixed)
    return {
      stress: middle.stress + even.stress,
      deflection: middle.deflection + even.deflection,
      spanOver: 1 / (middle.ofSpan + even.ofSpan),
      inertia: joint.inertia,
    }
  },
  sources: ['Roark’s Formulas for Stress and Strain, table 8.1', 'Working width of skin: common practice'],
})

const frame = defineReckoner({
  id: 'frame-spread',
  title: 'Frame across stringers',
  trade: 'strength',
  says: 'Where foam cannot go, a frame across the stringers shares a foot among several of them. Flat bars on edge for both; holds while the frame crosses three or more.',
  inputs: [
    force('load', 'Load on the frame.'),
    size('frameHeight', 'Height of the frame.', { min: 3e-3, max: 0.3 }),
    size('frameThickness', 'Its thickness.', { max: 0.05 }),
    size('stringerHeight', 'Height of a stringer.', { min: 3e-3, max: 0.3 }),
    size('stringerThickness', 'Its thickness.', { max: 0.05 }),
    size('span', 'Span of the stringers.', { min: 0.05 }),
    size('spacing', 'Between stringers.', { min: 0.01, max: 2 }),
    count('count', 'Stringers the frame crosses.', 1, 40, 4),
  ],
  outputs: [
    out('share', 'On the most loaded stringer.', 'ratio', '%'),
    out('frameStress', 'In the frame.', 'pressure', 'MPa'),
    out('stringerStress', 'In that stringer.', 'pressure', 'MPa'),
    out('deflection', 'Under the load.', 'length', 'mm'),
  ],
  reckon: (g) => {
    const across = flatBar(g.frameHeight, g.frameThickness)
    const along = flatBar(g.stringerHeight, g.stringerThickness)
    const shared = sharedByFrame({
      load: g.load,
      frame: aluminium.modulus * across.inertia,
      stringer: aluminium.modulus * along.inertia,
      span: g.span,
      spacing: g.spacing,
      count: g.count,
    })
    const moment = (shared.share * g.load * g.span) / 4
    return {
      share: shared.share,
      frameStress: (shared.moment * g.frameHeight) / 2 / across.inertia,
      stringerStress: (moment * g.stringerHeight) / 2 / along.inertia,
      deflection: shared.deflection,
    }
  },
  sources: ['M. Hetényi, Beams on Elastic Foundation (1946), endless beam'],
})

const rivets = defineReckoner({
  id: 'rivet-pitch',
  title: 'Blind rivets in thin sheet',
  trade: 'strength',
  says: 'What one aluminium blind rivet carries along the sheet, and the pitch for a pull. Sealed rivets below water.',
  inputs: [
    mm('diameter', 'Rivet diameter: 3.2, 4.0 or 4.8 mm.', 3e-3, 5e-3, 4.8e-3),
    sheet,
    alloy,
    { name: 'pull', says: 'Pull along the edge.', kind: 'lineLoad', unit: 'N/mm', min: 1, max: 1e7 },
    megapascals('compression', 'Compression in the sheet, for buckling between rivets.', 1e6, 1e9, 50e6),
  ],
  outputs: [
    out('carries', 'One rivet, in shear with a factor of 2.', 'force', 'N'),
    out('bearing', 'The sheet in bearing.', 'force', 'N'),
    out('pitch', 'Pitch that carries the pull.', 'length', 'mm'),
    out('compressed', 'Pitch below which the sheet does not buckle between round heads.', 'length', 'mm'),
    out('closest', 'Closest pitch.', 'length', 'mm'),
    out('watertight', 'Widest pitch that seals.', 'length', 'mm'),
    out('edge', 'Least distance from an edge.', 'length', 'mm'),
  ],
  reckon: (g, w) => {
    const r = rivetOf(g.diameter)
    const { ultimate } = alloyOf(w.alloy)
    const limits = pitchLimits(r.diameter)
    return {
      carries: rivetAllowable(r, ultimate, g.t),
      bearing: bearingAllowable(ultimate, r.diameter, g.t),
      pitch: pitchFor(g.pull, r, ultimate, g.t),
      compressed: rivetPitchInCompression(g.t, g.compression),
      closest: limits.closest,
      watertight: limits.widest,
      edge: limits.edge,
    }
  },
  sources: ['IFI-114 grade 10, from memory, ±15 %', 'FAA AC 43.13-1B and Bruhn, from memory'],
  cautions: [
    'Use the maker’s sheet for the rivet in hand. A blind rivet may lose its mandrel: count on shear only.',
  ],
})

const hatch = defineReckoner({
  id: 'hatch-opening',
  title: 'What a hatch opening needs round it',
  trade: 'strength',
  says: 'Section to put back, corner radius, and stiffness of the coaming for stringers cut through.',
  inputs: [
    size('length', 'Along the craft.', { min: 0.02 }),
    size('width', 'Across the craft.', { min: 0.02 }),
    sheet,
    size('radius', 'Corner radius.', { min: 0 }),
    count('cut', 'Stringers cut through.', 0, 20, 0),
    {
      name: 'inertia',
      says: 'Second moment of one with its skin.',
      kind: 'areaMoment',
      unit: 'mm⁴',
      min: 0,
      max: 1,
      assumed: 0,
    },
  ],
  outputs: [
    out('doubler', 'Section to add on each side.', 'area', 'mm²'),
    out('radiusFrom', 'Corner radius, at least.', 'length', 'mm'),
    out('radiusTo', 'Corner radius, no use beyond.', 'length', 'mm'),
    out('concentration', 'Stress at the corner over stress in the sheet.', 'ratio', ''),
    out('coaming', 'Second moment each side of the coaming.', 'areaMoment', 'mm⁴'),
  ],
  reckon: (g) => {
    const n = hatchNeeds({
      length: g.length,
      width: g.width,
      t: g.t,
      cornerRadius: g.radius,
      cut: g.cut,
      stringerInertia: g.inertia,
    })
    return {
      doubler: n.doubler,
      radiusFrom: n.radiusFrom,
      radiusTo: n.radiusTo,
      concentration: n.concentration,
      coaming: n.coamingInertia,
    }
  },
  sources: [
    'Replacement of cut section and stiffness: practice of small craft and aircraft, Bruhn, from memory',
  ],
  cautions: ['Keep hatch corners out of the foot zones.'],
})

const landing = defineReckoner({
  id: 'landing-force',
  title: 'Force of landing on a deck',
  trade: 'strength',
  says: 'A weight dropped on a spring: legs and deck in series. Stiff legs land hardest.',
  inputs: [
    kilograms('mass', 'Of the rider.', 1, 300),
    size('height', 'Of the drop.', { min: 0, max: 3 }),
    {
      name: 'stiffness',
      says: 'Of legs and deck together.',
      kind: 'stiffness',
      unit: 'N/mm',
      min: 100,
      max: 1e8,
      assumed: 20e3,
    },
  ],
  outputs: [out('factor', 'Peak force over weight.', 'ratio', ''), out('force', 'Peak force.', 'force', 'N')],
  reckon: (g) => {
    const weight = g.mass * 9.80665
    const factor = dropFactor(g.height, g.stiffness, weight)
    return { factor, force: factor * weight }
  },
  sources: ['Energy of a falling weight on a spring; legs about 20 kN/m, from memory'],
})

const slam = defineReckoner({
  id: 'slam-pressure',
  title: 'Pressure of water struck at speed',
  trade: 'strength',
  says: 'Over a small patch of the bottom, as a part of ½ρV².',
  inputs: [
    metresPerSecond('speed', 'Speed.', 0, 40),
    kgPerCubicMetre('density', 'Of the water.', 950, 1100, 999),
    plainRatio('part', 'Part of ½ρV²: 0.25 to 0.5.', 0.05, 2, 0.4),
  ],
  outputs: [out('pressure', 'Pressure.', 'pressure', 'kPa')],
  reckon: (g) => ({ pressure: slamPressure(g.speed, g.density, g.part) }),
  sources: ['½ρV², part of it by judgement, no source'],
})

export const partReckoners: readonly Reckoner[] = [stringer, frame, rivets, hatch, landing, slam]
