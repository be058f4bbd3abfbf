/** Handbook questions of decks, foam and sheet. */
import { defineReckoner, type Port, type Reckoner } from '../answers/reckoner.ts'
import { alloyNames, alloyOf, aluminium, strengthOf } from './alloys.ts'
import { beamMiddleLoad, flatBar, hatSection, withSkin } from './beams.ts'
import { camberFor, oilCanStepRectangle, panelBuckling } from './buckling.ts'
import { foamAllowable, foamNames, foamOf } from './foams.ts'
import { hatchNeeds } from './hatch.ts'
import { heatReckoners } from './heatReckoners.ts'
import { dropFactor } from './loads.ts'
import { bedStiffness, discOf, discOnFoam } from './onFoam.ts'
import { evenLoadOnPlate, patchOnPlate } from './plate.ts'
import { bearingAllowable, pitchFor, pitchLimits, rivetAllowable, rivetOf } from './rivets.ts'
import { sandwichBeam, wrinklingStress } from './sandwich.ts'
import { sharedByFrame } from './spread.ts'

const plates = 'S. Timoshenko and S. Woinowsky-Krieger, Theory of Plates and Shells (1959)'
const berger = 'H. M. Berger, J. Appl. Mech. 22 (1955)'

const mm = (name: string, says: string, more: Partial<Port> = {}): Port => ({
  name,
  says,
  kind: 'length',
  unit: 'mm',
  min: 1e-4,
  max: 10,
  ...more,
})
const force = (name: string, says: string, more: Partial<Port> = {}): Port => ({
  name,
  says,
  kind: 'force',
  unit: 'N',
  min: 1,
  max: 1e6,
  ...more,
})
const out = (name: string, says: string, kind: Port['kind'], unit: string): Port => ({
  name,
  says,
  kind,
  unit,
})
const alloy: Port = { name: 'alloy', says: 'Sheet.', kind: 'choice', unit: '', choices: alloyNames }
const foam: Port = {
  name: 'foam',
  says: 'Foam, by kind and density in kg/m³.',
  kind: 'choice',
  unit: '',
  choices: foamNames,
}
const sheet = mm('t', 'Thickness of the sheet.', { min: 1e-4, max: 0.03 })

const deckBay = defineReckoner({
  id: 'deck-bay',
  title: 'Thin deck sheet under a foot',
  trade: 'strength',
  says: 'Aluminium sheet supported round a bay, a load on a patch in the middle. Two answers: edges held in, where the sheet hangs like a net, and edges free to pull in, where it only bends. Riveted decks lie between; bending alone is not to be believed above half a thickness of deflection.',
  inputs: [
    mm('a', 'Length of the bay.', { min: 0.02 }),
    mm('b', 'Width of the bay.', { min: 0.02 }),
    sheet,
    force('load', 'Load: a 90 kg person stands with 883 N, steps with twice that.'),
    mm('u', 'Patch along the bay.', { assumed: 0.08 }),
    mm('v', 'Patch across the bay.', { assumed: 0.08 }),
  ],
  outputs: [
    out('deflection', 'Deflection with the edges held in.', 'length', 'mm'),
    out('stress', 'Stress in the middle, held in.', 'pressure', 'MPa'),
    out('edgePull', 'Pull on the edges, held in.', 'lineLoad', 'N/mm'),
    out('deflectionFree', 'Deflection by bending alone.', 'length', 'mm'),
    out('stressFree', 'Stress by bending alone.', 'pressure', 'MPa'),
  ],
  reckon: (g) => {
    const plate = { a: g.a!, b: g.b!, t: g.t!, modulus: aluminium.modulus, poisson: aluminium.poisson }
    const patch = { load: g.load!, u: g.u!, v: g.v! }
    const held = patchOnPlate(plate, patch, { held: true })
    const free = patchOnPlate(plate, patch)
    return {
      deflection: held.deflection,
      stress: held.stress,
      edgePull: held.tension,
      deflectionFree: free.deflection,
      stressFree: free.stress,
    }
  },
  sources: [plates, berger],
})

const plateEven = defineReckoner({
  id: 'plate-even-load',
  title: 'Plate under even pressure',
  trade: 'strength',
  says: 'A supported rectangular plate of any material in bending: deflection and greatest stress. Holds while it sags less than half its thickness.',
  inputs: [
    mm('a', 'Long side.', { min: 1e-3 }),
    mm('b', 'Short side.', { min: 1e-3 }),
    sheet,
    { name: 'pressure', says: 'Pressure.', kind: 'pressure', unit: 'kPa', min: 0, max: 1e8 },
    {
      name: 'modulus',
      says: 'Elastic modulus.',
      kind: 'pressure',
      unit: 'GPa',
      min: 1e6,
      max: 5e11,
      assumed: 70e9,
    },
    { name: 'poisson', says: 'Poisson’s ratio.', kind: 'ratio', unit: '', min: 0, max: 0.49, assumed: 0.33 },
  ],
  outputs: [
    out('deflection', 'Deflection in the middle.', 'length', 'mm'),
    out('stress', 'Stress in the middle.', 'pressure', 'MPa'),
  ],
  reckon: (g) => {
    const r = evenLoadOnPlate(
      { a: g.a!, b: g.b!, t: g.t!, modulus: g.modulus!, poisson: g.poisson! },
      g.pressure!,
    )
    return { deflection: r.deflection, stress: r.stress }
  },
  sources: [`${plates}, § 30`],
})

const onFoam = defineReckoner({
  id: 'sheet-on-foam',
  title: 'Sheet lying on foam under a foot',
  trade: 'strength',
  says: 'An aluminium sheet spreads a load over foam. Holds for sheet larger than about four reaches each way.',
  inputs: [
    sheet,
    foam,
    mm('depth', 'Depth of foam down to something firm.', { min: 2e-3, max: 2 }),
    force('load', 'Load.'),
    mm('u', 'Patch, one side.', { assumed: 0.08, min: 5e-3 }),
    mm('v', 'Patch, other side.', { assumed: 0.08, min: 5e-3 }),
    {
      name: 'temperature',
      says: 'Of the foam.',
      kind: 'temperature',
      unit: '°C',
      min: 233,
      max: 400,
      assumed: 293.15,
    },
  ],
  outputs: [
    out('deflection', 'Under the foot.', 'length', 'mm'),
    out('pressure', 'On the foam.', 'pressure', 'kPa'),
    out('allowed', 'That the foam may have under feet.', 'pressure', 'kPa'),
    out('stress', 'In the sheet.', 'pressure', 'MPa'),
    out('reach', 'How far the sheet spreads a load.', 'length', 'mm'),
  ],
  reckon: (g, w) => {
    const f = foamOf(w.foam!)
    const s = {
      modulus: aluminium.modulus,
      poisson: aluminium.poisson,
      t: g.t!,
      bed: bedStiffness(f.modulus, g.depth!),
    }
    const r = discOnFoam(s, g.load!, discOf(g.u!, g.v!))
    return {
      deflection: r.deflection,
      pressure: r.pressure,
      allowed: foamAllowable(f, 'foot', g.temperature!),
      stress: r.stress,
      reach: r.reach,
    }
  },
  sources: [`${plates}, § 58`, 'H. M. Westergaard, Public Roads 7 (1926)', 'ASTM C578 and D6817'],
  cautions: ['Foam moduli vary by a third from maker to maker.'],
})

const sandwich = defineReckoner({
  id: 'sandwich-strip',
  title: 'Sandwich of sheet and foam',
  trade: 'strength',
  says: 'A strip on two supports with a load in the middle: bending, shear of the core, stress in the faces, and the stress at which a face wrinkles.',
  inputs: [
    mm('face', 'Thickness of each face.', { max: 0.02 }),
    mm('core', 'Thickness of the core.', { max: 0.5 }),
    foam,
    mm('width', 'Width of the strip.', { min: 0.01 }),
    mm('span', 'Between the supports.', { min: 0.02 }),
    force('load', 'Load in the middle.'),
  ],
  outputs: [
    out('deflection', 'In the middle.', 'length', 'mm'),
    out('bending', 'Of that, by bending.', 'length', 'mm'),
    out('shear', 'Of that, by shear of the core.', 'length', 'mm'),
    out('faceStress', 'In the faces.', 'pressure', 'MPa'),
    out('wrinkling', 'At which a face wrinkles.', 'pressure', 'MPa'),
    out('coreStress', 'Shear in the core.', 'pressure', 'kPa'),
    out('coreAllowed', 'Shear the core bears, half its strength.', 'pressure', 'kPa'),
  ],
  reckon: (g, w) => {
    const f = foamOf(w.foam!)
    const s = {
      face: g.face!,
      core: g.core!,
      faceModulus: aluminium.modulus,
      coreModulus: f.modulus,
      coreShear: f.shearModulus,
    }
    const r = sandwichBeam(s, g.width!, g.span!, g.load!)
    return {
      deflection: r.bending + r.shear,
      bending: r.bending,
      shear: r.shear,
      faceStress: r.faceStress,
      wrinkling: wrinklingStress(s),
      coreStress: r.coreStress,
      coreAllowed: 0.5 * f.shearStrength,
    }
  },
  sources: [
    'H. G. Allen, Analysis and Design of Structural Sandwich Panels (1969)',
    'N. J. Hoff and S. E. Mautner, J. Aero. Sci. 12 (1945): wrinkling',
  ],
  cautions: ['Bond with polyurethane or epoxy: polyester resin and petrol dissolve polystyrene.'],
})

const stringer = defineReckoner({
  id: 'stringer',
  title: 'Stringer or frame under a deck',
  trade: 'strength',
  says: 'A flat bar on edge or a folded hat with the skin that works with it, a load in the middle of its span. Ends between free and built in.',
  inputs: [
    { name: 'kind', says: 'Flat bar or hat.', kind: 'choice', unit: '', choices: ['flat bar', 'hat'] },
    mm('height', 'Height.', { min: 3e-3, max: 0.5 }),
    mm('width', 'Width of a hat; not used for a bar.', { assumed: 0.03, min: 5e-3, max: 0.5 }),
    mm('thickness', 'Thickness of bar or hat sheet.', { max: 0.05 }),
    mm('skin', 'Thickness of the deck sheet.', { max: 0.03 }),
    mm('span', 'Between its supports.', { min: 0.05 }),
    force('load', 'Load in the middle.'),
    {
      name: 'fixed',
      says: 'Ends: 0 free to turn, 1 built in.',
      kind: 'ratio',
      unit: '',
      min: 0,
      max: 1,
      assumed: 0.3,
    },
  ],
  outputs: [
    out('stress', 'At the far edge.', 'pressure', 'MPa'),
    out('deflection', 'In the middle.', 'length', 'mm'),
    out('spanOver', 'Span over deflection; above 150 feels stiff.', 'ratio', ''),
    out('inertia', 'Second moment with the skin.', 'areaMoment', 'mm⁴'),
  ],
  reckon: (g, w) => {
    const bar =
      w.kind === 'hat' ? hatSection(g.height!, g.width!, g.thickness!) : flatBar(g.height!, g.thickness!)
    // fifteen thicknesses of skin a side work with it
    const joint = withSkin(bar, g.skin!, 30 * g.skin!)
    const r = beamMiddleLoad(joint, g.span!, g.load!, aluminium.modulus, g.fixed!)
    return { stress: r.stress, deflection: r.deflection, spanOver: 1 / r.ofSpan, inertia: joint.inertia }
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
    mm('frameHeight', 'Height of the frame.', { min: 3e-3, max: 0.3 }),
    mm('frameThickness', 'Its thickness.', { max: 0.05 }),
    mm('stringerHeight', 'Height of a stringer.', { min: 3e-3, max: 0.3 }),
    mm('stringerThickness', 'Its thickness.', { max: 0.05 }),
    mm('span', 'Span of the stringers.', { min: 0.05 }),
    mm('spacing', 'Between stringers.', { min: 0.01, max: 2 }),
    {
      name: 'count',
      says: 'Stringers the frame crosses.',
      kind: 'count',
      unit: '1',
      min: 1,
      max: 40,
      assumed: 4,
    },
  ],
  outputs: [
    out('share', 'On the most loaded stringer.', 'ratio', '%'),
    out('frameStress', 'In the frame.', 'pressure', 'MPa'),
    out('stringerStress', 'In that stringer.', 'pressure', 'MPa'),
    out('deflection', 'Under the load.', 'length', 'mm'),
  ],
  reckon: (g) => {
    const across = flatBar(g.frameHeight!, g.frameThickness!)
    const along = flatBar(g.stringerHeight!, g.stringerThickness!)
    const shared = sharedByFrame({
      load: g.load!,
      frame: aluminium.modulus * across.inertia,
      stringer: aluminium.modulus * along.inertia,
      span: g.span!,
      spacing: g.spacing!,
      count: g.count!,
    })
    const moment = (shared.share * g.load! * g.span!) / 4
    return {
      share: shared.share,
      frameStress: (shared.moment * g.frameHeight!) / 2 / across.inertia,
      stringerStress: (moment * g.stringerHeight!) / 2 / along.inertia,
      deflection: shared.deflection,
    }
  },
  sources: ['M. Hetényi, Beams on Elastic Foundation (1946), endless beam'],
})

const foamAllow = defineReckoner({
  id: 'foam-allowable',
  title: 'Pressure a foam may carry',
  trade: 'strength',
  says: 'Parked loads creep, feet come again and again, a jump is rare. Falls to nothing as the foam softens.',
  inputs: [
    foam,
    {
      name: 'temperature',
      says: 'Of the foam.',
      kind: 'temperature',
      unit: '°C',
      min: 233,
      max: 400,
      assumed: 293.15,
    },
  ],
  outputs: [
    out('parked', 'Parked loads.', 'pressure', 'kPa'),
    out('foot', 'Feet.', 'pressure', 'kPa'),
    out('jump', 'A jump.', 'pressure', 'kPa'),
    out('crush', 'Strength at yield or 10 %.', 'pressure', 'kPa'),
    out('hottest', 'Hottest for long.', 'temperature', '°C'),
  ],
  reckon: (g, w) => {
    const f = foamOf(w.foam!)
    const at = (use: 'parked' | 'foot' | 'jump') => foamAllowable(f, use, g.temperature!)
    return { parked: at('parked'), foot: at('foot'), jump: at('jump'), crush: f.crush, hottest: f.hottest }
  },
  sources: ['ASTM C578 and D6817', 'Parts of the strength: data sheets on creep, and judgement for the jump'],
})

const rivets = defineReckoner({
  id: 'rivet-pitch',
  title: 'Blind rivets in thin sheet',
  trade: 'strength',
  says: 'What one aluminium blind rivet carries along the sheet, and the pitch for a pull. Sealed rivets below water.',
  inputs: [
    {
      name: 'diameter',
      says: 'Rivet diameter: 3.2, 4.0 or 4.8 mm.',
      kind: 'length',
      unit: 'mm',
      min: 3e-3,
      max: 5e-3,
      assumed: 4.8e-3,
    },
    sheet,
    alloy,
    { name: 'pull', says: 'Pull along the edge.', kind: 'lineLoad', unit: 'N/mm', min: 1, max: 1e7 },
  ],
  outputs: [
    out('carries', 'One rivet, in shear with a factor of 2.', 'force', 'N'),
    out('bearing', 'The sheet in bearing.', 'force', 'N'),
    out('pitch', 'Pitch that carries the pull.', 'length', 'mm'),
    out('closest', 'Closest pitch.', 'length', 'mm'),
    out('watertight', 'Widest pitch that seals.', 'length', 'mm'),
    out('edge', 'Least distance from an edge.', 'length', 'mm'),
  ],
  reckon: (g, w) => {
    const r = rivetOf(g.diameter!)
    const { ultimate } = alloyOf(w.alloy!)
    const limits = pitchLimits(r.diameter)
    return {
      carries: rivetAllowable(r, ultimate, g.t!),
      bearing: bearingAllowable(ultimate, r.diameter, g.t!),
      pitch: pitchFor(g.pull!, r, ultimate, g.t!),
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

const oilCan = defineReckoner({
  id: 'oil-canning',
  title: 'When flat sheet pops',
  trade: 'strength',
  says: 'The rise of temperature at which a flat panel held at its edges pops, the stress that buckles it, and the camber that stops it.',
  inputs: [mm('a', 'Long side.', { min: 0.01 }), mm('b', 'Short side.', { min: 0.01 }), sheet],
  outputs: [
    out('rise', 'Sheet warmer than its frame by.', 'temperatureStep', 'K'),
    out('stress', 'Compression one way that buckles it.', 'pressure', 'MPa'),
    out('camber', 'Camber that stops it.', 'length', 'mm'),
  ],
  reckon: (g) => ({
    rise: oilCanStepRectangle(g.t!, g.a!, g.b!),
    stress: panelBuckling(g.t!, g.b!),
    camber: camberFor(g.b!),
  }),
  sources: [
    'S. Timoshenko and J. Gere, Theory of Elastic Stability (1961), § 9.2',
    'Camber: common practice, no source',
  ],
})

const landing = defineReckoner({
  id: 'landing-force',
  title: 'Force of landing on a deck',
  trade: 'strength',
  says: 'A weight dropped on a spring: legs and deck in series. Stiff legs land hardest.',
  inputs: [
    { name: 'mass', says: 'Of the rider.', kind: 'mass', unit: 'kg', min: 1, max: 300 },
    mm('height', 'Of the drop.', { min: 0, max: 3 }),
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
    const weight = g.mass! * 9.80665
    const factor = dropFactor(g.height!, g.stiffness!, weight)
    return { factor, force: factor * weight }
  },
  sources: ['Energy of a falling weight on a spring; legs about 20 kN/m, from memory'],
})

const hatch = defineReckoner({
  id: 'hatch-opening',
  title: 'What a hatch opening needs round it',
  trade: 'strength',
  says: 'Section to put back, corner radius, and stiffness of the coaming for stringers cut through.',
  inputs: [
    mm('length', 'Along the craft.', { min: 0.02 }),
    mm('width', 'Across the craft.', { min: 0.02 }),
    sheet,
    mm('radius', 'Corner radius.', { min: 0 }),
    { name: 'cut', says: 'Stringers cut through.', kind: 'count', unit: '1', min: 0, max: 20, assumed: 0 },
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
      length: g.length!,
      width: g.width!,
      t: g.t!,
      cornerRadius: g.radius!,
      cut: g.cut!,
      stringerInertia: g.inertia!,
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

const sheetStrength = defineReckoner({
  id: 'sheet-strength',
  title: 'Strength of aluminium sheet, plain and welded',
  trade: 'strength',
  says: 'Least strengths as bought and within about 25 mm of a weld, and what a service load may use.',
  inputs: [alloy],
  outputs: [
    out('yield', 'Yield, as bought.', 'pressure', 'MPa'),
    out('ultimate', 'Ultimate, as bought.', 'pressure', 'MPa'),
    out('weldedYield', 'Yield beside a weld.', 'pressure', 'MPa'),
    out('weldedUltimate', 'Ultimate beside a weld.', 'pressure', 'MPa'),
    out('service', 'Service, 0.6 of yield beside a weld.', 'pressure', 'MPa'),
    out('density', 'Density.', 'density', 'kg/m³'),
  ],
  reckon: (_, w) => {
    const a = alloyOf(w.alloy!)
    const s = strengthOf(a, true)
    return {
      yield: a.yield,
      ultimate: a.ultimate,
      weldedYield: s.yield,
      weldedUltimate: s.ultimate,
      service: 0.6 * s.yield,
      density: a.density,
    }
  },
  sources: [
    'EN 485-2; ASTM B209, from memory',
    'American Bureau of Shipping, Guide for High Speed Craft, 2-5-A1 table 2',
  ],
  cautions: ['Alloys with more than 3 % magnesium (5083, 5086) are not for long spells above 65 °C.'],
})

export const strengthReckoners: readonly Reckoner[] = [
  deckBay,
  plateEven,
  onFoam,
  sandwich,
  stringer,
  frame,
  foamAllow,
  rivets,
  oilCan,
  landing,
  hatch,
  sheetStrength,
  ...heatReckoners,
]
