/** "1:07.3" of seconds since a recording began: a place in it, not an amount, and the same in every system of units. */
export function clockText(seconds: number): string {
  const tenths = Math.round(Math.max(0, seconds) * 10)
  const minutes = Math.floor(tenths / 600)
  return `${minutes}:${((tenths % 600) / 10).toFixed(1).padStart(4, '0')}`
}
