/** The season as a table, the same for the page, the command line and JSON. */
import { inMinutes, inNewtons, inRpm, inSpeed } from '../../base/answers/amounts.ts'
import type { NumberTable } from '../../trades/trade.ts'
import { changedSays, type Season } from './season.ts'

/** Runs, oldest first: version, what changed before it, and its numbers. */
export const seasonTable = (season: Season): NumberTable => ({
  caption: 'The season',
  heads: ['run', 'date', 'version', 'pull', 'engine speed', 'top speed', 'ran so far', 'changed before it'],
  rows: season.runs.map((r) => [
    String(r.run.number),
    r.run.entry.at.slice(0, 10),
    `v${r.version}`,
    inNewtons(r.pull),
    inRpm(r.rotation),
    inSpeed(r.topSpeed),
    inMinutes(r.hours),
    changedSays(r),
  ]),
})
