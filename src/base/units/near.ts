/**
 * Edits (insert, delete, replace, swap of neighbours) that turn `a` into `b`; case counts half.
 * Optimal string alignment distance: G. Navarro, ACM Computing Surveys 33 (2001), section 2.
 */
export function editDistance(a: string, b: string): number {
  const n = b.length
  let before: number[] = []
  let last = Array.from({ length: n + 1 }, (_, j) => j)
  for (let i = 1; i <= a.length; i++) {
    const row = [i]
    for (let j = 1; j <= n; j++) {
      const x = a[i - 1]!
      const y = b[j - 1]!
      const swap = x === y ? 0 : x.toLowerCase() === y.toLowerCase() ? 0.5 : 1
      let best = Math.min(last[j]! + 1, row[j - 1]! + 1, last[j - 1]! + swap)
      if (i > 1 && j > 1 && x === b[j - 2] && a[i - 2] === y) best = Math.min(best, before[j - 2]! + 1)
      row.push(best)
    }
    before = last
    last = row
  }
  return last[n]!
}

/**
 * What builders also call a key, in the order to look for it among the keys that can stand there. A word of this list is never
 * taken for a slip of another: "weight" is not a misspelt "height".
 */
const alsoCalled: Readonly<Record<string, readonly string[]>> = {
  weight: ['mass', 'weights'],
  weights: ['mass'],
  impeller: ['rotor'],
  propeller: ['rotor'],
  screw: ['rotor'],
  width: ['beam', 'bore'],
  breadth: ['beam', 'width'],
  height: ['depth'],
  diameter: ['bore'],
  motor: ['engines'],
  engine: ['engines'],
  tank: ['tanks'],
  driver: ['drive', 'rider'],
  pilot: ['rider'],
  pipe: ['exhaust'],
  gearing: ['ratio'],
  reduction: ['ratio'],
  prop: ['rotor'],
}

/** What keys a builder's word may stand for, in the order to look for them; undefined for a word that is none of those. */
export function keysCalled(word: string): readonly string[] | undefined {
  const plain = word.toLowerCase()
  return Object.hasOwn(alsoCalled, plain) ? alsoCalled[plain] : undefined
}

/** The known key a builder's word stands for, or else the one it may be a slip of, where it can be a slip. */
export function keyMeant(word: string, known: readonly string[], slip = true): string | undefined {
  const names = keysCalled(word)
  return names ? names.find((name) => known.includes(name)) : slip ? nearest(word, known) : undefined
}

/** The known word nearest to `word`, or undefined when none is near enough to be meant. */
export function nearest(word: string, known: Iterable<string>): string | undefined {
  // a long word is never a slip of a short one; this also bounds the work on hostile input
  if (word.length > 60) return undefined
  let best: string | undefined
  let least = Number.POSITIVE_INFINITY
  for (const k of known) {
    if (Math.abs(k.length - word.length) > 3) continue
    // of two equally near, the one of the same length is likelier
    const d = editDistance(word, k) + 0.1 * Math.abs(k.length - word.length)
    if (d < least) {
      least = d
      best = k
    }
  }
  const allowed = word.length <= 2 ? 1.1 : word.length <= 5 ? 1.6 : 3.3
  return least <= allowed ? best : undefined
}
