import { NumbersTable } from '../../parts/NumbersTable.tsx'
import { type Craft, labelOf } from '../../state/craftFile.ts'

const columns = ['Date', 'What', 'From', 'To', 'Why', 'What it should do'].map((head) => ({ head }))

/** The changes that were kept, newest first, as the file's log has them. */
export function ChangeLog({ craft }: { craft: Craft }) {
  if (craft.log.length === 0) return null
  const rows = craft.log.map((e) => [
    e.date,
    labelOf(e.path),
    e.from ?? '',
    e.to ?? '',
    e.reason ?? '',
    e.expect ?? '',
  ])
  return <NumbersTable caption="Changes kept" columns={columns} rows={rows.reverse()} />
}
