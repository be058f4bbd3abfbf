import { styleText } from 'node:util'
import { inCm3, inDegrees, inKg, inMinutes, inMm } from '../../base/answers/amounts.ts'
import type { MadePart } from '../../base/answers/madePart.ts'
import { printed, say } from '../../base/answers/sentence.ts'
import type { DisplaySystem } from '../../base/units/format.ts'
import { svgOf } from '../../drawing/svg.ts'
import { type SolidJobOutput, solidJob } from '../../jobs/solidJob.ts'
import { type PrintMaterial, printerOf } from '../../trades/prints/printerOf.ts'
import { printEstimate } from '../../trades/prints/printPlastics.ts'
import { sectionFigure } from '../../trades/prints/solids/sectionFigure.ts'
import { kernelHere } from './kernelHere.ts'
import { progressLine } from './progress.ts'

export interface SolidFiles {
  files: Record<string, Uint8Array>
  /** what came out, part by part */
  lines: readonly string[]
}

type PrintedCraft = Parameters<typeof printerOf>[0]

/** Makes printed parts: STL and 3MF for the printer, a section of each body, and what was measured on them. */
export async function solidFiles(
  parts: readonly MadePart[],
  craft: PrintedCraft,
  units: DisplaySystem,
): Promise<SolidFiles> {
  if (parts.length === 0) return { files: {}, lines: [] }
  await kernelHere()
  const printer = printerOf(craft)
  const { bed, scale, elephantFoot: foot } = printer
  const files: Record<string, Uint8Array> = {}
  const lines: string[] = []
  const progress = progressLine()
  const text = new TextEncoder()
  for (const part of parts) {
    const made = await Promise.resolve(
      solidJob.run(
        { order: part.solid!, title: part.title, printing: { bed, scale, foot }, files: ['stl', '3mf'] },
        { progress: progress.show, cancelled: () => false },
      ),
    ).finally(progress.end)
    for (const { name, bytes } of made.files) files[name] = bytes
    for (const body of made.bodies)
      files[`${part.id}-${body.name.replace(/[^a-z0-9]+/g, '-')}-section.svg`] = text.encode(
        svgOf(sectionFigure(body, { width: 160, system: units })),
      )
    lines.push(`${styleText('bold', part.id)}:`, ...measuredOn(made, part, printer, units))
  }
  return { files, lines }
}

function measuredOn(
  made: SolidJobOutput,
  part: MadePart,
  printer: ReturnType<typeof printerOf>,
  units: DisplaySystem,
): string[] {
  const volume = made.bodies.reduce((sum, b) => sum + b.volume, 0)
  const wall = Math.min(...made.bodies.map((b) => b.wall))
  const { mass, low, high } = printEstimate(volume, part.material as PrintMaterial, printer)
  const sentences = [
    say`  ${inCm3(volume, 0.1)} in all, about ${inKg(mass, 0.001)}; thinnest wall met ${inMm(wall, 0.1)}; ${inMinutes(low)} to ${inMinutes(high)} on the printer.`,
    ...(made.measured ?? []).map(
      (m) =>
        say`  At ${inMm(m.radius, 0.1)} from the axis the blades stand at ${inDegrees(m.read[0])} in front and ${inDegrees(m.read[1])} behind; the craft file has ${inDegrees(m.ordered[0])} and ${inDegrees(m.ordered[1])}.`,
    ),
  ]
  return sentences.map((s) => printed(s, units))
}
