/** Shortest of `rounds` runs in milliseconds: on a busy machine the least disturbed one. */
export function best(run: () => void, rounds = 25): number {
  run()
  let least = Number.POSITIVE_INFINITY
  for (let i = 0; i < rounds; i++) {
    const from = performance.now()
    run()
    least = Math.min(least, performance.now() - from)
  }
  return least
}

/** Middle of `rounds` runs in milliseconds. */
export function median(run: (i: number) => void, rounds = 41): number {
  run(0)
  const times = Array.from({ length: rounds }, (_, i) => {
    const from = performance.now()
    run(i)
    return performance.now() - from
  }).sort((a, b) => a - b)
  return times[rounds >> 1]!
}

/** One line: name, time, and its ratio to a reference measured in the same run. */
export function line(name: string, ms: number, against: number, to: string): void {
  const time = ms >= 1 ? `${ms.toFixed(1)} ms` : `${(ms * 1000).toFixed(1)} µs`
  console.log(
    `${name.padEnd(58)} ${time.padStart(10)}   ${(ms / against).toPrecision(3).padStart(8)} x ${to}`,
  )
}
