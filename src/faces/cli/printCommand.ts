import { mkdirSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { styleText } from 'node:util'
import { inCm3, inDegrees, inKg, inMinutes, inMm } from '../../base/answers/amounts.ts'
import { worstStanding } from '../../base/answers/finding.ts'
import type { MadePart } from '../../base/answers/madePart.ts'
import { printed, say } from '../../base/answers/sentence.ts'
import type { DisplaySystem } from '../../base/units/format.ts'
import { formatProblem } from '../../craft/index.ts'
import { svgOf } from '../../drawing/svg.ts'
import { solidJob } from '../../jobs/solidJob.ts'
import { type PrintMaterial, printerOf } from '../../trades/prints/printerOf.ts'
import { printEstimate } from '../../trades/prints/printPlastics.ts'
import { sectionFigure } from '../../trades/prints/solids/sectionFigure.ts'
import { lookAt } from '../../whole/look.ts'
import { partsToPrint } from '../../whole/prints/partsToPrint.ts'
import { kernelHere } from './kernelHere.ts'
import { findingText, unitsOf } from './lookCommand.ts'
import { BadInput, exit, print, printJson } from './outcome.ts'
import { progressLine } from './progress.ts'
import { readCraftFile } from './readCraftFile.ts'

export interface PrintOptions {
  out?: string
  json?: boolean
  units: string
}

/** `wakewright print`: the parts to print for a craft; with names of parts, their files for the printer. */
export async function printCommand(
  file: string,
  names: readonly string[],
  options: PrintOptions,
): Promise<number> {
  const { units } = unitsOf('print', options)
  const on = readCraftFile(file)
  for (const w of on.warnings) process.stderr.write(`${formatProblem(w)}\n`)
  const parts = partsToPrint(on.craft, lookAt(on.craft, { ranges: false }).findings)
  const wanted = names.flatMap((name) => {
    const found = parts.filter((p) => p.id === name || name === 'all' || p.id.replace(/-\d+$/, '') === name)
    if (found.length === 0)
      throw new BadInput([
        `print: "${name}" is no part of this craft; there are ${parts.map((p) => p.id).join(', ')}`,
      ])
    return found
  })
  if (options.json) printJson({ units: 'SI', parts: names.length > 0 ? wanted : parts })
  else if (names.length === 0) {
    print(`\n${styleText('bold', on.craft.name)}\n`)
    for (const p of parts) print(`${styleText('bold', p.id.padEnd(16))} ${printed(p.says, units)}`)
    print('\nprint CRAFT PART… writes their files; all writes every one.')
  } else await writeParts(wanted, on.craft, options.out ?? '.', units)
  return worstStanding(wanted.flatMap((p) => p.findings)) === 'stop' ? exit.stop : exit.fine
}

async function writeParts(
  parts: readonly MadePart[],
  craft: Parameters<typeof printerOf>[0],
  out: string,
  units: DisplaySystem,
): Promise<void> {
  await kernelHere()
  const printer = printerOf(craft)
  const { bed, scale, elephantFoot: foot } = printer
  mkdirSync(out, { recursive: true })
  const line = progressLine()
  for (const part of parts) {
    const made = await Promise.resolve(
      solidJob.run(
        { order: part.solid!, title: part.title, printing: { bed, scale, foot }, files: ['stl', '3mf'] },
        { progress: line.show, cancelled: () => false },
      ),
    ).finally(line.end)
    print(`\n${styleText('bold', part.title)}: ${printed(part.says, units)}`)
    for (const step of part.steps) print(`  - ${printed(step, units)}`)
    for (const caution of part.cautions) print(`  ! ${caution}`)
    for (const f of part.findings) print(findingText(f, units))
    const volume = made.bodies.reduce((sum, b) => sum + b.volume, 0)
    const wall = Math.min(...made.bodies.map((b) => b.wall))
    const { mass, low, high } = printEstimate(volume, part.material as PrintMaterial, printer)
    print(
      printed(
        say`  ${inCm3(volume, 0.1)} in all, about ${inKg(mass, 0.001)}; thinnest wall met ${inMm(wall, 0.1)}; ${inMinutes(low)} to ${inMinutes(high)} on the printer.`,
        units,
      ),
    )
    for (const m of made.measured ?? [])
      print(
        printed(
          say`  At ${inMm(m.radius, 0.1)} from the axis the blades stand at ${inDegrees(m.read[0])} in front and ${inDegrees(m.read[1])} behind; the craft file has ${inDegrees(m.ordered[0])} and ${inDegrees(m.ordered[1])}.`,
          units,
        ),
      )
    for (const { name, bytes } of made.files) {
      writeFileSync(join(out, name), bytes)
      print(`  ${join(out, name)}`)
    }
    for (const body of made.bodies) {
      const name = join(out, `${part.id}-${body.name.replace(/[^a-z0-9]+/g, '-')}-section.svg`)
      writeFileSync(name, svgOf(sectionFigure(body, { width: 160, system: units })))
      print(`  ${name}`)
    }
  }
}
