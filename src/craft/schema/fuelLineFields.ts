/** Hoses, filter and carburettor of the fuel: defaults and ranges are common practice, no source, where a field names none. */
import { choice, group, quantity, text } from '../fields.ts'
import { caliper } from './measureWith.ts'

const tape = (what: string, minutes = 3) => ({ what, with: 'tape', minutes })
const common = 'common practice, no source'

export const fuelLine = group(
  { label: 'Line', gloss: 'One hose, from one end to the other, the way the fuel goes.' },
  {
    from: text({
      label: 'From',
      gloss: 'Where it begins: tank, or the name of a tee another line ends at.',
      maxLength: 60,
    }),
    to: text({
      label: 'To',
      gloss: 'Where it ends: a tee’s name, or the engine whose carburettor it feeds.',
      maxLength: 60,
    }),
    bore: quantity('length', {
      label: 'Bore',
      gloss: 'Inside diameter of the hose.',
      unit: 'mm',
      min: 0.5,
      max: 25,
      assumed: { value: 4, low: 3, high: 5, why: `hose of small engines: ${common}` },
      measure: caliper('push a drill shank into a cut end'),
    }),
    length: quantity('length', {
      label: 'Length',
      gloss: 'Along the hose.',
      unit: 'mm',
      min: 5,
      max: 6000,
      measure: tape('measure along the hose'),
    }),
    rise: quantity('length', {
      label: 'Rise',
      gloss: 'How much higher its far end is than its near end; from the tank, than the tank’s floor.',
      unit: 'mm',
      min: -2000,
      max: 2000,
      coarse: 10,
      assumed: { value: 50, low: -20, high: 150, why: 'carburettors stand a little above the tank’s floor' },
      measure: tape('measure both ends up from the keel, craft level'),
    }),
    run: quantity('length', {
      label: 'Run',
      gloss: 'How far its far end is forward of its near end; aft is negative.',
      unit: 'mm',
      min: -6000,
      max: 6000,
      coarse: 20,
      assumed: { of: 'length', times: -0.6, low: -0.95, high: 0.3, why: 'tanks stand forward of engines' },
      measure: tape('measure both ends from the transom'),
    }),
    losses: quantity('ratio', {
      label: 'Losses',
      gloss: 'Barbs 0.5 to 1 each, elbows 1.2, the branch of a tee 1.3 to 1.8, a tap 1 to 3, added up.',
      unit: '',
      min: 0,
      max: 200,
      assumed: { value: 3, low: 1.5, high: 6, why: 'two barbs and a tee or a tap' },
    }),
    narrowest: quantity('length', {
      label: 'Narrowest',
      gloss: 'Hole of its narrowest barb or fitting, which its losses are counted on.',
      unit: 'mm',
      min: 0.3,
      max: 25,
      assumed: { of: 'bore', times: 0.7, low: 0.55, high: 0.9, why: 'a barb is narrower than its hose' },
      measure: caliper('push a drill shank into the barb'),
    }),
    hose: choice(['fuel hose', 'clear tube', 'metal'], {
      label: 'Hose',
      gloss: 'Rubber or lined hose made for petrol, clear vinyl tube, or metal pipe.',
      assumed: { value: 'fuel hose', why: 'what should be there' },
    }),
  },
)

export const fuelFilter = group(
  { label: 'Filter', gloss: 'The finest mesh on the way to the jets.' },
  {
    at: choice(['trunk', 'each carburettor', 'tank', 'none'], {
      label: 'At',
      gloss:
        'In the line before the tee, one before each carburettor, on the pick-up inside the tank, or none.',
      assumed: { value: 'trunk', why: 'one filter in the line' },
    }),
    mesh: quantity('length', {
      label: 'Mesh',
      gloss: 'Its opening: 250 µm is 60 mesh, 150 is 100, 75 is 200, 45 is 325.',
      unit: 'µm',
      min: 2,
      max: 2000,
      assumed: { value: 150, low: 75, high: 250, why: 'small in-line filters' },
      measure: {
        what: 'count its wires over 5 mm through a lens, or read its maker',
        with: 'lens',
        minutes: 10,
      },
    }),
    drop: quantity('pressure', {
      label: 'Drop',
      gloss: 'What it takes when clean, at five litres an hour.',
      unit: 'kPa',
      min: 0,
      max: 100,
      assumed: { value: 0.3, low: 0.1, high: 1.5, why: 'small in-line filters' },
    }),
  },
)

export const metering = group(
  { label: 'Carburettor', gloss: 'What meters the fuel; one for each engine, all alike.' },
  {
    kind: choice(['diaphragm', 'float'], {
      label: 'Kind',
      gloss: 'A diaphragm chamber that works at any angle, or a bowl with a float.',
      assumed: { value: 'diaphragm', why: 'engines out of hand-held machines' },
    }),
    jet: quantity('length', {
      label: 'Jet',
      gloss: 'Hole of the main jet; taken to suit the engine when left out.',
      unit: 'mm',
      min: 0.1,
      max: 4,
      optional: true,
      measure: {
        what: 'read the number on it, or find the drill shank that just enters',
        with: 'drill shanks',
        minutes: 10,
      },
    }),
    passage: quantity('length', {
      label: 'Passage',
      gloss: 'The smallest other hole the fuel goes through: pilot jet, needle seat, drilling.',
      unit: 'mm',
      min: 0.05,
      max: 4,
      assumed: { value: 0.5, low: 0.35, high: 0.7, why: 'pilot jets and drillings of small carburettors' },
      measure: { what: 'find the wire that just enters', with: 'wires', minutes: 10 },
    }),
    depression: quantity('pressure', {
      label: 'Depression',
      gloss: 'What the venturi sucks at the jet at full throttle.',
      unit: 'kPa',
      min: 0.1,
      max: 20,
      assumed: { value: 3, low: 1.5, high: 5.5, why: `1 to 6 kPa: ${common}` },
    }),
    'bowl reach': quantity('length', {
      label: 'Bowl reach',
      gloss: 'Float: from the middle of the bowl to the jet, along the craft.',
      unit: 'mm',
      min: 0,
      max: 100,
      assumed: { value: 10, low: 3, high: 18, why: 'bowls of 40 to 50 mm' },
      measure: caliper('take the bowl off and measure'),
    }),
    'bowl level': quantity('length', {
      label: 'Bowl level',
      gloss: 'Float: the fuel below the mouth of the nozzle, engine level.',
      unit: 'mm',
      min: 0.5,
      max: 40,
      assumed: { value: 5, low: 3, high: 8, why: 'float carburettors' },
    }),
  },
)
