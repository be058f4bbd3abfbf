import { entrySays } from '../../../../../whole/log/craftLog.ts'
import { NumbersTable } from '../../../parts/NumbersTable.tsx'
import type { Craft } from '../../../state/craftFile.ts'
import { useApp } from '../../../state/hooks.ts'
import type { Kept } from '../KeptRuns.tsx'
import { AddEntry } from './AddEntry.tsx'
import { TakeAway } from './TakeAway.tsx'
import type { OwnLog } from './useCraftLog.ts'

const columns = ['No', 'Date', 'Kind', 'What'].map((head) => ({ head }))

/** The craft's log, newest first, and what to do with it. */
export function LogFold({ craft, own, kept }: { craft: Craft; own: OwnLog; kept: Kept }) {
  const craftId = useApp((s) => s.work?.id)
  if (!craftId) return null
  const { entries, problems } = own.log
  const rows = entries.map((e) => [String(e.number), e.entry.at.slice(0, 10), e.entry.kind, entrySays(e)])
  return (
    <section className="craftlog">
      <AddEntry craftId={craftId} craftName={craft.name} />
      {problems.length > 0 && (
        <ul className="plainlist flags">
          {problems.map((p) => (
            <li key={`${p.line} ${p.says}`}>
              Line {p.line} of the log: {p.says}
            </li>
          ))}
        </ul>
      )}
      {rows.length > 0 && <NumbersTable caption="The log" columns={columns} rows={rows.reverse()} />}
      <TakeAway craft={craft} craftId={craftId} text={own.text} kept={kept} />
    </section>
  )
}
