/**
 * The way of the fuel from its tank to the jets. Nothing in it has to be given: what is left out is assumed and shown as assumed.
 * Defaults and ranges are common practice, no source, where a field names none.
 */
import { choice, count, flag, group, list, quantity, text } from '../fields.ts'
import { fuelFilter, fuelLine, metering } from './fuelLineFields.ts'
import { caliper } from './measureWith.ts'

const tape = (what: string, minutes = 3) => ({ what, with: 'tape', minutes })

/** Where on the tank something sits: from the middle of its floor, or of a cell's where the tank has cells. */
const across = (what: string) => ({
  forward: quantity('length', {
    label: 'Forward',
    gloss: `How far ${what} sits forward of the tank’s middle; aft is negative.`,
    unit: 'mm',
    min: -1500,
    max: 1500,
    coarse: 5,
    assumed: { value: 0, low: -20, high: 20, why: 'the middle of the tank' },
    measure: tape('measure from both ends of the tank and halve the difference'),
  }),
  'to port': quantity('length', {
    label: 'To port',
    gloss: `How far ${what} sits to port of the tank’s middle, or of its cell’s; starboard is negative.`,
    unit: 'mm',
    min: -1000,
    max: 1000,
    coarse: 5,
    assumed: { value: 0, low: -20, high: 20, why: 'the middle of the tank' },
    measure: tape('measure from both sides of the tank and halve the difference'),
  }),
})

const pickup = group(
  { label: 'Pick-up', gloss: 'Where the fuel leaves the tank; a tank with cells has one in each.' },
  {
    kind: choice(['top tube', 'bottom outlet', 'weighted hose'], {
      label: 'Kind',
      gloss:
        'A tube down from the top, an outlet in the floor, or a hose inside with a weight that follows the fuel.',
      assumed: { value: 'top tube', why: 'what published rules ask of a petrol tank: openings on top only' },
    }),
    ...across('the pick-up’s mouth'),
    clearance: quantity('length', {
      label: 'Clearance',
      gloss: 'Its mouth above the tank’s floor, on the inside.',
      unit: 'mm',
      min: 0,
      max: 300,
      assumed: { value: 10, low: 5, high: 15, why: 'water and dirt lie below: 8 to 12 mm is usual' },
      measure: { what: 'dip the tube’s length and take it off the height', with: 'stick', minutes: 5 },
    }),
  },
)

const vent = group(
  { label: 'Vent', gloss: 'How air gets in for the fuel drawn out; a tank with cells has one in each.' },
  {
    kind: choice(['hose', 'cap'], {
      label: 'Kind',
      gloss: 'A hose led up to an opening, or a hole or breather in the filler cap itself.',
      assumed: { value: 'hose', why: 'a tank under a deck needs one' },
    }),
    opening: text({
      label: 'Opening',
      gloss: 'Name of the opening that its outer end is; the first tank vent of the openings when left out.',
      optional: true,
      maxLength: 100,
    }),
    ...across('the vent’s fitting in the tank’s top'),
    bore: quantity('length', {
      label: 'Bore',
      gloss: 'Inside diameter of its narrowest part.',
      unit: 'mm',
      min: 0.5,
      max: 40,
      assumed: { value: 5, low: 3, high: 8, why: 'small fuel hose' },
      measure: caliper('measure the barb’s hole, which is narrower than the hose'),
    }),
    valve: flag({
      label: 'Roll-over valve',
      gloss: 'A float or ball shuts it when the craft lies on its side.',
      assumed: { value: false, why: 'counted on only when said' },
    }),
  },
)

const use = group(
  { label: 'Use', gloss: 'A day with it: how long the engines run, and how hard.' },
  {
    hours: quantity('time', {
      label: 'Hours',
      gloss: 'Engines running, in a day.',
      unit: 'h',
      min: 0.05,
      max: 24,
      assumed: { value: 1.5, low: 0.75, high: 3, why: 'an outing' },
    }),
    'full throttle': quantity('ratio', {
      label: 'Full throttle',
      gloss: 'Share of that time flat out.',
      unit: '%',
      min: 0,
      max: 100,
      assumed: { value: 20, low: 10, high: 40, why: 'trials and starts' },
    }),
    idle: quantity('ratio', {
      label: 'Idle',
      gloss: 'Share of that time at idle; the rest is at about half power.',
      unit: '%',
      min: 0,
      max: 100,
      assumed: { value: 30, low: 15, high: 50, why: 'waiting, turning, coming alongside' },
    }),
    consumption: quantity('specificConsumption', {
      label: 'Consumption',
      gloss: 'Fuel for its work, at full throttle.',
      unit: 'g/kWh',
      min: 200,
      max: 1500,
      assumed: {
        value: 480,
        low: 400,
        high: 560,
        why: 'carburetted two-strokes with loop scavenging, from memory',
      },
      measure: {
        what: 'fill to a mark, run ten minutes flat out, fill again from a measuring cup',
        with: 'measuring cup',
        minutes: 30,
      },
    }),
  },
)

const retention = group(
  { label: 'Retention', gloss: 'What holds the tank down.' },
  {
    kind: choice(['straps', 'bands', 'bracket', 'nothing'], {
      label: 'Kind',
      gloss: 'Webbing straps, metal bands, a bracket bolted to the tank, or nothing but its bed.',
      assumed: { value: 'straps', why: 'the usual way' },
    }),
    number: count({
      label: 'Number',
      gloss: 'How many straps, bands or bracket feet.',
      min: 0,
      max: 20,
      assumed: { value: 2, low: 2, high: 2, why: 'one at each end' },
    }),
    strength: quantity('force', {
      label: 'Strength',
      gloss: 'What one of them holds, buckle, seam and anchor included.',
      unit: 'N',
      min: 10,
      max: 100000,
      assumed: {
        by: 'kind',
        each: {
          straps: {
            value: 1500,
            low: 800,
            high: 3000,
            why: '25 mm webbing with a buckle and a riveted anchor',
          },
          bands: { value: 2500, low: 1500, high: 5000, why: 'steel band of 20 by 0.8 mm with an M5 bolt' },
          bracket: { value: 2000, low: 1000, high: 4000, why: 'an M6 bolt in thin sheet' },
          nothing: { value: 10, low: 10, high: 20, why: 'nothing holds it' },
        },
        why: 'what such fastenings usually hold',
      },
      measure: { what: 'hang a known weight from one', with: 'luggage scale', minutes: 10 },
    }),
  },
)

export const fuelSection = group(
  {
    label: 'Fuel',
    gloss:
      'From the tank to the jets. Begin with the pick-up, the hose, the filter’s mesh and the main jet; the rest is assumed.',
    optional: true,
  },
  {
    tank: text({
      label: 'Tank',
      gloss: 'Name of the tank that feeds the engines; the first that holds petrol when left out.',
      optional: true,
      maxLength: 100,
    }),
    oil: quantity('ratio', {
      label: 'Oil',
      gloss: 'Oil over petrol, by volume: 4 % is 1 to 25, 2 % is 1 to 50.',
      unit: '%',
      min: 0,
      max: 15,
      assumed: { value: 3, low: 2, high: 4, why: 'about one to thirty-three' },
    }),
    volatility: quantity('pressure', {
      label: 'Volatility',
      gloss: 'Vapour pressure of the petrol at 37.8 °C: 45 to 60 kPa in summer, 60 to 90 in winter.',
      unit: 'kPa',
      min: 20,
      max: 120,
      assumed: { value: 60, low: 45, high: 75, why: 'EN 228, summer petrol and what is left of winter’s' },
    }),
    feed: choice(['pulse pump', 'gravity', 'electric pump'], {
      label: 'Feed',
      gloss:
        'What moves it: a pump worked by the crankcase’s pulses, its own weight, or an electric pump at the tank.',
      assumed: { value: 'pulse pump', why: 'small two-strokes carry one in the carburettor' },
    }),
    pump: quantity('pressure', {
      label: 'Pump',
      gloss: 'What the pump draws or gives at full flow; nought for gravity.',
      unit: 'kPa',
      min: 0,
      max: 100,
      assumed: {
        by: 'feed',
        each: {
          'pulse pump': {
            value: 8,
            low: 4,
            high: 14,
            why: 'lifts 0.5 m with certainty, 20 to 30 kPa at best',
          },
          gravity: { value: 0, low: 0, high: 0, why: 'there is none' },
          'electric pump': { value: 20, low: 12, high: 30, why: 'small solenoid pumps' },
        },
        why: 'what such pumps give',
      },
      measure: { what: 'lower the can until the engine starves, engine tied up', with: 'tape', minutes: 15 },
    }),
    pickup,
    vent,
    lines: list(
      {
        label: 'Lines',
        gloss:
          'Hoses from the tank to each carburettor. Left out: a hose to each, with a tee where there are several, lengths assumed.',
        maxItems: 24,
      },
      fuelLine,
    ),
    filter: fuelFilter,
    carburettor: metering,
    use,
    retention,
  },
)
