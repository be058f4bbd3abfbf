import { expect, test, vi } from 'vitest'
import { printed } from '../../base/answers/sentence.ts'
import { rankRun } from '../../whole/faults/rankRun.ts'
import { demoCraft } from '../../whole/push/demo.testkit.ts'
import { ask, placed, typedSaid } from './askCommand.ts'
import { askText } from './askText.ts'
import { BadInput } from './outcome.ts'

const teal = 'demo/teal.yaml'

test('what was said is ranked and printed on thirty lines at most', () => {
  const r = rankRun({
    craft: demoCraft('teal'),
    observed: typedSaid(['lasted=after a minute or two', 'cap=recovered', 'choke=helped']),
  })
  const text = askText(r, 'metric')
  expect(text.split('\n').length).toBeLessThanOrEqual(30)
  expect(text).toContain('The tank cannot breathe')
  expect(text).toContain('Next check')
  expect(text).not.toMatch(/NaN|undefined/)
  expect(printed(r.causes[0]!.says)).not.toBe('')
})

test('an observation, a state or a check that is not in the list is named with what may be said', async () => {
  expect(() => typedSaid(['chok=helped'])).toThrow(BadInput)
  expect(() => typedSaid(['choke=better'])).toThrow(/helped, made it worse/)
  await expect(
    ask(teal, undefined, { units: 'metric', said: ['choke=helped'], found: ['bolts=gone'] }),
  ).rejects.toThrow(/bolts out/)
  await expect(ask(teal, undefined, { units: 'metric' })).rejects.toThrow(/--said/)
  await expect(
    ask(teal, undefined, { units: 'metric', said: ['choke=helped'], weigh: ['weed=many'] }),
  ).rejects.toThrow(/0 to 1000/)
  await expect(
    ask(teal, undefined, { units: 'metric', said: ['choke=helped'], weigh: ['weeds=3'] }),
  ).rejects.toThrow(/"weeds" is not one of .*weed/)
})

test('a stretch that the run does not have is named with those it has', async () => {
  await expect(ask(teal, undefined, { units: 'metric', said: ['choke=helped@e4'] })).rejects.toThrow(
    /without a recording/,
  )
  const episodes = [{ id: 'e0', kind: 'pulling', from: 0, to: 5, says: 'it pulls' }]
  const at = (episode: string) => [{ id: 'choke', state: 'helped', episode }]
  expect(() => placed(at('e4'), { episodes })).toThrow(/"e4" is not one of e0/)
  expect(() => placed(at('e0'), { episodes })).not.toThrow()
})

test('as JSON every cause has its share and every check its outcomes', async () => {
  const out: string[] = []
  const write = vi.spyOn(process.stdout, 'write').mockImplementation((text) => {
    out.push(String(text))
    return true
  })
  try {
    expect(await ask(teal, undefined, { units: 'metric', said: ['choke=helped'], json: true })).toBe(0)
  } finally {
    write.mockRestore()
  }
  const json = JSON.parse(out.join('')) as {
    causes: { id: string; share: number }[]
    checks: { outcomes: unknown[] }[]
  }
  expect(json.causes[0]!.id).toBe('lean')
  expect(json.checks.every((c) => c.outcomes.length > 1)).toBe(true)
})
