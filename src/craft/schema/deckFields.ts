import { choice, group, list, quantity, text, variant } from '../fields.ts'
import { foamChoice } from './foamFields.ts'

const common = {
  name: text({ label: 'Name', gloss: 'Which bay.', maxLength: 100 }),
  length: quantity('length', {
    label: 'Length',
    gloss: 'Of the bay along the craft, between what holds the sheet up.',
    unit: 'mm',
    min: 30,
    max: 4000,
    measure: { what: 'measure between the frames', with: 'tape', minutes: 2 },
  }),
  width: quantity('length', {
    label: 'Width',
    gloss: 'Of the bay across the craft.',
    unit: 'mm',
    min: 30,
    max: 3000,
    measure: { what: 'measure between the sides or carlings', with: 'tape', minutes: 2 },
  }),
  skin: quantity('length', {
    label: 'Skin',
    gloss: 'Thickness of the deck sheet.',
    unit: 'mm',
    min: 0.3,
    max: 12,
    assumed: { value: 1.5, low: 1, high: 2, why: 'thin sheet as home-built decks have' },
    measure: { what: 'close a caliper on an edge', with: 'caliper', minutes: 1 },
  }),
} as const

const bay = variant(
  { label: 'Bay', gloss: 'One field of the deck and what holds it up.', tag: 'kind' },
  {
    alone: { gloss: 'Sheet that spans the bay by itself.', fields: common },
    stringers: {
      gloss: 'Sheet on stringers along the bay.',
      fields: {
        ...common,
        spacing: quantity('length', {
          label: 'Spacing',
          gloss: 'From stringer to stringer.',
          unit: 'mm',
          min: 30,
          max: 1000,
        }),
        'stringer height': quantity('length', {
          label: 'Stringer height',
          gloss: 'Of a folded hat under the sheet.',
          unit: 'mm',
          min: 8,
          max: 150,
          assumed: { value: 30, low: 20, high: 40, why: 'hats folded from deck sheet' },
        }),
        'stringer sheet': quantity('length', {
          label: 'Stringer sheet',
          gloss: 'Thickness of the sheet the hats are folded from.',
          unit: 'mm',
          min: 0.5,
          max: 6,
          assumed: { of: 'skin', times: 1, low: 0.8, high: 1.3, why: 'folded from the same sheet' },
        }),
      },
    },
    foam: {
      gloss: 'Sheet that lies on foam.',
      fields: {
        ...common,
        foam: foamChoice,
        depth: quantity('length', {
          label: 'Foam depth',
          gloss: 'Of the foam under the sheet down to something firm.',
          unit: 'mm',
          min: 5,
          max: 1000,
        }),
      },
    },
    sandwich: {
      gloss: 'Two sheets glued to a foam core.',
      fields: {
        ...common,
        foam: foamChoice,
        core: quantity('length', {
          label: 'Core',
          gloss: 'Thickness of the foam between the sheets.',
          unit: 'mm',
          min: 5,
          max: 150,
        }),
        'lower skin': quantity('length', {
          label: 'Lower skin',
          gloss: 'Thickness of the sheet under the core.',
          unit: 'mm',
          min: 0.3,
          max: 6,
          assumed: { of: 'skin', times: 1, low: 0.7, high: 1, why: 'the same sheet on both sides' },
        }),
      },
    },
  },
)

export const deckSection = group(
  { label: 'Deck', gloss: 'The sheet a rider stands on, bay by bay.' },
  {
    alloy: choice(['5052-H32', '5052-O', '5083-O/H111', '5083-H116', '5086-H116', '6061-T6'], {
      label: 'Alloy',
      gloss: 'Sheet of the deck, with its temper.',
      assumed: { value: '5052-H32', why: 'the usual sheet that bends and welds' },
    }),
    joined: choice(['welded', 'riveted', 'glued'], {
      label: 'Joined',
      gloss: 'How the sheet is held at the edges of its bays: welds soften it, rivets slip a little.',
      assumed: { value: 'riveted', why: 'thin sheet is seldom welded all round' },
    }),
    'rivet size': quantity('length', {
      label: 'Rivet size',
      gloss: 'Diameter of blind rivets.',
      unit: 'mm',
      min: 2.4,
      max: 6.5,
      assumed: { value: 4.8, low: 4, high: 4.8, why: 'the usual size in thin deck sheet' },
    }),
    'rivet pitch': quantity('length', {
      label: 'Rivet pitch',
      gloss: 'From rivet to rivet.',
      unit: 'mm',
      min: 6,
      max: 300,
      assumed: { value: 30, low: 20, high: 50, why: 'about six diameters, as sealed seams have' },
    }),
    bays: list(
      { label: 'Bays', gloss: 'The fields of the deck that carry feet, knees or a seat.', maxItems: 40 },
      bay,
    ),
  },
)

export const hotPartsSection = list(
  {
    label: 'Hot parts',
    gloss: 'Pipes and mufflers near foam or deck.',
  },
  group(
    { label: 'Hot part', gloss: 'A pipe or muffler and the foam nearest to it.' },
    {
      name: text({ label: 'Name', gloss: 'Which part.', maxLength: 100 }),
      diameter: quantity('length', {
        label: 'Diameter',
        gloss: 'Outside diameter of the hot part where it is nearest.',
        unit: 'mm',
        min: 5,
        max: 400,
      }),
      temperature: quantity('temperature', {
        label: 'Skin temperature',
        gloss: 'Of the outside of the hot part after a hard run.',
        unit: '°C',
        min: 20,
        max: 900,
        assumed: { value: 350, low: 200, high: 500, why: 'a two-stroke pipe at its belly, dry' },
        measure: { what: 'touch it with a thermocouple after a run', with: 'thermometer', minutes: 5 },
      }),
      distance: quantity('length', {
        label: 'Distance',
        gloss: 'From the middle of the hot part to the face of the nearest foam.',
        unit: 'mm',
        min: 3,
        max: 3000,
        measure: { what: 'measure the gap and add half the diameter', with: 'tape', minutes: 2 },
      }),
      foam: foamChoice,
      'foam depth': quantity('length', {
        label: 'Foam depth',
        gloss: 'Of the foam behind its face.',
        unit: 'mm',
        min: 5,
        max: 1000,
        assumed: { value: 100, low: 50, high: 200, why: 'a block between frames' },
      }),
      guard: choice(['bare', 'shield', 'wrap'], {
        label: 'Guard',
        gloss: 'Nothing between, one bright plate with air on both sides, or glass wrap on the part.',
        assumed: { value: 'bare', why: 'counted on only when said' },
      }),
    },
  ),
)
