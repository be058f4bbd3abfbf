import { expect, test } from 'vitest'
import type { FileChange, Harm } from '../base/answers/decision.ts'
import type { Finding, Standing } from '../base/answers/finding.ts'
import type { Craft } from '../craft/index.ts'
import { decisionsOf, nextFirst, nextOf } from './decisions.ts'

const craft = {} as Craft
interface Made {
  standing?: Standing
  harm?: Harm
  act?: string
  changes?: readonly FileChange[]
  newtons?: number
}
const finding = (id: string, { newtons, ...rest }: Made): Finding => ({
  id,
  question: 'push',
  says: id,
  standing: 'watch',
  because: [],
  sources: [],
  ...(newtons === undefined ? {} : { gain: { pull: { value: newtons, low: newtons, high: newtons } } }),
  ...rest,
})
const pitch = (to: string): FileChange[] => [{ path: 'jet.rotor.pitch', from: '100 mm', to }]
const ids = (list: readonly { id: string }[]) => list.map((d) => d.id)

test('within a harm what stops comes first, then what one can act on, then the most gainful', () => {
  const list = decisionsOf(craft, [
    finding('only-known', { harm: 'before the water' }),
    finding('to-do', { harm: 'before the water', act: 'raise it' }),
    finding('stops', { harm: 'before the water', standing: 'stop' }),
    finding('buys-little', { harm: 'costs speed', act: 'a', newtons: 3 }),
    finding('buys-much', { harm: 'costs speed', act: 'b', newtons: 30 }),
    finding('lid', { harm: 'comfort', act: 'c' }),
  ])
  expect(ids(list)).toEqual(['stops', 'to-do', 'only-known', 'buys-much', 'buys-little', 'lid'])
})

test('two findings that ask for the same change are one decision, resting on both', () => {
  const list = decisionsOf(craft, [
    finding('push.pitch', { act: 'print 64', changes: pitch('64 mm'), newtons: 30, harm: 'costs speed' }),
    finding('push.best-change', {
      act: 'print 64',
      changes: pitch('64 mm'),
      newtons: 30,
      harm: 'costs speed',
    }),
    finding('push.other', { act: 'print 70', changes: pitch('70 mm'), newtons: 20, harm: 'costs speed' }),
  ])
  expect(ids(list)).toEqual(['impeller', 'push.other'])
  expect(list[0]!.findings).toEqual(['push.pitch', 'push.best-change'])
})

test('next is the worst that can be acted on, then the changes that buy most, three at most', () => {
  const list = decisionsOf(craft, [
    finding('balance', { harm: 'before the water', standing: 'stop' }),
    finding('outlet', { harm: 'before the water', act: 'raise it' }),
    finding('one', { harm: 'costs speed', act: 'x', changes: pitch('60 mm'), newtons: 9 }),
    finding('two', { harm: 'costs speed', act: 'x', changes: pitch('61 mm'), newtons: 8 }),
    finding('three', { harm: 'costs speed', act: 'x', changes: pitch('62 mm'), newtons: 7 }),
  ])
  expect(ids(nextOf(list))).toEqual(['outlet', 'one', 'two'])
  expect(ids(nextFirst(list))).toEqual(['outlet', 'one', 'two', 'balance', 'three'])
  expect(nextOf([])).toEqual([])
  expect(nextOf(decisionsOf(craft, [finding('balance', {})]))).toEqual([])
})

test('how fast it runs is told by the headline and is no decision, also where it stays below the hump', () => {
  const list = decisionsOf(craft, [finding('push.top', {}), finding('push.hump', { standing: 'stop' })])
  expect(ids(list)).toEqual(['push.hump'])
})
