import { choice, count, group, list, quantity, text } from '../fields.ts'

const side = (label: string, gloss: string) =>
  quantity('length', { label, gloss, unit: 'mm', min: 20, max: 6000 })

/** What lies in the workshop to cut from, and what can be rolled there. */
export const stockSection = group(
  {
    label: 'Stock',
    gloss: 'Sheets and offcuts there are to cut from, and what can be rolled.',
    optional: true,
  },
  {
    roller: quantity('length', {
      label: 'Least roll',
      gloss:
        'Smallest diameter that you can roll or bend sheet to: of the roller, or of the pipe you bend over.',
      unit: 'mm',
      min: 5,
      max: 500,
      optional: true,
    }),
    sheets: list(
      { label: 'Sheets', gloss: 'Sheets and rectangular offcuts.', maxItems: 100 },
      group(
        { label: 'Sheet', gloss: 'Sheets of one size.' },
        {
          name: text({ label: 'Name', gloss: 'What you call it.', maxLength: 60 }),
          metal: choice(['steel', 'aluminium'], {
            label: 'Metal',
            gloss: 'Steel for what gets hot, aluminium for decks and tanks.',
            assumed: { value: 'steel', why: 'pipes take most of the sheet' },
          }),
          thickness: quantity('length', {
            label: 'Thickness',
            gloss: 'Measured, not as sold.',
            unit: 'mm',
            min: 0.2,
            max: 10,
          }),
          length: side('Length', 'Along the rolling direction.'),
          width: side('Width', 'Across the rolling direction.'),
          count: count({
            label: 'Count',
            gloss: 'How many there are.',
            min: 1,
            max: 100,
            assumed: { value: 1, low: 1, high: 1, why: 'one unless said' },
          }),
        },
      ),
    ),
  },
)
