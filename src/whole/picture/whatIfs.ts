/** What a builder would ask a craft: an engine dead, swamped, the rider right aft, weed on the grate, cold water; each as another craft. */
import { type Craft, whatIf } from '../../craft/index.ts'

export type WhatIfId = 'one dead' | 'rider aft' | 'weed' | 'cold water' | 'swamped'

export interface WhatIfSwitch {
  id: WhatIfId
  word: string
  /** what exactly is put, in a few words */
  means: string
  /** values put in its place; none where the craft is the same and floats otherwise */
  values: Readonly<Record<string, number | boolean>>
}

/** share of the grate's gaps that weed leaves open: judgement, a handful of weed */
const OPEN = 0.5
/** rider's feet from the transom over the length: as where openings are judged with the rider aft */
const AFT = 0.12
/** K, of a cold spring pond */
const COLD = 277.15

/** The switches that make sense for a craft: with one engine none can be dead, without a grate none is weedy. */
export function whatIfsFor(craft: Craft): readonly WhatIfSwitch[] {
  const running = craft.engines.map((e, i) => ({ i, e })).filter(({ e }) => e.running)
  const dead = running.length > 1 ? running[0] : undefined
  const { grate } = craft.jet
  return [
    ...(dead
      ? [
          {
            id: 'one dead' as const,
            word: 'one engine dead',
            means: `${dead.e.name ?? `engine ${dead.i + 1}`} does not fire`,
            values: { [`engines.${dead.i}.running`]: false },
          },
        ]
      : []),
    {
      id: 'rider aft',
      word: 'rider aft',
      means: 'the rider’s feet an eighth of the length from the transom, and staying there',
      values: { 'rider.position': AFT * craft.hull.length.value, 'rider.moves': false },
    },
    ...(grate
      ? [
          {
            id: 'weed' as const,
            word: 'weed on the grate',
            means: 'half of each gap closed',
            values: { 'jet.grate.gap': OPEN * grate.gap.value },
          },
        ]
      : []),
    {
      id: 'cold water',
      word: 'cold water',
      means: 'water of a cold spring',
      values: { 'place.water temperature': COLD },
    },
    { id: 'swamped', word: 'swamped', means: 'full of water, nobody aboard', values: {} },
  ]
}

/** The craft with switches on; the craft itself with none that changes it. */
export function withWhatIfs(craft: Craft, on: readonly WhatIfSwitch[]): Craft {
  const values = Object.assign({}, ...on.map((s) => s.values)) as Record<string, number | boolean>
  return Object.keys(values).length === 0 ? craft : whatIf(craft, values)
}
