/** Exit codes of the command line: 0 fine, 1 a finding says stop, 2 bad input, 3 internal. */
export const exit = { fine: 0, stop: 1, badInput: 2, internal: 3 } as const

/** Input that cannot be used; its lines go to stderr as they are, without a stack trace. */
export class BadInput extends Error {
  readonly lines: readonly string[]
  constructor(lines: readonly string[]) {
    super(lines[0] ?? 'bad input')
    this.lines = lines
  }
}

/** Writes to stdout in full before the process may end. */
export function print(text: string): void {
  process.stdout.write(text.endsWith('\n') ? text : `${text}\n`)
}

/** JSON for other programs: NaN and infinities become null, as JSON has no word for them. */
export function printJson(value: unknown): void {
  print(JSON.stringify(value, (_k, v) => (ArrayBuffer.isView(v) ? Array.from(v as Float64Array) : v), 2))
}
