import { choice, group, list, quantity, text } from '../fields.ts'

const tape = (what: string, minutes = 2) => ({ what, with: 'tape', minutes })

/** What air passes through. */
const bayOpenings = list(
  {
    label: 'Openings',
    gloss:
      'Every opening that air passes through: louvres, ducts, slots, the gap of a lid that is left open.',
    maxItems: 30,
  },
  group(
    { label: 'Opening', gloss: 'One opening of the bay.' },
    {
      name: text({ label: 'Name', gloss: 'Which opening.', maxLength: 100 }),
      area: quantity('area', {
        label: 'Area',
        gloss: 'Clear of bars and slats, all openings of this kind at this height together.',
        unit: 'cm²',
        min: 0.1,
        max: 20_000,
        measure: tape('measure across each hole and count them'),
      }),
      height: quantity('length', {
        label: 'Height',
        gloss: 'Its middle above the floor of the bay.',
        unit: 'mm',
        min: 0,
        max: 3000,
        assumed: { value: 180, low: 100, high: 300, why: 'in the deck or high in a side of a small hull' },
        measure: tape('measure up from the floor of the bay'),
      }),
      tall: quantity('length', {
        label: 'Tall',
        gloss: 'From its lower edge to its upper one; nought for one that lies flat in the deck.',
        unit: 'mm',
        min: 0,
        max: 1500,
        assumed: { value: 40, low: 0, high: 80, why: 'a slot or a row of holes' },
      }),
      splash: choice(['open', 'louvre', 'baffle'], {
        label: 'Against splash',
        gloss:
          'A bare hole, slats, or a box with a baffle that water cannot run through: each lets less air pass.',
        assumed: { value: 'open', why: 'a bare hole unless said' },
      }),
      faces: choice(['side', 'forward', 'aft', 'up'], {
        label: 'Faces',
        gloss:
          'Which way it looks: one that looks forward is blown into under way, one that looks aft is drawn from.',
        assumed: { value: 'side', why: 'counted on only when said' },
      }),
    },
  ),
)

const bayFan = group(
  { label: 'Fan', gloss: 'An electric fan that changes the air of the bay.', optional: true },
  {
    flow: quantity('volumeFlow', {
      label: 'Flow',
      gloss: 'With nothing before or behind it, as its maker gives it.',
      unit: 'L/s',
      min: 0.1,
      max: 500,
    }),
    pressure: quantity('pressure', {
      label: 'Pressure',
      gloss: 'Against which it moves nothing any more.',
      unit: 'Pa',
      min: 5,
      max: 5000,
      assumed: { value: 100, low: 50, high: 250, why: 'small axial blowers of boats' },
    }),
    blows: choice(['out', 'in'], {
      label: 'Blows',
      gloss: 'Out of the bay or into it.',
      assumed: { value: 'out', why: 'so that vapour is drawn off low down' },
    }),
    height: quantity('length', {
      label: 'Height',
      gloss: 'Where it picks air up, or lets it in, above the floor of the bay.',
      unit: 'mm',
      min: 0,
      max: 3000,
      assumed: { value: 50, low: 20, high: 100, why: 'low, where vapour lies' },
    }),
    stays: choice(['on', 'off'], {
      label: 'After stopping',
      gloss: 'Whether it runs on for some minutes once the engine is off.',
      assumed: { value: 'off', why: 'counted on only when said' },
    }),
  },
)

const bayWater = group(
  {
    label: 'Cooling water',
    gloss: 'Water tapped from the jet before its nozzle and led through what is cooled.',
    optional: true,
  },
  {
    bore: quantity('length', {
      label: 'Bore',
      gloss: 'Of the hose, inside.',
      unit: 'mm',
      min: 1,
      max: 40,
      assumed: { value: 8, low: 6, high: 10, why: 'the usual hose' },
      measure: { what: 'measure across the inside of the hose', with: 'caliper', minutes: 1 },
    }),
    narrowest: quantity('length', {
      label: 'Narrowest place',
      gloss: 'Bore of the smallest fitting, strainer or jacket passage on its way.',
      unit: 'mm',
      min: 0.5,
      max: 40,
      assumed: { of: 'bore', times: 0.7, low: 0.5, high: 0.9, why: 'barbs are narrower than their hose' },
    }),
    length: quantity('length', {
      label: 'Length',
      gloss: 'Of hose, there and back.',
      unit: 'm',
      min: 0.05,
      max: 20,
      assumed: { value: 1.5, low: 0.8, high: 3, why: 'from the jet to the engine and out' },
    }),
    outlet: quantity('length', {
      label: 'Outlet height',
      gloss: 'Where it runs out, above the water outside.',
      unit: 'mm',
      min: -500,
      max: 3000,
      assumed: { value: 150, low: 50, high: 300, why: 'in sight above the water, as a tell-tale' },
    }),
    cools: choice(['engine', 'pipe', 'engine and pipe'], {
      label: 'Cools',
      gloss: 'The cylinder, a jacket on the pipe, or both one after the other.',
      assumed: { value: 'engine', why: 'the usual jacket' },
    }),
  },
)

export const baySection = group(
  {
    label: 'Engine bay',
    gloss: 'The space the engines stand in, what warms it and how air passes through it.',
    optional: true,
  },
  {
    volume: quantity('volume', {
      label: 'Volume',
      gloss: 'Of air in the bay; worked out from hull, bulkheads and foam when left out.',
      unit: 'L',
      min: 3,
      max: 5000,
      optional: true,
      measure: tape('length × width × depth inside, less what stands in it', 5),
    }),
    walls: quantity('area', {
      label: 'Walls',
      gloss:
        'Floor, sides and lid that its air touches; worked out from the volume and the depth of the hull when left out.',
      unit: 'm²',
      min: 0.05,
      max: 60,
      optional: true,
    }),
    cooling: choice(['fins', 'blown', 'ducted', 'water'], {
      label: 'Engine cooling',
      gloss:
        'Bare fins in the bay; the engine’s own fan, its warm air left in the bay; the same led out through a duct; or water. As the engine says when left out, else fins.',
      optional: true,
    }),
    pipe: choice(['bare', 'wrapped', 'shielded', 'water-cooled', 'outside'], {
      label: 'Pipe and muffler',
      gloss:
        'How they stand in the bay, or outside it; as the engine’s exhaust says when left out, else bare.',
      optional: true,
    }),
    'engine air': choice(['bay', 'tube'], {
      label: 'Engine air',
      gloss:
        'Whether the carburettor draws from the bay or through a tube from outside; by snorkel and openings when left out.',
      optional: true,
    }),
    deck: choice(['bare metal', 'light', 'dark'], {
      label: 'Deck in the sun',
      gloss: 'Colour of the lid and deck over the bay.',
      assumed: { value: 'bare metal', why: 'a thin aluminium deck, dulled' },
    }),
    printed: choice(['none', 'PLA', 'PETG', 'ABS', 'ASA', 'PC', 'PA12', 'POM', 'PVDF', 'HDPE'], {
      label: 'Printed parts',
      gloss: 'The softest plastic of a printed part that stands in the bay.',
      assumed: { value: 'none', why: 'counted on only when said' },
    }),
    openings: bayOpenings,
    fan: bayFan,
    water: bayWater,
  },
)
