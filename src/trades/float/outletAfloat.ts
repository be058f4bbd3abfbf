/** How high an engine's exhaust outlet stands over the water and how that stands, for whoever leans on it: judged in float alone. */
import type { Standing } from '../../base/answers/finding.ts'
import type { Craft } from '../../craft/index.ts'
import { engineOutlets } from '../../craft/outlets.ts'
import { openingsAtRest } from './atRest.ts'
import { floatFromCraft } from './floatFromCraft.ts'
import { floatLimits } from './floatLimits.ts'
import { judgeAtRest } from './openingFindings.ts'

export interface OutletAfloat {
  /** m, lowest lip over still water at rest, negative when under */
  height: number
  standing: Standing
  /** craft path of where it stands in the file */
  path: string
}

/** The outlet of one engine; undefined where the file does not say where it is, or how the craft floats is not known. */
export function outletAfloat(craft: Craft, engine: number): OutletAfloat | undefined {
  const own = engineOutlets(craft).find((o) => o.engine === engine)
  if (!own) return undefined
  try {
    const { input } = floatFromCraft(craft)
    const index =
      own.opening ?? input.openings.findIndex((o) => o.path?.startsWith(`engines.${engine}.exhaust`))
    const opening = input.openings[index]
    const height = openingsAtRest(input)[index]
    if (!opening || height === undefined || !Number.isFinite(height)) return undefined
    const standing = judgeAtRest(opening.kind, height, floatLimits)
    return { height, standing, path: opening.path ?? `openings.${index}.at` }
  } catch (error) {
    // measures that make no hull are told on the page Float; here the line is then simply not known
    if (error instanceof RangeError) return undefined
    throw error
  }
}
