import { box, choice, group, quantity } from '../fields.ts'
import { caliper } from './measureWith.ts'

/** What parts are printed of: filaments, and resin hardened by light. */
export const printMaterials = [
  'PETG',
  'ASA',
  'ABS',
  'PA12',
  'PA12-CF',
  'POM',
  'PC',
  'PVDF',
  'HDPE',
  'PLA',
  'resin',
] as const

const practice = 'common practice, no source; a try-piece tells'
const usual = (value: number, low: number, high: number, why = practice) => ({ value, low, high, why })

/** What printers of each kind usually do, mm. */
export const usualPrints = {
  filament: {
    nozzle: usual(0.4, 0.4, 0.4, 'the usual nozzle'),
    layer: usual(0.2, 0.15, 0.25, 'the usual layer'),
    holes: usual(0.25, 0.1, 0.4),
    foot: usual(0.2, 0, 0.4),
  },
  resin: {
    nozzle: usual(0.05, 0.03, 0.06, 'a pixel of a usual screen'),
    layer: usual(0.05, 0.03, 0.1, 'the usual layer of resin'),
    holes: usual(0.08, 0.05, 0.15),
    foot: usual(0.1, 0, 0.3),
  },
} as const

const kinds = ['filament', 'resin'] as const
const byKind = (what: keyof (typeof usualPrints)['filament']) => ({
  by: 'kind',
  each: { filament: usualPrints.filament[what], resin: usualPrints.resin[what] },
  why: practice,
})

export const printerSection = group(
  {
    label: 'Printer',
    gloss:
      'What parts are printed on, and what its try-pieces came out like: every printed part is corrected by it.',
    optional: true,
  },
  {
    kind: choice(kinds, {
      label: 'Kind',
      gloss: 'Lays down melted filament, or hardens resin by light.',
      assumed: { value: 'filament', why: 'what most workshops have' },
    }),
    material: choice(printMaterials, {
      label: 'Material',
      gloss: 'What parts are printed of, unless a part asks for another.',
      assumed: { value: 'PETG', why: 'prints easily and bears water and a splash of petrol' },
    }),
    nozzle: quantity('length', {
      label: 'Nozzle',
      gloss: 'Its bore; for resin the width of a pixel.',
      unit: 'mm',
      min: 0.02,
      max: 1.5,
      assumed: byKind('nozzle'),
    }),
    layer: quantity('length', {
      label: 'Layer',
      gloss: 'Height of a layer.',
      unit: 'mm',
      min: 0.01,
      max: 1,
      assumed: byKind('layer'),
    }),
    bed: box({
      label: 'Bed',
      gloss: 'The largest part it prints: along, across and up. 220 × 220 × 250 mm where left out.',
      max: 2000,
      unit: 'mm',
      optional: true,
    }),
    scale: quantity('ratio', {
      label: 'Scale',
      gloss:
        'A long print as measured over the same as drawn; by the two bars of the try-piece, which no hole or wall can upset.',
      unit: '%',
      min: 95,
      max: 105,
      assumed: usual(100, 99.6, 100.2, 'as drawn, less a little shrinking'),
      measure: caliper('print the try-piece and measure across both bars'),
    }),
    'hole offset': quantity('length', {
      label: 'Hole offset',
      gloss: 'How much smaller across a hole comes out than it is drawn.',
      unit: 'mm',
      min: -0.5,
      max: 1.5,
      assumed: byKind('holes'),
      measure: caliper('measure across the hole of the try-piece, twice, and take it from what is drawn'),
    }),
    'thread clearance': quantity('length', {
      label: 'Thread clearance',
      gloss: 'On the radius of each printed thread: that of the tightest try-piece that turned on by hand.',
      unit: 'mm',
      min: 0,
      max: 1,
      optional: true,
      measure: {
        what: 'print the ring with three clearances and try which turns on by hand',
        with: 'the neck itself',
        minutes: 15,
      },
    }),
    'elephant foot': quantity('length', {
      label: 'Elephant foot',
      gloss: 'How far the first layers bulge out on each side.',
      unit: 'mm',
      min: 0,
      max: 1,
      assumed: byKind('foot'),
      measure: caliper('measure across the foot of the try-piece and 3 mm above it; half the difference'),
    }),
  },
)
