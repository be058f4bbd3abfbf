import { type CheckRow, holds } from '../src/base/answers/check.ts'

const shown = (x: number) => {
  if (x === 0) return '0'
  const size = Math.abs(x)
  return size >= 1e6 || size < 1e-3 ? x.toExponential(4) : String(Number(x.toPrecision(6)))
}

const tolerance = (row: CheckRow) =>
  row.within !== undefined && (row.withinPart ?? 0) * Math.abs(row.expected) <= row.within
    ? `±${shown(row.within)}`
    : `±${shown((row.withinPart ?? 0) * 100)} %`

/** from outside first, by ourselves last */
const kinds = ['published', 'memory', 'exact', 'derived', 'common practice', 'regression'] as const

const cell = (text: string) => text.replace(/\|/g, '\\|').replace(/\s+/g, ' ')

/** The checks as one page: a table a group, each row with what was expected, what came out and from where. */
export function renderChecks(rows: readonly CheckRow[]): string {
  const names = [...new Set(rows.map((r) => r.group))].sort()
  const bad = rows.filter((r) => !holds(r)).length
  const lines = [
    '# Checks against the outside world',
    '',
    'Made by `npm run docs` from `checks/`; a row that does not hold fails `npm test`.',
    '',
    `${rows.length} rows, ${rows.length - bad} hold, ${bad} do not. "Published" rows compare with a printed figure; "exact" rows with`,
    'a closed solution; "derived" ones with a value worked out independently of the code it checks; "memory" ones with a',
    'figure recalled from the named publication; "regression" ones only guard against unnoticed change.',
    '',
    '| kind | rows |',
    '|---|---|',
    ...kinds
      .map((kind) => ({ kind, count: rows.filter((r) => r.origin === kind).length }))
      .filter(({ count }) => count > 0)
      .map(({ kind, count }) => `| ${kind} | ${count} |`),
  ]
  for (const name of names) {
    lines.push(
      '',
      `## ${name}`,
      '',
      '| id | quantity | unit | expected | ours | tolerance | kind | source | holds |',
      '|---|---|---|---|---|---|---|---|---|',
    )
    for (const r of rows.filter((x) => x.group === name))
      lines.push(
        `| ${[r.id, r.quantity, r.unit, shown(r.expected), shown(r.got), tolerance(r), r.origin, r.source, holds(r) ? 'yes' : '**NO**'].map(cell).join(' | ')} |`,
      )
  }
  return `${lines.join('\n')}\n`
}
