import { expect, test } from 'vitest'
import { beyondRoom, tubeBores } from '../../src/trades/exhaust/pipeShape.ts'
import { findPipe } from '../../src/whole/breath/pipeSearch.ts'
import { findStinger } from '../../src/whole/breath/stingerSearch.ts'
import { demoCraft } from '../../src/whole/push/demo.testkit.ts'

const craft = demoCraft('dabchick')

test('a stinger search tells pull, heat and risk by rising bore, and picks one that is no risk', async () => {
  const { rows, now, best, final, lengths } = await findStinger(craft, { index: 0 })
  expect(final).toBe(true)
  expect(lengths).toHaveLength(4)
  expect(rows.map((r) => r.bore)).toEqual(rows.map((r) => r.bore).sort((a, b) => a - b))
  expect(rows).toContain(now)
  expect(best.thrust).toBeGreaterThanOrEqual(now.thrust)
  expect(best.risk).not.toBe('stop')
  for (let i = 1; i < rows.length; i++) expect(rows[i]!.inside).toBeLessThan(rows[i - 1]!.inside)
}, 600_000)

test('a pipe search finds no less than there is, in sizes that can be made, inside the room, and says what is next', async () => {
  const a = await findPipe(craft, { index: 0 })
  expect(a.final).toBe(true)
  expect(a.found.cells).toBe('fine')
  expect(a.found.score).toBeGreaterThan(0.99)
  expect(beyondRoom(a.found.pipe, a.room)).toBeLessThan(0.01)
  expect(tubeBores).toContain(a.found.pipe.stinger.bore)
  expect(a.next).toHaveLength(8)
  for (const n of a.next) expect(Number.isFinite(n.peakAt + n.torque + n.thrust)).toBe(true)
}, 900_000)
