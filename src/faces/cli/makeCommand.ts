import { mkdirSync, writeFileSync } from 'node:fs'
import { join, resolve } from 'node:path'
import { styleText } from 'node:util'
import { zipSync } from 'fflate'
import { inHours, inKg } from '../../base/answers/amounts.ts'
import { worstStanding } from '../../base/answers/finding.ts'
import type { MadePart } from '../../base/answers/madePart.ts'
import { printed, say } from '../../base/answers/sentence.ts'
import type { DisplaySystem } from '../../base/units/format.ts'
import { formatProblem } from '../../craft/index.ts'
import { type PaperName, papers } from '../../drawing/papers.ts'
import { typedScale } from '../../drawing/printScale.ts'
import { lookAt } from '../../whole/look.ts'
import { allParts, handsOn, massOf } from '../../whole/make/partsOfCraft.ts'
import { type PatternPaper, patternFile } from '../../whole/make/patternFiles.ts'
import { unitsOf } from './lookCommand.ts'
import { BadInput, exit, print, printJson } from './outcome.ts'
import { readCraftFile } from './readCraftFile.ts'
import { solidFiles } from './solidFiles.ts'

interface MakeOptions {
  to?: string
  paper: string
  square?: string
  json?: boolean
  units: string
}

/** `wakewright make`: lists the parts of a craft, and writes their patterns. */
export async function make(file: string, wanted: readonly string[], options: MakeOptions): Promise<number> {
  const { units } = unitsOf('make', options)
  const on = paperOf(options, units)
  const { craft, warnings } = readCraftFile(file)
  for (const w of warnings) process.stderr.write(`${formatProblem(w)}\n`)
  const all = allParts(craft, lookAt(craft, { ranges: false }).findings)
  const unknown = wanted.filter((id) => !all.some((p) => isWanted(p, id)))
  if (unknown.length > 0)
    throw new BadInput([
      `make: no part ${unknown.join(', ')}; expected ${all.length > 0 ? all.map((p) => p.id).join(', ') : 'none: the craft file names nothing to make'}`,
    ])
  const parts = wanted.length > 0 ? all.filter((p) => wanted.some((id) => isWanted(p, id))) : all
  const solids = await solidFiles(options.to === undefined ? [] : parts.filter((p) => p.solid), craft, units)
  const written =
    options.to === undefined ? [] : await writeParts(parts, resolve(options.to), on, solids.files)
  const code = worstStanding(parts.flatMap((p) => [...p.findings])) === 'stop' ? exit.stop : exit.fine
  if (options.json) {
    printJson({ units: 'SI', parts: parts.map(({ flats: _, folded: __, ...told }) => told), written })
    return code
  }
  print(`\n${styleText('bold', craft.name)}\n`)
  for (const part of parts) print(partText(part, units, wanted.length > 0))
  for (const line of solids.lines) print(line)
  const { low, high } = handsOn(parts)
  const mass = massOf(parts)
  print(
    parts.length > 0
      ? printed(say`\nAll of it: ${inKg(mass)}, ${inHours(low)} to ${inHours(high)} by hand.`, units)
      : 'The craft file names nothing to make.',
  )
  for (const name of written) print(name)
  return code
}

/** Asked for by its name, or with its whole set by the name without its number: `impeller`. */
const isWanted = (part: MadePart, id: string): boolean =>
  part.id === id || part.id.replace(/-\d+$/, '') === id

/** A part in a line; with its steps and cautions where it was asked for by name. */
function partText(part: MadePart, units: DisplaySystem, whole: boolean): string {
  const { low, high } = handsOn([part])
  const amounts =
    part.mass === undefined
      ? ''
      : printed(say` ${inKg(part.mass, 0.001)}, ${inHours(low)} to ${inHours(high)} by hand.`, units)
  const faults = part.findings.map((f) => `\n       ${printed(f.says, units)}`).join('')
  const steps = whole
    ? [...part.steps.map((step) => printed(step, units)), ...part.cautions.map((c) => `Caution: ${c}`)]
    : []
  const told = steps.map((step) => `\n     - ${step}`).join('')
  return `${part.id.padEnd(18)} ${styleText('bold', part.title)}: ${printed(part.says, units)}${amounts}${faults}${told}`
}

function paperOf({ paper, square }: MakeOptions, system: DisplaySystem): PatternPaper {
  if (!(paper in papers))
    throw new BadInput([`make: --paper ${paper}, expected ${Object.keys(papers).join(' or ')}`])
  const name = paper as PaperName
  if (square === undefined) return { paper: name, system }
  try {
    return { paper: name, system, scale: typedScale(square) }
  } catch (error) {
    if (error instanceof RangeError) throw new BadInput([`make: --square ${error.message}`])
    throw error
  }
}

async function writeParts(
  parts: readonly MadePart[],
  folder: string,
  on: PatternPaper,
  solids: Readonly<Record<string, Uint8Array>>,
): Promise<string[]> {
  const files: Record<string, Uint8Array> = { ...solids }
  for (const part of parts)
    for (const format of ['pdf', 'svg', 'dxf'] as const) {
      const bytes = await patternFile(part, format, on)
      if (bytes) files[`${part.id}.${format}`] = bytes
    }
  if (Object.keys(files).length === 0) return []
  files['parts.zip'] = zipSync(files)
  try {
    mkdirSync(folder, { recursive: true })
    for (const [name, bytes] of Object.entries(files)) writeFileSync(join(folder, name), bytes)
  } catch (error) {
    throw new BadInput([
      `make: --to ${folder}: it cannot be written (${(error as NodeJS.ErrnoException).code})`,
    ])
  }
  return Object.keys(files).map((name) => join(folder, name))
}
