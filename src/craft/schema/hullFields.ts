import { choice, group, list, offset, quantity, text } from '../fields.ts'

const tape = (what: string, minutes = 3) => ({ what, with: 'tape', minutes })

/** Axes of a mesh file. */
const meshAxes = ['guess', '+x', '-x', '+y', '-y', '+z', '-z'] as const

/** Stations, for hulls the few numbers do not describe. */
const stations = list(
  {
    label: 'Stations',
    gloss: 'Half cross-sections from the transom forward; they replace the few numbers when given.',
    optional: true,
    minItems: 3,
    maxItems: 60,
  },
  group(
    { label: 'Station', gloss: 'One half cross-section.' },
    {
      at: quantity('length', {
        label: 'At',
        gloss: 'Forward of the transom.',
        unit: 'm',
        min: -0.5,
        max: 10,
        exact: true,
        measure: tape('string a level line along the deck and measure down every 20 cm', 40),
      }),
      points: list(
        {
          label: 'Points',
          gloss: 'From the keel out and up to the deck at the centreline.',
          minItems: 3,
          maxItems: 60,
        },
        offset({
          label: 'Point',
          gloss: 'Out from the centreline, up from the baseline.',
          max: 5000,
          unit: 'mm',
        }),
      ),
    },
  ),
)

export const hullSection = group(
  { label: 'Hull', gloss: 'The shape in the water, in a few numbers, as stations, or as a mesh.' },
  {
    length: quantity('length', {
      label: 'Length',
      gloss: 'From the transom to the nose.',
      unit: 'm',
      min: 0.8,
      max: 8,
      measure: tape('measure along the centreline'),
    }),
    beam: quantity('length', {
      label: 'Beam',
      gloss: 'Widest breadth of the deck.',
      unit: 'm',
      min: 0.2,
      max: 3,
      measure: tape('measure the deck across'),
    }),
    'chine beam': quantity('length', {
      label: 'Chine beam',
      gloss: 'Widest breadth of the bottom, from chine to chine.',
      unit: 'm',
      min: 0.15,
      max: 3,
      assumed: { of: 'beam', times: 0.88, low: 0.8, high: 1, why: 'sides that flare a little' },
      measure: tape('turn it over and measure from edge to edge'),
    }),
    depth: quantity('length', {
      label: 'Depth',
      gloss: 'From keel to deck edge at the widest place.',
      unit: 'm',
      min: 0.05,
      max: 1.5,
      assumed: { of: 'length', times: 0.1, low: 0.08, high: 0.13, why: 'small sleds and boards' },
      measure: tape('lay a batten across the deck and measure down to the keel'),
    }),
    deadrise: quantity('angle', {
      label: 'Deadrise',
      gloss: 'Angle of the bottom to the level, aft.',
      unit: 'deg',
      min: 0,
      max: 40,
      assumed: { value: 5, low: 0, high: 12, why: 'nearly flat bottoms of home-built craft' },
      measure: {
        what: 'lay a level across and a protractor along the bottom',
        with: 'level and protractor',
        minutes: 4,
      },
    }),
    'mid deadrise': quantity('angle', {
      label: 'Deadrise amidships',
      gloss: 'The same at half length.',
      unit: 'deg',
      min: 0,
      max: 50,
      assumed: { of: 'deadrise', times: 1, low: 1, high: 2, why: 'a bottom that is straight aft' },
      measure: {
        what: 'lay a level across and a protractor along the bottom',
        with: 'level and protractor',
        minutes: 4,
      },
    }),
    'nose deadrise': quantity('angle', {
      label: 'Deadrise at the nose',
      gloss: 'The same at the nose.',
      unit: 'deg',
      min: 0,
      max: 70,
      assumed: { value: 22, low: 10, high: 35, why: 'a nose that parts the chop' },
      measure: {
        what: 'lay a level across and a protractor along the bottom',
        with: 'level and protractor',
        minutes: 4,
      },
    }),
    'nose rise': quantity('length', {
      label: 'Nose rise',
      gloss: 'Rise of the keel at the nose above the straight run aft.',
      unit: 'mm',
      min: 0,
      max: 1000,
      assumed: { of: 'length', times: 0.065, low: 0.04, high: 0.1, why: 'boards and sleds of this length' },
      measure: tape('stand it on a level floor and measure up to the nose'),
    }),
    'nose rise from': quantity('length', {
      label: 'Nose rise from',
      gloss: 'Where the keel begins to rise, forward of the transom.',
      unit: 'm',
      min: 0,
      max: 8,
      assumed: {
        of: 'length',
        times: 0.64,
        low: 0.55,
        high: 0.75,
        why: 'a straight run over the after two thirds',
      },
      measure: tape('slide a card along the floor until it touches the keel'),
    }),
    'stern rise': quantity('length', {
      label: 'Stern rise',
      gloss: 'Rise of the keel at the transom.',
      unit: 'mm',
      min: 0,
      max: 200,
      assumed: { value: 0, low: 0, high: 5, why: 'a straight run aft, as planing wants' },
      measure: tape('lay a straight edge along the keel'),
    }),
    'stern rise over': quantity('length', {
      label: 'Stern rise over',
      gloss: 'Over which the keel rises aft.',
      unit: 'm',
      min: 0,
      max: 4,
      assumed: { of: 'length', times: 0.15, low: 0.1, high: 0.25, why: 'where there is any' },
    }),
    'widest at': quantity('length', {
      label: 'Widest at',
      gloss: 'Where the bottom is widest, forward of the transom.',
      unit: 'm',
      min: 0,
      max: 8,
      assumed: { of: 'length', times: 0.45, low: 0.3, high: 0.55, why: 'a little aft of the middle' },
      measure: tape('measure the breadth every 20 cm'),
    }),
    'tail width': quantity('ratio', {
      label: 'Tail width',
      gloss: 'Breadth of the bottom at the transom over its widest breadth.',
      unit: '',
      min: 0.1,
      max: 1,
      assumed: { value: 0.93, low: 0.85, high: 1, why: 'a nearly parallel stern' },
      measure: tape('measure the transom across at the chines'),
    }),
    'nose roundness': quantity('ratio', {
      label: 'Nose roundness',
      gloss:
        'Shape of the nose seen from above: 1 a wedge, 2 an ellipse, 2.5 a usual board, more is blunter.',
      unit: '',
      min: 1,
      max: 8,
      assumed: { value: 2.5, low: 2, high: 3, why: 'a usual board' },
    }),
    'deck camber': quantity('length', {
      label: 'Deck camber',
      gloss: 'Rise of the deck from its edge to the centreline.',
      unit: 'mm',
      min: -100,
      max: 300,
      assumed: { value: 0, low: -5, high: 10, why: 'a flat deck' },
    }),
    stations,
    mesh: text({
      label: 'Mesh',
      gloss:
        'Name of an STL or 3MF file beside the craft file: one closed skin of the whole hull, deck included. It replaces stations and few numbers.',
      optional: true,
      maxLength: 300,
    }),
    'mesh unit': choice(['guess', 'mm', 'cm', 'm', 'in'], {
      label: 'Unit of the mesh',
      gloss: 'What one unit in an STL file stands for; a 3MF file names its own.',
      assumed: {
        value: 'guess',
        why: 'the unit that makes it the length of such a craft; what was guessed is said',
      },
    }),
    'bow along': choice(meshAxes, {
      label: 'Forward in the mesh',
      gloss: 'Axis of the mesh file that points to the bow.',
      assumed: { value: 'guess', why: 'the longest side, its slimmer end the bow; what was guessed is said' },
    }),
    'deck faces': choice(meshAxes, {
      label: 'Up in the mesh',
      gloss: 'Axis of the mesh file that points up.',
      assumed: { value: 'guess', why: 'the shortest side; what was guessed is said' },
    }),
  },
)
