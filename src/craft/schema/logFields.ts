import { group, list, text } from '../fields.ts'

/** Changes that were kept, oldest first; written by the program, read by people. */
export const logSection = list(
  { label: 'Log', gloss: 'Changes that were kept, oldest first.', maxItems: 1000 },
  group(
    { label: 'Entry', gloss: 'One change.' },
    {
      date: text({
        label: 'Date',
        gloss: 'When it was kept: year-month-day, a time may follow.',
        pattern: /^\d{4}-\d{2}-\d{2}([T ]\d{2}:\d{2}(:\d{2}(\.\d+)?)?(Z|[+-]\d{2}:\d{2})?)?$/,
        patternSays: 'a date such as 2026-05-14',
      }),
      path: text({
        label: 'What',
        gloss: 'Path of the value that changed, such as jet.rotor.pitch.',
        maxLength: 200,
      }),
      from: text({ label: 'From', gloss: 'The value before; left out when there was none.', optional: true }),
      to: text({ label: 'To', gloss: 'The value since; left out when it was taken away.', optional: true }),
      reason: text({ label: 'Reason', gloss: 'Why it was changed.', optional: true }),
      expect: text({ label: 'Expected', gloss: 'What it should do.', optional: true }),
    },
  ),
)
