import { box, flag, group, list, place, quantity, text } from '../fields.ts'

export const weightsSection = list(
  {
    label: 'Weights',
    gloss:
      'Everything on board but the rider. Home lists are often 5 to 10 % light: fasteners, weld, wet foam.',
  },
  group(
    { label: 'Weight', gloss: 'One thing or a group of things.' },
    {
      name: text({ label: 'Name', gloss: 'What it is.', maxLength: 100 }),
      mass: quantity('mass', {
        label: 'Mass',
        gloss: 'As it goes afloat.',
        unit: 'kg',
        min: 0,
        max: 1000,
        measure: { what: 'hang it on the scale', with: 'luggage scale', minutes: 4 },
      }),
      at: place({
        label: 'At',
        gloss: 'Its middle: forward of the transom, to port, up from the foot of the transom.',
        max: 10,
        coarse: 0.02,
        measure: {
          what: 'balance it on an edge, then measure where that point sits on board',
          with: 'tape',
          minutes: 5,
        },
      }),
      size: box({
        label: 'Size',
        gloss: 'Length, width and height of a box round it; for how quickly it rolls and pitches.',
        max: 10,
        optional: true,
      }),
      sealed: flag({
        label: 'Sealed',
        gloss: 'Keeps water out when the craft is flooded.',
        assumed: { value: false, why: 'counted on only when said' },
      }),
    },
  ),
)
