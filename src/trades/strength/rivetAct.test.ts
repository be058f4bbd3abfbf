import { expect, test } from 'vitest'
import { printed } from '../../base/answers/sentence.ts'
import { demoCraft } from '../../craft/craft.testkit.ts'
import { whatIf } from '../../craft/index.ts'
import { strengthFindingsOf } from './deckFindings.ts'
import { strengthFromCraft } from './strengthFromCraft.ts'

const rivetsOf = (craft: ReturnType<typeof demoCraft>) =>
  strengthFindingsOf(strengthFromCraft(craft)).find((f) => f.id === 'deck.rivets')!

test('rivets done as advised hold, and none are asked for that would stand closer than three diameters', () => {
  const heron = demoCraft('heron')
  let advised = 0
  let beyond = 0
  for (const size of [3.2e-3, 4e-3, 4.8e-3])
    for (const pitch of [0.02, 0.03, 0.05])
      for (const mass of [45, 78, 110]) {
        const craft = whatIf(heron, {
          'deck.rivet size': size,
          'deck.rivet pitch': pitch,
          'rider.mass': mass,
        })
        const f = rivetsOf(craft)
        if (f.standing === 'good') continue
        const act = printed(f.act!)
        const [, wanted, every] = /rivets(?: of ([\d.]+) mm)? every ([\d.]+) mm$/.exec(act) ?? []
        if (every === undefined) {
          expect(act).toMatch(
            /^foam or a frame under .*: even rivets of 4.8 mm every 14 mm, as close as they may stand/,
          )
          beyond++
          continue
        }
        const diameter = wanted ? Number(wanted) / 1e3 : size
        expect(Number(every) / 1e3).toBeGreaterThanOrEqual(3 * diameter - 1.0001e-3)
        const done = whatIf(craft, { 'deck.rivet size': diameter, 'deck.rivet pitch': Number(every) / 1e3 })
        expect(rivetsOf(done).standing, `${size} ${pitch} ${mass}: ${act}`).toBe('good')
        advised++
      }
  expect(advised).toBeGreaterThan(3)
  expect(beyond).toBeGreaterThan(0)
})
