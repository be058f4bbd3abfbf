/** "2 lines differ: pitch: 108 mm (measured), …", counting lines that one text has and the other has not. */
export function linesChanged(before: string, now: string): string {
  const counts = new Map<string, number>()
  for (const line of now.split('\n')) counts.set(line, (counts.get(line) ?? 0) + 1)
  const gone: string[] = []
  for (const line of before.split('\n')) {
    const left = counts.get(line) ?? 0
    if (left === 0) gone.push(line.trim())
    else counts.set(line, left - 1)
  }
  const added = [...counts.values()].reduce((sum, n) => sum + n, 0)
  if (gone.length === 0) return added === 0 ? 'the same lines' : `without ${added} of the lines there are now`
  const shown = gone.slice(0, 2).map((line) => (line.length > 60 ? `${line.slice(0, 58)}…` : line))
  return `${gone.length} ${gone.length === 1 ? 'line differs' : 'lines differ'}: ${shown.join(' · ')}${gone.length > 2 ? ' …' : ''}`
}
