/** Reckoners of bent and flat parts: bends, boxes, caps, transitions, and the scale of a print. */
import { choice, cm2, degrees, gigapascals, megapascals, mm, ratio } from '../../base/answers/portMakers.ts'
import { defineReckoner, type Reckoner } from '../../base/answers/reckoner.ts'
import { printScale } from '../../drawing/printScale.ts'
import {
  bendAllowance,
  bendDeduction,
  leastBend,
  neutralLayer,
  neutralMeasured,
  springsTo,
} from '../../shapes/bends.ts'
import { capBlank } from '../../shapes/endCap.ts'
import { wrapLength } from '../../shapes/profile.ts'
import { tight } from '../../shapes/seam.ts'
import { cornerElement, cornerSector, developSquareToRound } from '../../shapes/squareToRound.ts'
import { sharp, sheet, src, trade } from './patternPorts.ts'

const inside = mm('inside', 'radius inside the bend', 0, 0.2)
const angle = degrees('angle', 'turned', 0.02, (Math.PI * 17) / 18, Math.PI / 2)
const k = ratio('k', 'where the neutral layer lies, part of the thickness from the inside', 0.3, 0.5, 0.41)

const bend = defineReckoner({
  id: 'bend-allowance',
  title: 'Length of sheet in a bend',
  trade,
  says: 'How much flat sheet a bend takes, and by how much its two outside legs together are longer than the flat.',
  inputs: [angle, inside, sheet, k],
  outputs: [
    mm('allowance', 'of flat sheet in the bend'),
    mm('setback', 'from the outside corner to where the bend begins'),
    mm('deduction', 'of the outside legs’ sum, to get the flat'),
  ],
  reckon: (g) => ({
    allowance: bendAllowance(g),
    setback: (g.inside + g.thickness) * Math.tan(g.angle / 2),
    deduction: bendDeduction(g),
  }),
  cautions: [sharp],
  sources: [src.bends],
})

const neutral = defineReckoner({
  id: 'neutral-layer',
  title: 'Neutral layer of a bend',
  trade,
  says: 'Where sheet keeps its length in a bend, by the standard’s formula; a strip of your own sheet, bent and measured, goes before it: ask bend-measured.',
  inputs: [mm('inside', 'radius inside the bend', 2e-4, 0.2), sheet],
  outputs: [ratio('k', 'part of the thickness from the inside')],
  reckon: (g) => ({ k: neutralLayer(Math.max(g.inside, g.thickness / 10), g.thickness) }),
  cautions: [sharp],
  sources: [src.bends],
})

const fromStrip = defineReckoner({
  id: 'bend-measured',
  title: 'Neutral layer from a strip bent and measured',
  trade,
  says: 'Cut a strip, measure it, bend it once, measure both legs outside: where your own sheet keeps its length.',
  inputs: [
    mm('flat', 'length of the strip before', 5e-3, 1),
    mm('legs', 'both outside legs together, after', 5e-3, 1),
    angle,
    inside,
    sheet,
  ],
  outputs: [ratio('k', 'part of the thickness from the inside; 0.3 to 0.5 is to be believed')],
  reckon: (g) => ({ k: neutralMeasured(g.flat, g.legs, g) }),
  cautions: [sharp],
  sources: [src.bends],
})

const spring = defineReckoner({
  id: 'springback',
  title: 'How far a bend springs back',
  trade,
  says: 'The inside radius a bend opens to when it is let go, roughly; and the least radius the sheet bends to across its rolling direction without cracking.',
  inputs: [
    choice('sheet', 'alloy or steel', Object.keys(leastBend)),
    mm('inside', 'radius it is bent round', 5e-4, 0.1),
    sheet,
    megapascals('yield', 'stress of the sheet', 2e7, 1e9),
    gigapascals('modulus', 'of the sheet', 5e10, 2.2e11, 7e10),
  ],
  outputs: [
    mm('springsTo', 'inside radius let go'),
    mm('least', 'inside radius across the rolling direction'),
  ],
  reckon: (g, w) => ({
    springsTo: springsTo(g.inside, g.thickness, g.yield, g.modulus),
    least: leastBend[w.sheet]! * g.thickness,
  }),
  cautions: [sharp],
  sources: [
    'S. Kalpakjian, Manufacturing Processes for Engineering Materials, from memory',
    'handbook tables of least bend radii for sheet of about 1.6 mm, from memory',
  ],
})

const box = defineReckoner({
  id: 'box-wrap',
  title: 'Sheet round a box',
  trade,
  says: 'Length of sheet for a wrap of four right-angled bends, without its seam.',
  inputs: [mm('length', 'outside', 0.01, 2), mm('width', 'outside', 0.01, 2), inside, sheet, k],
  outputs: [mm('wrap', 'length of the blank')],
  reckon: (g) => ({ wrap: wrapLength(g.length, g.width, g.inside, g.thickness, g.k) }),
  cautions: [sharp],
  sources: [src.bends],
})

const cap = defineReckoner({
  id: 'cap-blank',
  title: 'Blank of an end cap',
  trade,
  says: 'Disc to cut for a cap with a flange turned over a former, dished or not; by equal areas, so trim the edge after turning it.',
  inputs: [
    mm('diameter', 'mean, of the flange', 0.01, 1),
    mm('flange', 'height', 0, 0.1, 8e-3),
    mm('rise', 'of the dish', 0, 0.1, 0),
  ],
  outputs: [mm('blank', 'diameter')],
  reckon: (g) => ({ blank: capBlank(g.diameter, g.flange, g.rise) }),
  cautions: [sharp],
  sources: [
    'Deep-drawing handbooks (blank of a flanged cup by equal areas), from memory; spherical cap exact',
  ],
})

const transition = defineReckoner({
  id: 'square-to-round',
  title: 'Rectangle drawn into a circle',
  trade,
  says: 'True lengths of a transition from a rectangle to a circle above its middle; mean sizes.',
  inputs: [
    mm('length', 'of the rectangle', 5e-3, 1),
    mm('width', 'of the rectangle', 5e-3, 1),
    mm('diameter', 'of the circle', 5e-3, 1),
    mm('height', 'between them', 5e-3, 2),
    degrees(
      'azimuth',
      'of an element from a corner, from the middle of the long side’s end',
      0,
      Math.PI / 2,
      Math.PI / 4,
    ),
  ],
  outputs: [
    mm('element', 'from the corner to the circle there'),
    degrees('corner', 'sector at each corner'),
    mm('endTriangle', 'height of the triangle on a side of the rectangle’s width'),
    mm('sideTriangle', 'height of the triangle on a side of its length'),
    cm2('area', 'of the pattern'),
  ],
  reckon: (g) => {
    const s = { ...g, radius: g.diameter / 2, offsetX: 0, offsetY: 0 }
    return {
      element: cornerElement(s, g.azimuth),
      corner: cornerSector(s),
      endTriangle: Math.hypot(g.height, g.length / 2 - s.radius),
      sideTriangle: Math.hypot(g.height, g.width / 2 - s.radius),
      area: developSquareToRound(s, { id: 't', title: '', thickness: 1e-3, seam: tight }).area,
    }
  },
  cautions: [sharp],
  sources: [src.drafting],
})

const print = defineReckoner({
  id: 'print-scale',
  title: 'Scale that undoes a printer’s',
  trade,
  says: 'Factors to draw by from the printed 100 mm square. Less than 0.2 % is the paper’s own and is left alone; 94 to 97 mm means that the print was fitted to the page: print again without that first.',
  inputs: [
    mm('width', 'of the printed square', 0.09, 0.11),
    mm('height', 'of the printed square', 0.09, 0.11),
  ],
  outputs: [ratio('x', 'to draw by across'), ratio('y', 'to draw by upward')],
  reckon: (g) => ({ ...printScale(g.width, g.height) }),
  sources: ['100 mm over what was measured; the band left alone is common practice, no source'],
})

export const sheetReckoners: readonly Reckoner[] = [
  bend,
  neutral,
  fromStrip,
  spring,
  box,
  cap,
  transition,
  print,
]
