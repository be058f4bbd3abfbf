import { choice, count, group, quantity } from '../fields.ts'
import { caliper, rubbing, wheel } from './measureWith.ts'

export const exhaustPort = group(
  { label: 'Exhaust port', gloss: 'The window the burnt gas leaves by.' },
  {
    opens: quantity('angle', {
      label: 'Opens',
      gloss: 'Crank angle after top dead centre at the first light gap under the roof.',
      unit: 'deg',
      min: 70,
      max: 130,
      assumed: {
        by: 'tune',
        each: {
          utility: { value: 100, low: 96, high: 108, why: 'utility engines' },
          sport: { value: 94, low: 90, high: 98, why: 'sport engines' },
          race: { value: 88, low: 82, high: 92, why: 'racing engines' },
        },
        why: 'usual for the tune of the engine',
      },
      measure: wheel('turn the crank until light first shows at the port roof'),
    }),
    width: quantity('length', {
      label: 'Width',
      gloss: 'Of all exhaust windows together, straight across the opening.',
      unit: 'mm',
      min: 5,
      max: 120,
      assumed: { of: 'bore', times: 0.6, low: 0.45, high: 0.7, why: 'one window as wide as the ring allows' },
      measure: rubbing('take a rubbing of the window inside the bore'),
    }),
    windows: count({
      label: 'Windows',
      gloss: 'Number of exhaust windows.',
      min: 1,
      max: 4,
      assumed: { value: 1, low: 1, high: 1, why: 'one window is usual' },
    }),
    height: quantity('length', {
      label: 'Height',
      gloss:
        'From floor to roof of the window; the floor is taken at the crown with the piston at the bottom when left out.',
      unit: 'mm',
      min: 2,
      max: 100,
      optional: true,
      measure: caliper('measure the depth to roof and floor with the piston at the bottom', 5),
    }),
    'corner radius': quantity('length', {
      label: 'Corner radius',
      gloss: 'Rounding of the corners of the window.',
      unit: 'mm',
      min: 0,
      max: 40,
      assumed: { of: 'ports.exhaust.width', times: 0.15, low: 0.05, high: 0.3, why: 'cast windows' },
      measure: rubbing('take a rubbing of the window inside the bore'),
    }),
    discharge: quantity('ratio', {
      label: 'Discharge',
      gloss: 'Part of the open area the flow really uses.',
      unit: '',
      min: 0.3,
      max: 1,
      assumed: { value: 0.75, low: 0.65, high: 0.82, why: 'exhaust ports of small two-strokes' },
    }),
  },
)

export const transferPorts = group(
  { label: 'Transfer ports', gloss: 'The windows the fresh charge enters by.' },
  {
    opens: quantity('angle', {
      label: 'Opens',
      gloss: 'Crank angle after top dead centre, mean of all transfers.',
      unit: 'deg',
      min: 90,
      max: 150,
      assumed: { of: 'ports.exhaust.opens', plus: 23, low: 18, high: 28, why: 'usual blowdown' },
      measure: wheel('turn the crank until light first shows at the transfer roofs'),
    }),
    windows: count({
      label: 'Windows',
      gloss: 'Number of transfer windows.',
      min: 1,
      max: 10,
      assumed: {
        by: 'tune',
        each: {
          utility: { value: 2, low: 2, high: 4, why: 'utility engines' },
          sport: { value: 4, low: 4, high: 5, why: 'sport engines' },
          race: { value: 5, low: 4, high: 7, why: 'racing engines' },
        },
        why: 'usual for the tune of the engine',
      },
    }),
    width: quantity('length', {
      label: 'Width of all',
      gloss: 'Widths of all transfer windows added up, straight across each.',
      unit: 'mm',
      min: 5,
      max: 250,
      assumed: {
        by: 'tune',
        each: {
          utility: { of: 'bore', times: 1.1, low: 0.8, high: 1.4, why: 'two windows' },
          sport: { of: 'bore', times: 1.6, low: 1.2, high: 1.8, why: 'four windows' },
          race: { of: 'bore', times: 1.7, low: 1.4, high: 1.9, why: 'five windows' },
        },
        why: 'usual for the tune of the engine',
      },
      measure: rubbing('take rubbings of all windows inside the bore'),
    }),
    height: quantity('length', {
      label: 'Height',
      gloss:
        'From floor to roof; the floor is taken at the crown with the piston at the bottom when left out.',
      unit: 'mm',
      min: 2,
      max: 60,
      optional: true,
      measure: caliper('measure the depth to roof and floor with the piston at the bottom', 5),
    }),
    'entry angle': quantity('angle', {
      label: 'Entry angle',
      gloss: 'Seen from above, between the duct and the line straight in; narrows the opening by its cosine.',
      unit: 'deg',
      min: 0,
      max: 75,
      assumed: { value: 25, low: 10, high: 45, why: 'loop scavenging' },
    }),
    'roof angle': quantity('angle', {
      label: 'Roof angle',
      gloss: 'Slope of the roof of the duct upwards; narrows the opening by its cosine.',
      unit: 'deg',
      min: 0,
      max: 70,
      assumed: { value: 8, low: 0, high: 15, why: 'main transfers' },
      measure: { what: 'hold a protractor against the roof', with: 'protractor', minutes: 5 },
    }),
    'duct length': quantity('length', {
      label: 'Duct length',
      gloss: 'From crankcase to window, along its middle.',
      unit: 'mm',
      min: 10,
      max: 300,
      assumed: { value: 65, low: 50, high: 80, why: 'cylinders of 50 to 150 cm³' },
      measure: { what: 'push a wire through and measure it', with: 'wire', minutes: 5 },
    }),
    discharge: quantity('ratio', {
      label: 'Discharge',
      gloss: 'Part of the open area the flow really uses.',
      unit: '',
      min: 0.3,
      max: 1,
      assumed: { value: 0.72, low: 0.65, high: 0.8, why: 'transfer ports of small two-strokes' },
    }),
    scavenging: choice(['uniflow-like', 'good loop', 'mediocre loop', 'mixing'], {
      label: 'Scavenging',
      gloss:
        'How well the fresh charge pushes the burnt gas out: good loop for four or five ports, mediocre for two.',
      assumed: {
        value: 'mediocre loop',
        why: 'two-port utility cylinders; say good loop for four or five ports',
      },
    }),
  },
)
