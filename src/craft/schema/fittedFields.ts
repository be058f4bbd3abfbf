import { group, quantity, text } from '../fields.ts'

const factor = (label: string, gloss: string, min: number, max: number) =>
  quantity('ratio', { label, gloss, min, max, optional: true })

/** How the models were fitted to runs; written by the program when asked to, taken out again by deleting it. */
export const fittedSection = group(
  {
    label: 'Fitted',
    gloss:
      'How the models were fitted to trusted runs. Written by calibrate --keep; delete it and the craft is reckoned without.',
    optional: true,
  },
  {
    runs: text({ label: 'Runs', gloss: 'Dates of the runs it was fitted to.', maxLength: 300 }),
    engine: factor('Engine', 'Torque of the engines over what the impeller takes of it, a factor.', 0.4, 1.6),
    thrust: factor('Thrust', 'Thrust at an impeller speed, a factor.', 0.4, 1.6),
    drag: factor('Drag', 'Drag of the hull, a factor.', 0.4, 3),
    'rotation left': factor('Rotation left', 'How much of the doubt of the engine speed is left.', 0, 1),
    'pull left': factor('Pull left', 'How much of the doubt of the pull is left.', 0, 1),
    'speed left': factor('Speed left', 'How much of the doubt of the top speed is left.', 0, 1),
  },
)
