/** Widths of a table's columns by what stands in them. */

/** room between two columns, mm */
const between = 3

/**
 * Widths of columns for rows of cells in `room` mm; `wide` tells how wide a text is on one line. Each column is as wide as its longest cell
 * where all go in; else no narrower than its longest word, and what is left is shared out by what each still lacks.
 */
export function columnWidths(
  rows: readonly (readonly string[])[],
  room: number,
  wide: (text: string) => number,
): number[] {
  const columns = Math.max(0, ...rows.map((r) => r.length))
  const most = (of: (cell: string) => number) =>
    Array.from({ length: columns }, (_, i) => between + Math.max(...rows.map((r) => of(r[i] ?? ''))))
  const whole = most((cell) => wide(cell) * 1.02)
  const total = whole.reduce((a, b) => a + b, 0)
  if (total <= room) return whole
  const least = most((cell) => Math.max(0, ...cell.split(/\s+/).map(wide)) * 1.08)
  const need = least.reduce((a, b) => a + b, 0)
  if (need >= room) return least.map((w) => (w * room) / need)
  // long texts get more of what is left, but not in step with their length: a root keeps short columns on one line
  const lacks = whole.map((w, i) => Math.sqrt(Math.max(0, w - least[i]!)))
  const lack = lacks.reduce((a, b) => a + b, 0)
  const shared = least.map((w, i) => w + ((room - need) * lacks[i]!) / lack)
  // nothing is wider than its longest cell; what that frees goes to the longest column
  const capped = shared.map((w, i) => Math.min(w, whole[i]!))
  const free = room - capped.reduce((a, b) => a + b, 0)
  const longest = whole.indexOf(Math.max(...whole))
  capped[longest] = capped[longest]! + free
  return capped
}
