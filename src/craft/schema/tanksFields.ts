import { choice, count, flag, list, place, quantity, text, variant } from '../fields.ts'
import { neckGroup } from './neckFields.ts'

const tape = (what: string, minutes = 3) => ({ what, with: 'tape', minutes })
const inside = (label: string, gloss: string, max: number) =>
  quantity('length', {
    label,
    gloss,
    unit: 'mm',
    min: 20,
    max,
    measure: tape('measure outside and take off twice the sheet'),
  })

const fixed = (value: number, low: number, high: number, why: string) => ({ value, low, high, why })

/** What every tank has, whatever its shape. The sheet and lines of a tank to be made can join these. */
const common = {
  name: text({ label: 'Name', gloss: 'Which tank.', maxLength: 100 }),
  holds: choice(['petrol', 'petrol and oil', 'diesel', 'water', 'other'], {
    label: 'Holds',
    gloss: 'The liquid in it; for any other its density has to be given.',
    assumed: { value: 'petrol and oil', why: 'two-strokes burn a mixture' },
  }),
  sheet: quantity('length', {
    label: 'Sheet',
    gloss: 'Thickness of the sheet it is to be welded of; leave it out for a tank one has.',
    unit: 'mm',
    min: 0.5,
    max: 8,
    optional: true,
    measure: { what: 'measure the sheet at three places', with: 'caliper', minutes: 1 },
  }),
  density: quantity('density', {
    label: 'Density',
    gloss: 'Of the liquid.',
    unit: 'kg/m³',
    min: 500,
    max: 2000,
    assumed: {
      by: 'holds',
      each: {
        petrol: fixed(745, 720, 775, 'EN 228, petrol at 15 °C'),
        'petrol and oil': fixed(749, 724, 780, 'EN 228 petrol with 2 to 4 % of oil at 880 kg/m³'),
        diesel: fixed(833, 820, 845, 'EN 590, diesel at 15 °C'),
        water: fixed(999, 996, 1000, 'fresh water'),
      },
      why: 'what such liquids weigh',
    },
  }),
  foot: place({
    label: 'Foot',
    gloss:
      'Middle of the tank’s floor inside: forward of the transom, to port, up from the foot of the transom.',
    max: 10,
    coarse: 0.02,
    measure: tape('measure from the transom to the middle of the tank, and up from the keel to its floor'),
  }),
  filled: quantity('ratio', {
    label: 'Filled',
    gloss: 'Share of the tank’s inside that is liquid.',
    unit: '%',
    min: 0,
    max: 100,
    assumed: fixed(50, 5, 95, 'half full: between setting out and coming home'),
    measure: { what: 'dip a clean stick and compare with the height of the tank', with: 'stick', minutes: 1 },
  }),
  liquid: quantity('volume', {
    label: 'Liquid',
    gloss: 'How much is in it, instead of the share.',
    unit: 'L',
    min: 0,
    max: 1000,
    optional: true,
    measure: { what: 'fill it from a marked can', with: 'marked can', minutes: 5 },
  }),
  sealed: flag({
    label: 'Sealed',
    gloss: 'Cap and vent keep water out when the craft is flooded, so that the whole tank lifts.',
    assumed: { value: false, why: 'counted on only when said' },
  }),
  neck: neckGroup,
} as const

const lies = choice(['along', 'across'], {
  label: 'Lies',
  gloss: 'Its axis along the craft or across it.',
  assumed: { value: 'across', why: 'where a round tank is usually strapped down' },
})

const tank = variant(
  {
    label: 'Tank',
    gloss: 'One tank and what is in it. Its own metal stands in the weights, without the liquid.',
    tag: 'kind',
  },
  {
    box: {
      gloss: 'Flat sides.',
      fields: {
        ...common,
        length: inside('Length', 'Inside, along the craft.', 3000),
        width: inside('Width', 'Inside, across the craft.', 2000),
        height: inside('Height', 'Inside.', 1500),
        cells: count({
          label: 'Cells',
          gloss:
            'Liquid-tight cells side by side; a baffle with holes makes none, as the liquid levels out through it.',
          min: 1,
          max: 10,
          assumed: { value: 1, low: 1, high: 1, why: 'one undivided space' },
        }),
      },
    },
    'lying cylinder': {
      gloss: 'Round, on its side.',
      fields: {
        ...common,
        diameter: inside('Diameter', 'Inside.', 1500),
        length: inside('Length', 'Inside, along its axis.', 3000),
        lies,
      },
    },
    'standing cylinder': {
      gloss: 'Round, on end.',
      fields: {
        ...common,
        diameter: inside('Diameter', 'Inside.', 1500),
        height: inside('Height', 'Inside.', 1500),
      },
    },
  },
)

export const tanksSection = list(
  {
    label: 'Tanks',
    gloss:
      'Tanks with liquid that moves when the craft heels or trims. The liquid’s weight is counted from here, so the weights list carries the empty tank.',
    maxItems: 12,
  },
  tank,
)
