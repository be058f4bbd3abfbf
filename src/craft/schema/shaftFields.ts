import { choice, count, flag, group, list, type QuantitySpec, quantity, text, variant } from '../fields.ts'
import { boltSizes } from './boltSizes.ts'

const tape = (what: string, minutes = 2) => ({ what, with: 'tape', minutes })
const caliper = (what: string, minutes = 2) => ({ what, with: 'caliper', minutes })

const at = quantity('length', {
  label: 'At',
  gloss: 'Its middle, forward of the transom; only for the drawing.',
  unit: 'm',
  coarse: 0.01,
  min: -2,
  max: 10,
  optional: true,
  measure: tape('measure from the transom along the keel'),
})

/** What a coupling or a hub is made of. */
export const partMaterials = [
  'aluminium',
  'steel',
  'printed nylon',
  'printed nylon with carbon',
  'PETG',
  'ABS',
  'ASA',
  'PLA',
  'PC',
  'POM',
  'HDPE',
] as const

const temperature = quantity('temperature', {
  label: 'Temperature',
  gloss: 'Of the part after a hard run with the bay shut.',
  unit: '°C',
  min: -20,
  max: 200,
  assumed: { value: 55, low: 35, high: 75, why: 'beside a crankcase in a closed bay, no source' },
  measure: { what: 'touch it with a thermocouple after a run', with: 'thermometer', minutes: 5 },
})

const cool = quantity('temperature', {
  label: 'Temperature',
  gloss: 'Of the hub while it runs.',
  unit: '°C',
  min: -20,
  max: 200,
  assumed: { value: 25, low: 15, high: 35, why: 'water all round it' },
})

const coupling = {
  bolts: choice(boltSizes, { label: 'Bolts', gloss: 'Size of its bolts, coarse thread.' }),
  number: count({ label: 'Number', gloss: 'Of bolts that hold the two halves together.', min: 1, max: 24 }),
  circle: quantity('length', {
    label: 'Circle',
    gloss: 'Diameter of the circle through the middles of the bolts.',
    unit: 'mm',
    min: 8,
    max: 400,
    measure: caliper('measure across two opposite bolts, from the middle of one to the middle of the other'),
  }),
  made: choice(partMaterials, { label: 'Made of', gloss: 'The softest thing that the bolts clamp.' }),
  torque: quantity('torque', {
    label: 'Torque',
    gloss: 'The bolts were tightened with; left out when no torque wrench was used.',
    unit: 'N·m',
    min: 0.05,
    max: 400,
    optional: true,
  }),
  locking: choice(['none', 'locker', 'spring washer', 'nut', 'wedge washers', 'wire'], {
    label: 'Locking',
    gloss:
      'What keeps the bolts from turning: thread-locker, a split spring washer, a nut with a nylon ring, wedge-locking washers, or wire.',
    assumed: { value: 'none', why: 'counted on only when said' },
  }),
  tight: choice(['by hand', 'unknown'], {
    label: 'Tightened',
    gloss: 'Without a torque: with a plain key by hand, or nobody knows.',
    assumed: { value: 'unknown', why: 'no torque is given' },
  }),
  thickness: quantity('length', {
    label: 'Thickness',
    gloss: 'Of what the bolts clamp, head to nut, without the washers.',
    unit: 'mm',
    min: 1,
    max: 200,
    assumed: { value: 15, low: 10, high: 22, why: 'a flange of a few millimetres on a disc of ten' },
    measure: caliper('measure under the head to the nut'),
  }),
  soft: quantity('length', {
    label: 'Soft part',
    gloss: 'How much of that thickness is plastic; nothing to say where all of it is metal.',
    unit: 'mm',
    min: 0.5,
    max: 200,
    assumed: { of: 'thickness', times: 0.67, low: 0.5, high: 1, why: 'a printed disc on a metal flange' },
    measure: caliper('measure the plastic alone'),
  }),
  washers: choice(['none', 'plain', 'wide', 'disc springs'], {
    label: 'Washers',
    gloss: 'Under the heads: none, plain ones, wide ones of three diameters, or disc springs on wide ones.',
    assumed: { value: 'plain', why: 'the usual washer' },
  }),
  sleeves: flag({
    label: 'Sleeves',
    gloss: 'Metal sleeves through the plastic, as long as it is thick, that take the clamp of the bolts.',
    assumed: { value: false, why: 'counted on only when said' },
  }),
  into: choice(['nut', 'metal', 'insert', 'plastic'], {
    label: 'Into',
    gloss:
      'What the bolts are screwed into: a nut, tapped metal, a metal insert in plastic, or plastic itself.',
    assumed: { value: 'nut', why: 'bolts through and through' },
  }),
  engagement: quantity('length', {
    label: 'Thread held',
    gloss: 'Length of thread that holds, where the bolts go into metal, an insert or plastic.',
    unit: 'mm',
    min: 1,
    max: 100,
    optional: true,
    measure: caliper('measure how far the bolt goes in, less its point'),
  }),
  class: choice(['A2-70', 'steel 4.6', 'steel 8.8', 'steel 10.9', 'steel 12.9'], {
    label: 'Class',
    gloss: 'Strength on the heads of the bolts.',
    assumed: { value: 'A2-70', why: 'stainless bolts, as sold for wet places' },
  }),
  pins: count({
    label: 'Pins',
    gloss: 'Dowel pins that carry torque beside the bolts.',
    min: 0,
    max: 24,
    assumed: { value: 0, low: 0, high: 0, why: 'counted on only when said' },
  }),
  pin: quantity('length', {
    label: 'Pin',
    gloss: 'Diameter of a dowel pin.',
    unit: 'mm',
    min: 1,
    max: 20,
    assumed: { value: 5, low: 4, high: 6, why: 'a usual pin' },
  }),
  element: choice(['none', 'rubber'], {
    label: 'Element',
    gloss: 'Rubber or urethane between the halves that gives a little, or none.',
    assumed: { value: 'none', why: 'halves bolted face to face' },
  }),
  temperature,
  at,
} as const

/** How a part sits on its shaft; the water round an impeller keeps its hub cool. */
const holdWarm = <const T extends QuantitySpec<'assumed'>>(warm: T) =>
  group(
    { label: 'Held', gloss: 'How it is held on its shaft.' },
    {
      by: choice(['key', 'spline', 'clamp', 'set screw', 'pin', 'thread', 'welded'], {
        label: 'By',
        gloss:
          'A key, splines, a split hub clamped by screws, set screws, a cross pin, a thread against a shoulder, or a weld.',
        assumed: { value: 'key', why: 'the usual way' },
      }),
      length: quantity('length', {
        label: 'Length',
        gloss: 'Of the hub on the shaft.',
        unit: 'mm',
        min: 3,
        max: 200,
        assumed: { value: 22, low: 16, high: 30, why: 'about one and a half shaft diameters' },
        measure: caliper('measure the hub along the shaft', 1),
      }),
      bolts: choice(boltSizes, {
        label: 'Screws',
        gloss: 'Size of the clamp’s or the set screws, or of the cross pin.',
        assumed: { value: 'M5', why: 'a usual screw in a small hub' },
      }),
      number: count({
        label: 'Number',
        gloss: 'Of those screws or pins.',
        min: 1,
        max: 12,
        assumed: { value: 2, low: 2, high: 2, why: 'two screws in a small hub' },
      }),
      torque: quantity('torque', {
        label: 'Torque',
        gloss: 'The clamp’s screws were tightened with.',
        unit: 'N·m',
        min: 0.1,
        max: 100,
        optional: true,
      }),
      made: choice(partMaterials, {
        label: 'Made of',
        gloss: 'What the key, spline or pin bears on in the hub: a metal insert counts as metal.',
        assumed: { value: 'aluminium', why: 'a metal hub or insert' },
      }),
      temperature: warm,
    },
  )

const hold = holdWarm(temperature)

const shaft = {
  diameter: quantity('length', {
    label: 'Diameter',
    gloss: 'Of the shaft at its thinnest.',
    unit: 'mm',
    min: 3,
    max: 100,
    assumed: {
      of: 'jet.duct.shaft',
      times: 1,
      low: 0.85,
      high: 1.1,
      why: 'as thick as where it stands in the duct',
    },
    measure: caliper('measure the shaft', 1),
  }),
  length: quantity('length', {
    label: 'Length',
    gloss: 'From the coupling to the impeller.',
    unit: 'mm',
    min: 10,
    max: 5000,
    assumed: { value: 420, low: 300, high: 600, why: 'through a duct of this size to a coupling' },
    measure: tape('measure from the coupling to the impeller'),
  }),
  bore: quantity('length', {
    label: 'Bore',
    gloss: 'Of a hollow shaft.',
    unit: 'mm',
    min: 0,
    max: 95,
    assumed: { value: 0, low: 0, high: 0, why: 'solid unless said' },
  }),
  steel: choice(['stainless steel', 'hard stainless steel', 'steel', 'aluminium', 'bronze'], {
    label: 'Metal',
    gloss: 'Of the shaft; hard stainless is the kind that is hardened by precipitation.',
    assumed: { value: 'stainless steel', why: 'a shaft that runs in water' },
  }),
  bearings: count({
    label: 'Bearings',
    gloss: 'On the shaft itself; with one or none the coupling has to hold the front end.',
    min: 0,
    max: 3,
    assumed: { value: 2, low: 2, high: 2, why: 'one at each end' },
  }),
  overhang: quantity('length', {
    label: 'Overhang',
    gloss: 'From the last bearing to the middle of the impeller.',
    unit: 'mm',
    min: 0,
    max: 1000,
    assumed: { value: 60, low: 35, high: 90, why: 'an impeller just behind its bearing' },
    measure: tape('measure from the middle of the last bearing to the middle of the impeller', 3),
  }),
  'last bearing': choice(['ball', 'bush'], {
    label: 'Last bearing',
    gloss: 'Beside the impeller: a sealed ball bearing, or a bush that water greases.',
    assumed: { value: 'ball', why: 'sealed ball bearings are what is at hand' },
  }),
  thrust: choice(['ball bearing', 'angular contact', 'engine', 'nobody knows'], {
    label: 'Thrust taken by',
    gloss:
      'What holds the shaft against the pull of the impeller: a plain ball bearing, an angular-contact one, or the engine’s crankshaft.',
    assumed: { value: 'nobody knows', why: 'counted on only when said' },
  }),
  bearing: choice(
    [
      '6000 2RS',
      '6001 2RS',
      '6002 2RS',
      '6003 2RS',
      '6004 2RS',
      '6200 2RS',
      '6201 2RS',
      '6202 2RS',
      '6203 2RS',
      '6204 2RS',
    ],
    {
      label: 'Bearing',
      gloss: 'Number on the bearing that takes the thrust; found by the shaft’s diameter when left out.',
      optional: true,
    },
  ),
  hold,
} as const

export const shaftSection = list(
  {
    label: 'Shaft',
    gloss:
      'What turns, link by link from the front end to the impeller: engine, coupling, engine, coupling, shaft, impeller.',
    maxItems: 20,
  },
  variant(
    { label: 'Link', gloss: 'One link of the chain.', tag: 'kind' },
    {
      engine: {
        gloss: 'An engine whose crankshaft is part of the chain; engines are taken in the order of the file.',
        fields: {
          name: text({
            label: 'Name',
            gloss: 'Which one, as it is called under engines.',
            maxLength: 60,
            optional: true,
          }),
          at,
        },
      },
      coupling: { gloss: 'Two halves bolted together.', fields: coupling },
      belt: {
        gloss: 'A belt, chain or gears: the drive’s ratio lies here.',
        fields: {
          pulley: quantity('length', {
            label: 'Pulley',
            gloss: 'Diameter of the pulley on the impeller’s side.',
            unit: 'mm',
            min: 15,
            max: 400,
            assumed: { value: 75, low: 55, high: 100, why: 'a toothed belt pulley of this power' },
            measure: caliper('measure the pulley across its teeth', 1),
          }),
          at,
        },
      },
      shaft: { gloss: 'A shaft and the bearings it runs in.', fields: { ...shaft, at } },
      impeller: {
        gloss: 'The impeller and how it sits on the shaft; the end of the chain.',
        fields: {
          mass: quantity('mass', {
            label: 'Mass',
            gloss: 'Of the impeller with its hub.',
            unit: 'kg',
            min: 0.005,
            max: 20,
            optional: true,
            measure: { what: 'weigh it', with: 'kitchen scale', minutes: 1 },
          }),
          hold: holdWarm(cool),
          at,
        },
      },
    },
  ),
)
