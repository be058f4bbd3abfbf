/** The three parts of a value as written in the file: `47 mm`, `0.05`, `measured`. */
export interface Written {
  value: string
  spread: string
  source: string
}

/** "47 mm ±0.05 (measured)" in its parts; what is missing is empty. */
export function splitWritten(text: string): Written {
  const source = /\(([^()]*)\)\s*$/.exec(text)
  const rest = source ? text.slice(0, source.index) : text
  const [value = '', spread = ''] = rest.split(/±|\+\/-|\+-/)
  return { value: value.trim(), spread: spread.trim(), source: source?.[1]?.trim() ?? '' }
}

/** The parts put together again. */
export function joinWritten({ value, spread, source }: Written): string {
  return `${value}${spread && ` ±${spread}`}${source && ` (${source})`}`
}
