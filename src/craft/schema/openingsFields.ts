import { choice, group, list, place, quantity, text } from '../fields.ts'
import { ringGroup } from './sealFields.ts'

const fixed = (value: number, low: number, high: number, why: string) => ({ value, low, high, why })

/** Where water can get in. */
export const openingsSection = list(
  {
    label: 'Openings',
    gloss: 'Every place where water can get in, at its lowest point.',
  },
  group(
    { label: 'Opening', gloss: 'One place where water can get in.' },
    {
      name: text({ label: 'Name', gloss: 'What it is.', maxLength: 100 }),
      kind: choice(['hatch', 'air intake', 'exhaust outlet', 'tank vent', 'cable', 'shaft seal'], {
        label: 'Kind',
        gloss: 'What the opening is for; the shaft seal is under water by nature.',
      }),
      at: place({
        label: 'At',
        gloss: 'Its lowest point: forward of the transom, to port, up from the foot of the transom.',
        max: 10,
        measure: { what: 'measure from the transom and up from the keel', with: 'tape', minutes: 3 },
      }),
      gap: quantity('area', {
        label: 'Gap',
        gloss: 'Area water can pass once it is under; for a hatch or a seal what it leaks through.',
        unit: 'cm²',
        min: 0,
        max: 2000,
        assumed: {
          by: 'kind',
          each: {
            hatch: fixed(1, 0.1, 10, 'a gasketed hatch that leaks a little all round'),
            'air intake': fixed(15, 5, 40, 'a hose of about 45 mm'),
            'exhaust outlet': fixed(8, 3, 15, 'a pipe of about 32 mm'),
            'tank vent': fixed(0.2, 0.1, 0.5, 'a hose of about 5 mm'),
            cable: fixed(0.1, 0, 1, 'a gland that has loosened'),
            'shaft seal': fixed(0.05, 0, 0.5, 'a seal that weeps'),
          },
          why: 'what such openings usually are',
        },
        measure: { what: 'measure its bore or the gap round it', with: 'caliper', minutes: 3 },
      }),
      clear: quantity('length', {
        label: 'Clear across',
        gloss: 'For a hatch: the least width of the hole with its lid off, clear of its frame.',
        unit: 'mm',
        min: 10,
        max: 2000,
        optional: true,
        measure: { what: 'measure across the open hole where it is narrowest', with: 'tape', minutes: 1 },
      }),
      shut: choice(['screw lid', 'clamped lid', 'screwed lid', 'rivets and sealant'], {
        label: 'Shut by',
        gloss:
          'For a hatch: a lid that screws in like a jar’s, one held by clamps or straps, one held by screws, or closed for good.',
        optional: true,
      }),
      ring: ringGroup,
    },
  ),
)
