import { choice, group, quantity } from '../fields.ts'

/** Where the craft runs. Defaults: common practice, no source. */
export const placeSection = group(
  { label: 'Place', gloss: 'Where the craft runs: the water and the air that day.' },
  {
    water: choice(['fresh', 'salt'], {
      label: 'Water',
      gloss: 'Fresh water of lakes and rivers, or sea water.',
      assumed: { value: 'fresh', why: 'most trials are on a pond or a lake' },
    }),
    'water temperature': quantity('temperature', {
      label: 'Water temperature',
      gloss: 'At the depth of the intake; sets density, viscosity and when the jet cavitates.',
      unit: '°C',
      min: -2,
      max: 40,
      assumed: { value: 15, low: 8, high: 22, why: 'a temperate lake from spring to autumn' },
      measure: { what: 'hold a thermometer a hand below the surface', with: 'thermometer', minutes: 2 },
    }),
    'air temperature': quantity('temperature', {
      label: 'Air temperature',
      gloss: 'In the shade; sets the air the engines breathe.',
      unit: '°C',
      min: -30,
      max: 50,
      assumed: { value: 20, low: 10, high: 28, why: 'a day on which people go out on the water' },
      measure: { what: 'read a thermometer in the shade', with: 'thermometer', minutes: 2 },
    }),
    altitude: quantity('length', {
      label: 'Altitude',
      gloss: 'Height of the water above the sea; thin air takes power.',
      unit: 'm',
      min: -420,
      max: 5000,
      assumed: { value: 100, low: 0, high: 500, why: 'lowland water' },
      measure: { what: 'read it off a map', with: 'map', minutes: 2 },
    }),
    'air pressure': quantity('pressure', {
      label: 'Air pressure',
      gloss:
        'Pressure where you stand, not reduced to sea level; worked out from the altitude when left out.',
      unit: 'mbar',
      min: 500,
      max: 1090,
      optional: true,
      measure: { what: 'read the barometer of a phone at the water', with: 'phone', minutes: 1 },
    }),
    depth: quantity('length', {
      label: 'Depth of water',
      gloss: 'Depth under the craft; shallow water raises the hump.',
      unit: 'm',
      min: 0.1,
      max: 500,
      assumed: { value: 2, low: 0.8, high: 10, why: 'a pond a little way from the bank' },
      measure: { what: 'lower a weight on a marked line', with: 'line and weight', minutes: 3 },
    }),
    wind: quantity('speed', {
      label: 'Head wind',
      gloss: 'Wind against the direction of the run; a following wind is negative.',
      unit: 'm/s',
      min: -20,
      max: 20,
      assumed: { value: 0, low: -2, high: 2, why: 'runs are made both ways on a calm day' },
    }),
  },
)
