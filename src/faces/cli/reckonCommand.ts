import Table from 'cli-table3'
import { describeReckoner, reckonTexts } from '../../base/answers/reckonTexts.ts'
import { formatQuantity } from '../../base/units/format.ts'
import { nearest } from '../../base/units/near.ts'
import { findReckoner, reckoners } from '../../whole/reckoners.ts'
import { BadInput, exit, print, printJson } from './outcome.ts'

export interface ReckonOptions {
  list?: boolean
  json?: boolean
}

const plain = { head: [] as string[], border: [] as string[] }

/** `wakewright reckon`: lists reckoners, describes one, or runs it. Returns the exit code. */
export async function reckon(
  id: string | undefined,
  inputs: readonly string[],
  options: ReckonOptions,
): Promise<number> {
  if (id === undefined) {
    if (!options.list) throw new BadInput(['reckon: name a reckoner, or add --list to see them all'])
    if (options.json) printJson(reckoners.map(describeReckoner))
    else print(listing())
    return exit.fine
  }
  const reckoner = findReckoner(id)
  if (!reckoner) {
    const near = nearest(
      id,
      reckoners.map((r) => r.id),
    )
    throw new BadInput([
      `reckon: there is no reckoner "${id}"${near ? `; "${near}" may be meant` : ''} (see reckon --list)`,
    ])
  }
  const described = describeReckoner(reckoner)
  if (options.list) {
    if (options.json) printJson(described)
    else print(page(described))
    return exit.fine
  }
  const texts: Record<string, string> = {}
  for (const given of inputs) {
    const at = given.indexOf('=')
    if (at < 1) throw new BadInput([`reckon ${id}: "${given}" is not name=value`])
    const name = given.slice(0, at).trim()
    if (name in texts) throw new BadInput([`reckon ${id}: ${name} is given twice`])
    texts[name] = given.slice(at + 1)
  }
  const answer = reckonTexts(reckoner, texts)
  if (!answer.ok) throw new BadInput(answer.problems.map((p) => `reckon ${id}: ${p.input} ${p.says}`))
  if (options.json) {
    printJson({
      outputs: answer.outputs,
      units: answer.units,
      inputs: answer.inputs,
      sources: answer.sources,
    })
    return exit.fine
  }
  const table = new Table({ style: plain, head: ['', 'answer', 'what'] })
  for (const p of reckoner.outputs)
    table.push([p.name, formatQuantity(answer.outputs[p.name]!, p.kind, p.unit), p.says])
  print(`${reckoner.title}\n${table.toString()}\nSources: ${reckoner.sources.join('; ')}`)
  for (const c of reckoner.cautions ?? []) print(`Caution: ${c}`)
  return exit.fine
}

function listing(): string {
  const table = new Table({
    style: plain,
    head: ['reckoner', 'trade', 'answers'],
    wordWrap: true,
    colWidths: [30, 12, 70],
  })
  for (const r of reckoners) table.push([r.id, r.trade, r.title])
  return `${table.toString()}\n${reckoners.length} reckoners; "reckon ID --list" shows the inputs of one.`
}

function page(r: ReturnType<typeof describeReckoner>): string {
  const table = new Table({
    style: plain,
    head: ['', 'name', 'what', 'unit', 'range', 'assumed'],
    wordWrap: true,
    colWidths: [5, 22, 48, 10, 26, 12],
  })
  for (const p of r.inputs)
    table.push([
      'in',
      p.name,
      p.says,
      p.shownIn,
      p.range,
      p.assumed === undefined ? '' : `${p.assumed} ${p.unit}`,
    ])
  for (const p of r.outputs) table.push(['out', p.name, p.says, p.shownIn, '', ''])
  const cautions = r.cautions.map((c) => `\nCaution: ${c}`).join('')
  return `${r.id}: ${r.title}\n${r.says}\n${table.toString()}\nSources: ${r.sources.join('; ')}${cautions}`
}
