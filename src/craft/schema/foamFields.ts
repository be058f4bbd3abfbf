import { choice, flag, group, list, place, quantity, text } from '../fields.ts'

/** Foams by kind and density in kg/m³; their strengths live with the deck. */
export const foamWords = [
  'EPS 12',
  'EPS 15',
  'EPS 18',
  'EPS 22',
  'EPS 29',
  'EPS 38',
  'EPS 46',
  'XPS 21',
  'XPS 25',
  'XPS 29',
  'XPS 35',
  'XPS 48',
  'PU 32',
] as const

/** Which foam, by kind and density. */
export const foamChoice = choice(foamWords, {
  label: 'Foam',
  gloss: 'White bead board (EPS), pink, blue or green board (XPS) or poured (PU), with its density in kg/m³.',
  assumed: { value: 'XPS 25', why: 'the usual house-insulation board' },
})

export const foamSection = list(
  {
    label: 'Foam',
    gloss: 'Blocks of foam inside the hull, as boxes; what of a box lies outside the hull does not count.',
  },
  group(
    { label: 'Block', gloss: 'One block of foam.' },
    {
      name: text({ label: 'Name', gloss: 'Which block.', maxLength: 100 }),
      from: place({ label: 'From', gloss: 'Aft, starboard, lowest corner of its box.', max: 10 }),
      to: place({ label: 'To', gloss: 'Forward, port, highest corner of its box.', max: 10 }),
      foam: foamChoice,
    },
  ),
)

export const compartmentsSection = list(
  {
    label: 'Compartments',
    gloss: 'Spaces between cross bulkheads; without any the whole hull is one that floods.',
  },
  group(
    { label: 'Compartment', gloss: 'One space between two bulkheads.' },
    {
      name: text({ label: 'Name', gloss: 'Which space.', maxLength: 100 }),
      from: quantity('length', {
        label: 'From',
        gloss: 'Its after end, forward of the transom.',
        unit: 'm',
        min: 0,
        max: 10,
      }),
      to: quantity('length', {
        label: 'To',
        gloss: 'Its forward end, forward of the transom.',
        unit: 'm',
        min: 0,
        max: 10,
      }),
      sealed: flag({
        label: 'Sealed',
        gloss: 'Stays dry when the craft is swamped: no hatch, no hose, no cable into it.',
        assumed: { value: false, why: 'counted on only when said' },
      }),
      permeability: quantity('ratio', {
        label: 'Permeability',
        gloss: 'Share of the space that water can fill.',
        unit: '%',
        min: 0,
        max: 100,
        assumed: { value: 92, low: 80, high: 98, why: 'between an engine bay and an empty one' },
      }),
    },
  ),
)
