/** Sessions in a few words, all invented, with the cause a practised eye names first; from the project's own sheet on reading runs. */
import { describe, expect, test } from 'vitest'
import { demoCraft } from '../push/demo.testkit.ts'
import type { RunRanking } from './rankingTypes.ts'
import { rankLimits } from './rankLimits.ts'
import { rankRun } from './rankRun.ts'

const craft = demoCraft('teal')

const ranked = (
  signs: Readonly<Record<string, string>>,
  sure?: Readonly<Record<string, number>>,
): RunRanking =>
  rankRun({
    craft,
    observed: Object.entries(signs).map(([id, state]) => ({
      id,
      state,
      ...(sure?.[id] === undefined ? {} : { sure: sure[id] }),
    })),
  })

/** Place of a cause, couplings counted as one; 1 is first. */
function placeOf(r: RunRanking, id: string): number {
  const seen = [...new Set(r.causes.map((c) => c.id.replace(/:.*/, '')))]
  return seen.indexOf(id) + 1 || 99
}

const vignettes: readonly { id: string; signs: Readonly<Record<string, string>>; first: string }[] = [
  {
    id: 'V1 races and smells of rubber',
    first: 'coupling',
    signs: {
      engines: 'unlike',
      raced: 'stayed',
      heat: 'coupling hot',
      smoke: 'rubber',
      rpm: 'high',
      pull: 'low',
    },
  },
  {
    id: 'V2 the push comes and goes, with froth',
    first: 'ventilating',
    signs: { raced: 'came back', jet: 'frothy', trim: 'bow up', lasted: 'in turns' },
  },
  {
    id: 'V3 fades after minutes, the cap cures it',
    first: 'vent',
    signs: { lasted: 'after a minute or two', cap: 'recovered', choke: 'helped' },
  },
  {
    id: 'V4 half choke helps, white plug',
    first: 'lean',
    signs: { choke: 'helped', plug: 'white', opening: 'bogged' },
  },
  {
    id: 'V5 burbles and smokes',
    first: 'rich',
    signs: { sounded: 'burbling', smoke: 'heavy', plug: 'black and dry', choke: 'made it worse' },
  },
  {
    id: 'V6 one tone only, the nose digs',
    first: 'one-dead',
    signs: { engines: 'only one', rpm: 'far low', trim: 'bow down', jet: 'weak' },
  },
  {
    id: 'V7 held down but pulling hard',
    first: 'steep',
    signs: { rpm: 'low', pull: 'high', opening: 'bogged', jet: 'solid', lasted: 'from the start' },
  },
  {
    id: 'V8 all right and slow',
    first: 'hull',
    signs: { rpm: 'as predicted', pull: 'as predicted', pace: 'slow', trim: 'bow up' },
  },
  {
    id: 'V9 a step in the pull',
    first: 'mistuned',
    signs: { step: 'a step', rpm: 'low', choke: 'no change', pull: 'as predicted' },
  },
  {
    id: 'V10 muffled, steam, water on the plug',
    first: 'wet-exhaust',
    signs: { sounded: 'muffled', smoke: 'steam', plug: 'water drops', rpm: 'low' },
  },
  {
    id: 'V11 cuts in and out when warm',
    first: 'ignition',
    signs: { sounded: 'missing', lasted: 'when hot', choke: 'no change', plug: 'black and dry' },
  },
  {
    id: 'V12 stopped dead, locked',
    first: 'seized',
    signs: { lasted: 'suddenly', hand: 'locked', heat: 'very hot' },
  },
  {
    id: 'V13 fast and thin',
    first: 'shallow',
    signs: { rpm: 'high', pull: 'low', lasted: 'from the start', jet: 'solid', pitch: 'shallower' },
  },
  {
    id: 'V14 weed after the shallows',
    first: 'weed',
    signs: {
      lasted: 'after a minute or two',
      pull: 'low',
      jet: 'weak',
      raced: 'stayed',
      rpm: 'high',
      engines: 'alike',
      intake: 'weed',
    },
  },
  {
    id: 'V15 a wide gap',
    first: 'wide-gap',
    signs: { pull: 'low', jet: 'weak', gap: 'wide', lasted: 'from the start' },
  },
  {
    id: 'V17 the lever does not open it',
    first: 'throttle-short',
    signs: { rpm: 'low', opening: 'cleanly', throttle: 'half', hand: 'free', idle: 'as usual', plug: 'tan' },
  },
  {
    id: 'V20 went under and will not start',
    first: 'dunked',
    signs: { start: 'not at all', plug: 'water drops', water: 'a lot', filter: 'wet or dirty' },
  },
]

describe('vignettes', () => {
  for (const v of vignettes) {
    test(`${v.id}: the expected cause is first`, () => {
      const r = ranked(v.signs)
      expect([v.first, placeOf(r, v.first)]).toEqual([v.first, 1])
    })
    test(`${v.id}: with any one sign left out it is second at worst`, () => {
      for (const left of Object.keys(v.signs)) {
        const { [left]: _, ...signs } = v.signs
        expect([left, Math.min(3, placeOf(ranked(signs), v.first))]).not.toEqual([left, 3])
      }
    })
  }

  test('V16, two vague signs: nothing is decided', () => {
    const r = ranked({ rpm: 'low', engines: 'unlike' }, { rpm: 0.8, engines: 0.7 })
    expect(r.decided).toBe(false)
    expect(r.causes[0]!.share).toBeLessThan(0.36)
  })

  test('V18, all as it should be: nothing is wrong stands first', () => {
    const r = ranked({
      rpm: 'as predicted',
      pull: 'as predicted',
      pace: 'as predicted',
      sounded: 'clean',
      lasted: 'from the start',
      engines: 'alike',
    })
    expect(placeOf(r, 'as-designed')).toBe(1)
  })

  test('V19, two faults at once: both are among the first three', () => {
    const r = ranked({
      opening: 'bogged',
      choke: 'helped',
      plug: 'white',
      pull: 'as predicted',
      pace: 'slow',
      trim: 'bow up',
      jet: 'solid',
    })
    expect(placeOf(r, 'lean')).toBeLessThanOrEqual(2)
    expect(placeOf(r, 'hull')).toBeLessThanOrEqual(2)
  })

  test('what is decided moves with its limits', () => {
    const signs = { lasted: 'after a minute or two', cap: 'recovered', choke: 'helped' }
    expect(ranked(signs).decided).toBe(true)
    const deaf = { ...rankLimits, decided: { ...rankLimits.decided, value: 2 } }
    const observed = Object.entries(signs).map(([id, state]) => ({ id, state }))
    expect(rankRun({ craft, observed }, deaf).decided).toBe(false)
  })
})
