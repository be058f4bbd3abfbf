/** What the figures of the balance share: colours by meaning, heights, and which lines are worth drawing. */
import { okabeIto } from '../../drawing/palette.ts'
import type { Look } from './shown.ts'

export const colours = {
  engine: okabeIto.blue,
  impeller: okabeIto.vermillion,
  best: okabeIto.green,
  drag: okabeIto.vermillion,
  thrust: okabeIto.blue,
} as const

export const tried = okabeIto.black
export const rpm = (rotation: readonly number[]) => rotation.map((n) => n * 60)

/** The same numbers: a tried line that lies on the line now is not drawn again. */
export function same(a: readonly number[], b: readonly number[]): boolean {
  const scale = Math.max(...b.filter(Number.isFinite).map(Math.abs), 1e-12)
  return (
    a.length === b.length &&
    a.every((v, i) => Math.abs(v - b[i]!) < 1e-3 * scale || (Number.isNaN(v) && Number.isNaN(b[i]!)))
  )
}

export const heightFor = (look: Look, share: number) => Math.min(112, Math.max(74, look.width * share))
