import { choice, group, quantity } from '../fields.ts'

export const driveSection = group(
  { label: 'Drive', gloss: 'What lies between the engines and the impeller.' },
  {
    arrangement: choice(['one shaft', 'a jet each'], {
      label: 'Arrangement',
      gloss: 'All engines on one shaft and one jet, or a jet for each engine (all jets alike).',
      assumed: { value: 'one shaft', why: 'the simplest arrangement' },
    }),
    ratio: quantity('ratio', {
      label: 'Ratio',
      gloss: 'Engine turns for one turn of the impeller; above 1 the impeller turns slower.',
      unit: '',
      min: 0.2,
      max: 10,
      exact: true,
      assumed: { value: 1, low: 1, high: 1, why: 'direct drive' },
      undecided: { value: 1.3, low: 1, high: 2, why: 'a belt or gears, not decided yet' },
      measure: {
        what: 'count the teeth, or turn the engine and count turns of the impeller',
        with: 'chalk',
        minutes: 5,
      },
    }),
    efficiency: quantity('ratio', {
      label: 'Efficiency',
      gloss: 'Part of the engine torque that reaches the impeller shaft past belt, seals and bearings.',
      unit: '%',
      min: 50,
      max: 100,
      assumed: {
        value: 97,
        low: 94,
        high: 99,
        why: 'one belt or a coupling, two bearings and a seal, common practice',
      },
    }),
    clutch: choice(['none', 'one-way'], {
      label: 'Clutch',
      gloss: 'A one-way clutch on each engine lets a dead engine stand still while the other drives.',
      assumed: { value: 'none', why: 'the usual straight coupling' },
    }),
  },
)
