import type { SolidOrder } from '../base/answers/madePart.ts'
import { writeStl } from '../shapes/solid/stl.ts'
import { write3mf } from '../shapes/solid/threeMf.ts'
import { type MadeSolid, makeSolid, type SolidPrinting } from '../trades/prints/solids/makeSolid.ts'
import { Cancelled, defineJob } from './job.ts'

export interface SolidJobInput {
  order: SolidOrder
  /** the part's name, which its files carry */
  title: string
  printing?: SolidPrinting
  /** which files are wanted; none for a look at it */
  files?: readonly ('stl' | '3mf')[]
}

export interface SolidFile {
  name: string
  bytes: Uint8Array<ArrayBuffer>
}

export interface SolidJobOutput extends MadeSolid {
  /** one STL a body, one 3MF with all of them */
  files: readonly SolidFile[]
}

const fileName = (s: string) =>
  s
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-|-$/g, '') || 'part'

/** A solid by order: meshes to look at, and the files for the printer. */
export const solidJob = defineJob<SolidJobInput, SolidJobOutput>('solid', async (input, context) => {
  const { order, title, printing, files = [] } = input
  const made = await makeSolid(order, printing, (part, says) => {
    if (context.cancelled()) throw new Cancelled()
    context.progress(0.9 * part, says)
  })
  const written: SolidFile[] = []
  if (files.includes('stl'))
    for (const { name, mesh } of made.bodies) {
      const its = made.bodies.length > 1 ? `${title} ${name}` : title
      written.push({ name: `${fileName(its)}.stl`, bytes: writeStl(mesh, its) })
    }
  if (files.includes('3mf')) written.push({ name: `${fileName(title)}.3mf`, bytes: write3mf(made.bodies) })
  context.progress(1, 'done')
  return { ...made, files: written }
})
