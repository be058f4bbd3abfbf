import { choice, count, flag, group, list, place, quantity, text } from '../fields.ts'

const string = (what: string) => ({ what, with: 'string and tape', minutes: 5 })

const box = group(
  { label: 'Muffler', gloss: 'The box after the stinger.', optional: true },
  {
    length: quantity('length', {
      label: 'Length',
      gloss: 'Inside.',
      unit: 'mm',
      min: 20,
      max: 2000,
      measure: string('measure outside and take off two walls'),
    }),
    width: quantity('length', {
      label: 'Width',
      gloss: 'Inside; the diameter of a round box.',
      unit: 'mm',
      min: 20,
      max: 600,
    }),
    height: quantity('length', {
      label: 'Height',
      gloss: 'Inside; as wide as high, and round, when left out.',
      unit: 'mm',
      min: 20,
      max: 600,
      optional: true,
    }),
    'inlet reach': quantity('length', {
      label: 'Inlet reach',
      gloss: 'How far the incoming tube stands into the box.',
      unit: 'mm',
      min: 0,
      max: 1500,
      assumed: { value: 0, low: 0, high: 0, why: 'tube ends flush with the wall' },
    }),
    'outlet reach': quantity('length', {
      label: 'Outlet reach',
      gloss: 'How far the leaving tube stands into the box.',
      unit: 'mm',
      min: 0,
      max: 1500,
      assumed: { value: 0, low: 0, high: 0, why: 'tube ends flush with the wall' },
    }),
    packing: quantity('length', {
      label: 'Packing',
      gloss: 'Thickness of absorbing packing round a perforated tube; nought for an empty box.',
      unit: 'mm',
      min: 0,
      max: 200,
      assumed: { value: 0, low: 0, high: 0, why: 'an empty box' },
    }),
    'packing resistivity': quantity('flowResistivity', {
      label: 'Flow resistivity of the packing',
      gloss: 'How hard it is to blow through.',
      unit: 'kPa·s/m²',
      min: 0.5,
      max: 500,
      assumed: { value: 15, low: 8, high: 30, why: 'glass or basalt wool, packed by hand' },
    }),
  },
)

/** The exhaust of one engine, from the piston face to the open air. */
export const exhaustGroup = group(
  { label: 'Exhaust', gloss: 'From the piston face to the open air.', optional: true },
  {
    wall: quantity('length', {
      label: 'Wall',
      gloss: 'Thickness of the sheet.',
      unit: 'mm',
      min: 0.2,
      max: 6,
      assumed: { value: 1, low: 0.8, high: 1.2, why: 'sheet that home-welded pipes are rolled from' },
      measure: { what: 'measure an edge', with: 'caliper', minutes: 1 },
    }),
    duct: group(
      { label: 'Duct in the cylinder', gloss: 'From piston face to flange; counts in the tuned length.' },
      {
        length: quantity('length', {
          label: 'Length',
          gloss: 'From the piston face to the flange.',
          unit: 'mm',
          min: 5,
          max: 200,
          assumed: { value: 40, low: 25, high: 80, why: 'small cylinders' },
          measure: { what: 'push a wire in until it touches the piston', with: 'wire and tape', minutes: 3 },
        }),
        bore: quantity('length', {
          label: 'Bore at the flange',
          gloss: 'Inside diameter where the pipe begins.',
          unit: 'mm',
          min: 5,
          max: 120,
          optional: true,
          measure: { what: 'measure across', with: 'caliper', minutes: 2 },
        }),
      },
    ),
    pipe: list(
      {
        label: 'Pipe',
        gloss: 'Cones and tubes in order from the flange to the stinger.',
        minItems: 1,
        maxItems: 60,
      },
      group(
        { label: 'Segment', gloss: 'One cone or tube; inside diameters.' },
        {
          name: text({ label: 'Name', gloss: 'What you call it.', maxLength: 60, optional: true }),
          length: quantity('length', {
            label: 'Length',
            gloss: 'Along the centreline; mean of a string on the outside and the inside of a bend.',
            unit: 'mm',
            min: 1,
            max: 3000,
            measure: string('measure along the outside and the inside of the bend and take the mean'),
          }),
          from: quantity('length', {
            label: 'From',
            gloss: 'Inside diameter at the engine end.',
            unit: 'mm',
            min: 4,
            max: 400,
            measure: string('measure round the outside: divide by π and take off two walls'),
          }),
          to: quantity('length', {
            label: 'To',
            gloss: 'Inside diameter at the far end.',
            unit: 'mm',
            min: 4,
            max: 400,
            measure: string('measure round the outside: divide by π and take off two walls'),
          }),
          bend: quantity('angle', {
            label: 'Bend',
            gloss: 'Angle it turns through in all.',
            unit: 'deg',
            min: 0,
            max: 720,
            assumed: { value: 0, low: 0, high: 0, why: 'straight unless said' },
          }),
          clock: quantity('angle', {
            label: 'Clock',
            gloss:
              'Toward which side it bends, looking along the pipe: 0 where the upper side of the flange points, 90 to the right of it; the mark is drawn straight on along the pipe.',
            unit: 'deg',
            min: -360,
            max: 360,
            assumed: { value: 0, low: 0, high: 0, why: 'up unless said' },
          }),
          wall: quantity('length', {
            label: 'Wall',
            gloss: 'When it differs from the rest of the pipe.',
            unit: 'mm',
            min: 0.2,
            max: 6,
            assumed: { of: 'exhaust.wall', times: 1, low: 1, high: 1, why: 'the same sheet throughout' },
          }),
        },
      ),
    ),
    stinger: group(
      { label: 'Stinger', gloss: 'The narrow tube that holds the pressure in the pipe.', optional: true },
      {
        length: quantity('length', {
          label: 'Length',
          gloss: 'From the end cone to the muffler or the open air.',
          unit: 'mm',
          min: 5,
          max: 2000,
          measure: string('measure along the tube'),
        }),
        bore: quantity('length', {
          label: 'Bore',
          gloss: 'Inside diameter.',
          unit: 'mm',
          min: 3,
          max: 100,
          measure: { what: 'measure inside the end', with: 'caliper', minutes: 2 },
        }),
      },
    ),
    muffler: box,
    'leads into': count({
      label: 'Leads into',
      gloss:
        'Number of the engine, from 1, whose muffler and outlet this pipe leads into; it then has none of its own.',
      min: 1,
      max: 8,
      optional: true,
    }),
    outlet: group(
      { label: 'Outlet', gloss: 'The tube to the open air or the water.', optional: true },
      {
        length: quantity('length', {
          label: 'Length',
          gloss: 'Along the tube.',
          unit: 'mm',
          min: 0,
          max: 3000,
        }),
        bore: quantity('length', { label: 'Bore', gloss: 'Inside diameter.', unit: 'mm', min: 3, max: 150 }),
        height: quantity('length', {
          label: 'Height',
          gloss: 'Middle of the opening above still water, craft loaded; negative when below.',
          unit: 'mm',
          min: -1000,
          max: 2000,
          assumed: { value: 100, low: 30, high: 200, why: 'an outlet above the water' },
        }),
        'high point': quantity('length', {
          label: 'High point',
          gloss: 'Highest point inside the exhaust above still water: past it, water runs to the engine.',
          unit: 'mm',
          min: -1000,
          max: 3000,
          assumed: {
            of: 'outlet.height',
            plus: 100,
            low: 0,
            high: 250,
            why: 'a rise of a hand before the outlet',
          },
          measure: {
            what: 'measure from the waterline to the top of the highest bend',
            with: 'tape',
            minutes: 5,
          },
        }),
        flap: flag({
          label: 'Flap',
          gloss: 'A rubber flap keeps water from running in.',
          assumed: { value: false, why: 'counted on only when said' },
        }),
        fall: quantity('angle', {
          label: 'Fall',
          gloss: 'Slope of the tube from the high point down to the outlet; nought when it holds water.',
          unit: 'deg',
          min: -90,
          max: 90,
          optional: true,
          measure: { what: 'lay a level along the tube', with: 'phone as a level', minutes: 3 },
        }),
        vent: flag({
          label: 'Vent',
          gloss: 'A hole of 3 to 4 mm at the high point that lets air in when the pipe cools.',
          assumed: { value: false, why: 'counted on only when said' },
        }),
        drain: flag({
          label: 'Drain',
          gloss: 'A plug or hole at the lowest place of the muffler.',
          assumed: { value: false, why: 'counted on only when said' },
        }),
      },
    ),
    route: group(
      {
        label: 'Route',
        gloss: 'Where the pipe begins and where it must come out; its way between follows from its parts.',
        optional: true,
      },
      {
        flange: place({ label: 'Flange', gloss: 'Middle of the flange at the cylinder.', max: 10 }),
        aims: place({
          label: 'Aims at',
          gloss: 'Any point straight out of the flange, where a rod laid in the port would point.',
          max: 20,
        }),
        hole: place({
          label: 'Hole',
          gloss: 'Middle of the hole the pipe must end in, in the transom or the side.',
          max: 10,
          optional: true,
        }),
      },
    ),
    room: group(
      { label: 'Room', gloss: 'What a new pipe has to fit into.', optional: true },
      {
        length: quantity('length', {
          label: 'Length',
          gloss: 'Longest pipe that fits, along the centreline from the flange to the end of the stinger.',
          unit: 'mm',
          min: 200,
          max: 4000,
          measure: string('lay a string where the pipe will run'),
        }),
        diameter: quantity('length', {
          label: 'Diameter',
          gloss: 'Widest belly that fits, inside.',
          unit: 'mm',
          min: 20,
          max: 400,
          measure: {
            what: 'measure the gap and take off two walls and the distance to foam',
            with: 'tape',
            minutes: 5,
          },
        }),
        bend: quantity('angle', {
          label: 'Bend',
          gloss: 'Angle the pipe has to turn through in all to get there.',
          unit: 'deg',
          min: 0,
          max: 720,
          assumed: { value: 0, low: 0, high: 0, why: 'straight unless said' },
        }),
      },
    ),
    finish: choice(['bare', 'wrapped', 'water-cooled'], {
      label: 'Outside',
      gloss: 'Bare sheet, wrapped, or cooled by a water jacket; sets how hot the wall runs.',
      assumed: { value: 'bare', why: 'the usual home-made pipe' },
    }),
  },
)
