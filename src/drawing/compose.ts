import type { Mark, Sheet } from './sheet.ts'

/** Marks moved by dx, dy mm and grown by `scale` about the origin first; line widths stay as they are. */
export function moved(marks: readonly Mark[], dx: number, dy: number, scale = 1): Mark[] {
  return marks.map((m) =>
    movedMark(
      m,
      (v) => v * scale + dx,
      (v) => v * scale + dy,
      scale,
    ),
  )
}

type Along = (v: number) => number

function movedMark(m: Mark, x: Along, y: Along, scale: number): Mark {
  switch (m.kind) {
    case 'polyline':
    case 'polygon':
      return { ...m, points: m.points.map((v, i) => (i % 2 === 0 ? x(v) : y(v))) }
    case 'arc':
      return { ...m, cx: x(m.cx), cy: y(m.cy), r: m.r * scale }
    case 'text':
      return { ...m, x: x(m.x), y: y(m.y), size: m.size * scale }
    case 'image':
      return { ...m, x: x(m.x), y: y(m.y), w: m.w * scale, h: m.h * scale }
  }
}

/** Drawings under each other on one sheet, the first on top. */
export function stacked(sheets: readonly Sheet[], gap: number, title: string, says: string): Sheet {
  const height = sheets.reduce((sum, s) => sum + s.height, 0) + gap * Math.max(0, sheets.length - 1)
  let top = height
  const marks = sheets.flatMap((s) => {
    top -= s.height
    const put = moved(s.marks, 0, top)
    top -= gap
    return put
  })
  return { width: Math.max(0, ...sheets.map((s) => s.width)), height, title, says, marks }
}
