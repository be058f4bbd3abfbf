/** Handbook questions of rings, glands, layer lines, lips and gaskets. */
import {
  celsius,
  choice,
  count,
  kPa,
  litresPerMinute,
  megapascals,
  millipascalSeconds,
  mm,
  newtons,
  percent,
  plainRatio,
  portOf,
} from '../../base/answers/portMakers.ts'
import { defineReckoner, type Reckoner } from '../../base/answers/reckoner.ts'
import { sealMaterials } from '../../craft/schema/sealFields.ts'
import { gasketPress, screwSpacing } from './gasketFlat.ts'
import { chooseRing, drawnGroove, isNoRing } from './ringChoice.ts'
import { freeRing, ringOf } from './ringSizes.ts'
import { closingLoad, type GlandKind, glandState, ringModulus, thinned } from './sealGland.ts'
import { leakAcross, lineDepth, lipPress } from './sealLeak.ts'
import { type Liquid, type SealMaterial, sealDataOf, swellOf } from './sealMaterials.ts'

const newtonsAMm = portOf('lineLoad', 'N/mm')
const glands = 'Handbooks of seal makers: glands, from memory; face grooves compared with a printed table'
const johnson = 'K. L. Johnson, Contact Mechanics (1985), from memory'
const kind = choice('kind', 'Between two faces, round a plug, or in the bore round a rod.', [
  'face',
  'plug',
  'bore',
])
const section = mm('section', 'Thickness of the ring.', 0.5e-3, 20e-3)
const inside = mm('inside', 'Across the inside of the ring, lying free.', 1e-3, 1)
const material = choice('material', 'Rubber of the ring.', sealMaterials)
const liquids = ['petrol and ethanol', 'petrol', 'water'] as const
const liquid = choice('liquid', 'That it lies in.', liquids)
const warmth = celsius('temperature', 'It comes to.', 233, 473, 313.15)

const size = defineReckoner({
  id: 'ring-size',
  title: 'O-ring by its dash size',
  trade: 'prints',
  says: 'Inside and section of an O-ring of the inch series, with their tolerances.',
  inputs: [count('dash', 'Dash size, as 214.', 6, 445)],
  outputs: [
    mm('inside', 'Across the inside.'),
    mm('insideTolerance', 'Either way.'),
    mm('section', 'Thickness.'),
    mm('sectionTolerance', 'Either way.'),
  ],
  reckon: (g) => {
    const { name: _, ...ring } = ringOf(String(g.dash))
    return { ...ring }
  },
  sources: [
    'AS568 and ISO 3601-1 class B, from memory; sizes 150 to 171 and sections compared with printed lists',
  ],
})

const gland = defineReckoner({
  id: 'ring-gland',
  title: 'O-ring in its groove',
  trade: 'prints',
  says: 'Squeeze, fill and stretch of a ring in a groove, nominal and at the worst of all tolerances. Ten per cent of squeeze are the least; a groove that is full leaves a swollen ring no room.',
  inputs: [
    kind,
    inside,
    section,
    mm('seat', 'Face: outside of the groove; plug: floor of the groove; bore: the rod.', 1e-3, 1),
    mm('depth', 'Room for the section.', 0.2e-3, 20e-3),
    mm('width', 'Of the groove.', 0.3e-3, 40e-3),
    mm('sectionDoubt', 'Either way.', 0, 1e-3, 0.1e-3),
    mm('depthDoubt', 'Either way.', 0, 1e-3, 0.05e-3),
    mm('widthDoubt', 'Either way.', 0, 2e-3, 0.1e-3),
    percent('swell', 'Of the ring’s volume.', 0, 3, 0),
  ],
  outputs: [
    percent('squeeze', 'Of the section.'),
    percent('squeezeLeast', 'At the worst.'),
    percent('squeezeMost', 'At the worst.'),
    percent('fill', 'Of the groove.'),
    percent('fillMost', 'At the worst, swollen.'),
    percent('stretch', 'Of its inside; below nought it is crowded.'),
  ],
  reckon: (g, w) => {
    const ring = { ...freeRing(g.inside, g.section), insideTolerance: 0, sectionTolerance: g.sectionDoubt }
    const { depth, width, seat, depthDoubt, widthDoubt } = g
    const state = glandState(
      ring,
      { kind: w.kind as GlandKind, seat, depth, width, seatDoubt: 0, depthDoubt, widthDoubt },
      g.swell,
    )
    return {
      squeeze: state.squeeze.value,
      squeezeLeast: state.squeeze.low,
      squeezeMost: state.squeeze.high,
      fill: state.fill.value,
      fillMost: state.fill.high,
      stretch: state.stretch.value,
    }
  },
  sources: [glands],
})

const groove = defineReckoner({
  id: 'ring-groove',
  title: 'Groove for an O-ring',
  trade: 'prints',
  says: 'Depth and width of a groove for a ring, the middle of what handbooks give; wider for one that swells.',
  inputs: [
    choice('kind', 'Between two faces, or round a plug.', ['face', 'plug']),
    section,
    percent('swell', 'Of its volume.', 0, 3, 0),
    choice('printer', 'What the groove is made on.', ['filament', 'resin']),
  ],
  outputs: [mm('depth', 'Of the groove.'), mm('width', 'Of the groove.')],
  reckon: (g, w) => {
    const ring = freeRing(Math.max(10 * g.section, 1e-3), g.section)
    const { depth, width } = drawnGroove(w.kind as 'face' | 'plug', ring, g.swell, {
      kind: w.printer as 'filament' | 'resin',
    })
    return { depth, width }
  },
  sources: [glands],
})

const choose = defineReckoner({
  id: 'ring-for-a-place',
  title: 'O-ring for a cap or a hatch',
  trade: 'prints',
  says: 'The thickest ring of the table that has room, and its groove. Between faces it lies between two diameters; round a plug the outer one is the bore. Says so where none goes.',
  inputs: [
    choice('kind', 'Between two faces, or round a plug.', ['face', 'plug']),
    mm('inner', 'Inside of the face; nought for a plug.', 0, 1, 0),
    mm('outer', 'Outside of the face; the bore for a plug.', 3e-3, 1),
    material,
    liquid,
  ],
  outputs: [
    mm('inside', 'Of the ring.'),
    mm('section', 'Of the ring.'),
    mm('seat', 'Outside of a face groove; floor of a plug’s.'),
    mm('depth', 'Of the groove.'),
    mm('width', 'Of the groove.'),
    percent('squeeze', 'Of its section.'),
  ],
  reckon: (g, w) => {
    const swell = swellOf(w.material as SealMaterial, w.liquid as Liquid, 313.15)
    const got = chooseRing({
      kind: w.kind as 'face' | 'plug',
      inner: g.inner,
      outer: g.outer,
      wall: 0.2e-3,
      swell,
      printer: { kind: 'filament' },
    })
    if (isNoRing(got))
      throw new RangeError(
        `${got.field}: ${Math.round(got.value * 1e5) / 100} mm is outside what the nearest ring wants, ${Math.round(got.limit * 1e5) / 100} mm`,
      )
    const { seat, depth, width } = got.gland
    return {
      inside: got.ring.inside,
      section: got.ring.section,
      seat,
      depth,
      width,
      squeeze: got.state.squeeze.value,
    }
  },
  sources: [glands, 'AS568, from memory'],
})

const load = defineReckoner({
  id: 'ring-load',
  title: 'Force that closes an O-ring',
  trade: 'prints',
  says: 'Force a millimetre and in all to squeeze a ring; what a cap’s thread or a lid’s screws have to give.',
  inputs: [
    section,
    percent('squeeze', 'Of the section.', 0.01, 0.5, 0.25),
    mm('diameter', 'Across the middle of the ring.', 1e-3, 2),
    megapascals('modulus', 'Of the rubber; 5.5 MPa at 70 degrees.', 0.5e6, 30e6, ringModulus),
  ],
  outputs: [newtonsAMm('load', 'Along the ring.'), newtons('total', 'In all.')],
  reckon: (g) => {
    const along = closingLoad(g.section, g.squeeze, g.modulus)
    return { load: along, total: along * Math.PI * g.diameter }
  },
  sources: ['P. B. Lindley (1967), as quoted in handbooks, from memory'],
})

const swelling = defineReckoner({
  id: 'ring-swelling',
  title: 'Swelling of rubber',
  trade: 'prints',
  says: 'Growth of a ring’s volume at its worst by a liquid and by warmth, and what a stretched ring has left of its section.',
  inputs: [material, liquid, warmth, inside, section, mm('seat', 'Diameter it is stretched onto.', 1e-3, 1)],
  outputs: [
    percent('swell', 'Of its volume.'),
    mm('thinned', 'Section once stretched.'),
    celsius('cold', 'Below this it is stiff.'),
    celsius('hot', 'Above this it hardens.'),
  ],
  reckon: (g, w) => {
    const data = sealDataOf(w.material as SealMaterial)
    return {
      swell: swellOf(w.material as SealMaterial, w.liquid as Liquid, g.temperature),
      thinned: thinned(g, g.seat),
      cold: data.cold,
      hot: data.hot,
    }
  },
  sources: ['Handbooks of seal makers: swelling in fuels, from memory'],
  cautions: ['Natural rubber, silicone and EPDM go to pieces in petrol.'],
})

const lines = defineReckoner({
  id: 'leak-past-layer-lines',
  title: 'Leak past layer lines',
  trade: 'prints',
  says: 'Whether a ring fills the lines of layers that run across its seat, and about how much runs past; an order of magnitude. Lines along the ring do not leak.',
  inputs: [
    mm('diameter', 'Of the ring.', 1e-3, 1),
    section,
    percent('squeeze', 'Of the section.', 0.01, 0.5, 0.2),
    choice('printer', 'Kind of printer.', ['filament', 'resin']),
    mm('layer', 'Height of a layer.', 0.01e-3, 1e-3, 0.2e-3),
    kPa('over', 'Pressure across the seal.', 1, 1e6, 20.7e3),
    millipascalSeconds('viscosity', 'Petrol 0.6, water 1.1.', 0.1e-3, 1, 0.6e-3),
  ],
  outputs: [
    megapascals('pressure', 'Of the ring on its seat.'),
    megapascals('needed', 'To fill the lines.'),
    percent('open', 'Part of their depth that stays open.'),
    litresPerMinute('leak', 'That runs past.'),
    mm('depth', 'Of the lines, reckoned.'),
  ],
  reckon: (g, w) => {
    const printer = { kind: w.printer as 'filament' | 'resin', layer: g.layer }
    return { ...leakAcross(g, printer, g.over, g.viscosity), depth: lineDepth(printer) }
  },
  sources: [johnson],
})

const lip = defineReckoner({
  id: 'lip-seal',
  title: 'Lip that seals',
  trade: 'prints',
  says: 'How hard a soft lip presses on its seat: along it, and at its edge. Over layer lines that run along the lip a line of contact is enough; bent less than the seat is out of round, it gapes.',
  inputs: [
    mm('thickness', 'Of the lip.', 0.2e-3, 10e-3),
    mm('length', 'That stands free.', 0.5e-3, 40e-3),
    mm('bent', 'How far the seat bends it.', 0.05e-3, 13e-3),
    mm('edge', 'Radius of its edge.', 0.05e-3, 5e-3, 0.3e-3),
    megapascals('modulus', 'Of the rubber; printed soft filament 10 to 25.', 0.5e6, 60e6, 12e6),
  ],
  outputs: [newtonsAMm('load', 'Along the lip.'), megapascals('pressure', 'At its edge.')],
  reckon: lipPress,
  sources: ['A cantilever, and Hertz’s line contact'],
})

const flat = defineReckoner({
  id: 'flat-gasket',
  title: 'Flat gasket',
  trade: 'prints',
  says: 'How hard a strip of solid rubber presses back, and how far apart the screws of its lid may stand. Sponge rubber presses far less.',
  inputs: [
    mm('width', 'Of the strip.', 1e-3, 0.1),
    mm('thickness', 'Of the strip.', 0.3e-3, 20e-3),
    plainRatio('shore', 'Hardness, degrees Shore A.', 30, 70, 40),
    percent('squeeze', 'Of its thickness.', 0.01, 0.5, 0.2),
    portOf('plateStiffness', 'N·m')('stiffness', 'Of the lid: E t³ / 12 for a plain sheet.', 1e-3, 1e6),
    mm('edge', 'Width of the lid’s rim that bends between screws.', 1e-3, 0.3, 0.03),
  ],
  outputs: [
    megapascals('pressure', 'Of the gasket.'),
    newtonsAMm('load', 'Along it.'),
    mm('spacing', 'Of screws, so that the squeeze between them is no less than nine tenths.'),
  ],
  reckon: (g) => {
    const { pressure, load: along } = gasketPress(g)
    return {
      pressure,
      load: along,
      spacing: screwSpacing(g.stiffness * g.edge, along, 0.1 * g.squeeze * g.thickness),
    }
  },
  sources: [
    'A. N. Gent and P. B. Lindley (1959): bonded rubber strips, from memory; a beam held at both ends',
  ],
})

export const sealReckoners: readonly Reckoner[] = [
  size,
  gland,
  groove,
  choose,
  load,
  swelling,
  lines,
  lip,
  flat,
]
