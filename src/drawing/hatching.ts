import { line } from './marks.ts'
import { ink } from './palette.ts'
import type { Mark, Style } from './sheet.ts'

/**
 * Hatch lines inside one or more closed outlines (even-odd: an outline inside another is a hole).
 * `spacing` mm between lines, `angle` radians. Points are x0, y0, x1, y1 …
 */
export function hatch(
  outlines: readonly ArrayLike<number>[],
  spacing = 2.5,
  angle = Math.PI / 4,
  style: Style = { stroke: ink, width: 0.13 },
): Mark[] {
  if (!(spacing > 0)) throw new RangeError(`spacing: ${spacing} mm is not above 0`)
  const [c, s] = [Math.cos(angle), Math.sin(angle)]
  // turn everything so that the hatch lines run level, cut level by level, turn back
  const turned = outlines.map((o) => {
    const out: [number, number][] = []
    for (let i = 0; i + 1 < o.length; i += 2)
      out.push([o[i]! * c + o[i + 1]! * s, -o[i]! * s + o[i + 1]! * c])
    return out
  })
  const heights = turned.flat().map((p) => p[1])
  const marks: Mark[] = []
  const first = Math.ceil(Math.min(...heights) / spacing)
  const last = Math.floor(Math.max(...heights) / spacing)
  for (let k = first; k <= last; k++) {
    const v = k * spacing
    const cuts: number[] = []
    for (const outline of turned)
      outline.forEach(([ax, ay], i) => {
        const [bx, by] = outline[(i + 1) % outline.length]!
        if (ay > v !== by > v) cuts.push(ax + ((v - ay) / (by - ay)) * (bx - ax))
      })
    cuts.sort((a, b) => a - b)
    for (let i = 0; i + 1 < cuts.length; i += 2) {
      const [a, b] = [cuts[i]!, cuts[i + 1]!]
      if (b - a > 1e-9)
        marks.push(line(a * c - v * s, a * s + v * c, b * c - v * s, b * s + v * c, style, 'mark'))
    }
  }
  return marks
}
