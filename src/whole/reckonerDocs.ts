import type { Port, Reckoner } from '../base/answers/reckoner.ts'
import { rangeOf } from '../base/answers/reckonTexts.ts'
import { siUnit } from '../base/units/kinds.ts'

const cell = (text: string) => text.replace(/\|/g, '\\|').replace(/\s+/g, ' ')

function portRow(p: Port): string {
  const assumed =
    p.assumed === undefined ? '' : `${Number(p.assumed.toPrecision(6))} ${siUnit(p.kind)}`.replace(/ 1$/, '')
  return `| \`${p.name}\` | ${cell(p.says)} | ${cell(p.unit === '1' ? '' : p.unit)} | ${cell(rangeOf(p))} | ${cell(assumed)} |`
}

/** One page that lists every reckoner with its inputs, outputs, sources and cautions. */
export function renderReckoners(reckoners: readonly Reckoner[]): string {
  const trades = [...new Set(reckoners.map((r) => r.trade))].sort()
  const lines = [
    '# Reckoners',
    '',
    'Made by `npm run docs` from the registry. A reckoner answers one handbook question:',
    '',
    '```',
    './wakewright reckon --list',
    './wakewright reckon ID name=value… [--json]',
    '```',
    '',
    'Values carry their unit (`bore="120 mm"`); a bare number is SI. Answers in JSON are SI.',
    '',
    ...trades.flatMap((t) => [
      `**${t}**: ${reckoners
        .filter((r) => r.trade === t)
        .map((r) => `[${r.id}](#${r.id.toLowerCase()})`)
        .join(', ')}`,
      '',
    ]),
  ]
  for (const r of [...reckoners].sort((a, b) => a.trade.localeCompare(b.trade))) {
    lines.push(`## ${r.id}`, '', `**${r.title}** (${r.trade}). ${r.says}`, '')
    lines.push(
      '| input | what | unit | range | assumed |',
      '|---|---|---|---|---|',
      ...r.inputs.map(portRow),
      '',
    )
    lines.push('| output | what | unit |', '|---|---|---|')
    for (const p of r.outputs)
      lines.push(`| \`${p.name}\` | ${cell(p.says)} | ${cell(p.unit === '1' ? '' : p.unit)} |`)
    lines.push('', `Sources: ${r.sources.join('; ')}.`)
    for (const c of r.cautions ?? []) lines.push('', `Caution: ${c}`)
    lines.push('')
  }
  return `${lines.join('\n').trimEnd()}\n`
}
