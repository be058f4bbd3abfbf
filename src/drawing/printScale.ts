/**
 * What a printer made of 100 mm, undone: drawings are drawn larger by as much as it prints them smaller. Paper itself moves 0.1 to 0.3 % with the
 * weather (common practice, no source), so less than that is left alone.
 */

/** Factors to draw by, so that it comes out right. */
export interface PrintScale {
  x: number
  y: number
}

export const printLimits = {
  /** side of the square that is printed and measured, m */
  square: 0.1,
  /** part by which it may be wrong and is left alone */
  leave: 0.002,
  /** part beyond which another thing than a scale is wrong: the wrong square, inches, another paper */
  most: 0.1,
} as const

/** Factors from the square's measured width and height, m. RangeError naming measured.x or measured.y outside 90 to 110 mm. */
export function printScale(x: number, y: number): PrintScale {
  const of = (name: string, measured: number): number => {
    const s = printLimits.square / measured
    const [low, high] = [1 - printLimits.most, 1 + printLimits.most].map((k) => k * printLimits.square) as [
      number,
      number,
    ]
    const mm = (v: number) => Math.round(v * 1e5) / 100
    if (!(measured >= low && measured <= high))
      throw new RangeError(
        `${name}: ${mm(measured)} mm, expected ${mm(low)} to ${mm(high)} mm: print without fitting to the page and measure the square again`,
      )
    return Math.abs(s - 1) <= printLimits.leave ? 1 : s
  }
  return { x: of('measured.x', x), y: of('measured.y', y) }
}

/** Factors from the square as typed, mm across and up: "97 x 97.5", "97, 97.5", "97". RangeError as printScale, or naming what is no number. */
export function typedScale(text: string): PrintScale {
  const sides = text
    .trim()
    .split(/\s*[x×,;]\s*|\s+/i)
    .map(Number)
  if (sides.length > 2 || sides.some((s) => !Number.isFinite(s)))
    throw new RangeError(`${text}: expected mm across and up, such as 97x97.2`)
  return printScale(sides[0]! / 1e3, (sides[1] ?? sides[0]!) / 1e3)
}
