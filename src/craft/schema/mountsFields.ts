import { choice, count, group, quantity } from '../fields.ts'

export const mountsSection = group(
  {
    label: 'Mounts',
    gloss: 'Rubber under the engines; leave the section out where they are bolted down hard.',
    optional: true,
  },
  {
    number: count({
      label: 'Number',
      gloss: 'Of rubber mounts under what they carry together.',
      min: 2,
      max: 24,
      assumed: { value: 4, low: 4, high: 4, why: 'one at each corner' },
    }),
    across: quantity('length', {
      label: 'Across',
      gloss: 'Diameter of one mount.',
      unit: 'mm',
      min: 6,
      max: 150,
      assumed: { value: 25, low: 20, high: 30, why: 'usual small rubber mounts' },
      measure: { what: 'measure one across', with: 'caliper', minutes: 1 },
    }),
    height: quantity('length', {
      label: 'Height',
      gloss: 'Of the rubber of one mount.',
      unit: 'mm',
      min: 3,
      max: 120,
      assumed: { value: 20, low: 15, high: 25, why: 'usual small rubber mounts' },
      measure: { what: 'measure the rubber between its plates', with: 'caliper', minutes: 1 },
    }),
    hardness: quantity('ratio', {
      label: 'Hardness',
      gloss: 'Of the rubber, degrees Shore A as moulded on it.',
      unit: '',
      min: 30,
      max: 90,
      assumed: { value: 55, low: 45, high: 65, why: 'the usual stock' },
    }),
    loaded: choice(['pressed', 'sheared'], {
      label: 'Loaded',
      gloss: 'The weight presses the rubber together, or shears it.',
      assumed: { value: 'pressed', why: 'engines stand on their mounts' },
    }),
    mass: quantity('mass', {
      label: 'Mass',
      gloss: 'Of what stands on these mounts.',
      unit: 'kg',
      min: 0.5,
      max: 500,
      measure: { what: 'hang it on the scale', with: 'luggage scale', minutes: 4 },
    }),
    track: quantity('length', {
      label: 'Track',
      gloss: 'From the mounts on one side to those on the other.',
      unit: 'mm',
      min: 20,
      max: 1500,
      assumed: { value: 140, low: 100, high: 200, why: 'feet of a small engine' },
      measure: { what: 'measure from mount to mount across the craft', with: 'tape', minutes: 1 },
    }),
    under: choice(['each engine', 'one frame'], {
      label: 'Under',
      gloss: 'Each engine by itself, or one stiff frame that carries engines and shaft together.',
      assumed: { value: 'each engine', why: 'counted on as one frame only when said' },
    }),
  },
)
