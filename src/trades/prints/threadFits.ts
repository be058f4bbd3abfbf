/**
 * Limits of a thread's diameters. Metric: ISO 965-1; unified: ASME B1.1 classes 2A and 2B by its formulas, rounded to a ten-thousandth of an
 * inch (minor diameters to a thousandth); pipe: ISO 228-1 classes A and B; tolerances of pipe threads from memory. Lengths m.
 */
import type { Range } from '../../base/answers/solved.ts'
import { type Thread, threadError } from './threadForms.ts'
import { isoTolerances } from './threadTolerances.ts'

/** least and most, m */
export type Span = Pick<Range, 'low' | 'high'>

/** Diameters that an outside and an inside thread of a class may have; m. */
export interface ThreadLimits {
  /** as "6g / 6H" */
  classes: string
  external: { major: Span; pitch: Span /** most across its roots */; minorMost: number }
  internal: { minor: Span; pitch: Span /** least across its roots */; majorLeast: number }
  /** false where the standard's table lacks the pair of diameter and pitch and its formula was used */
  tabled: boolean
}

export interface FitClass {
  /** "6g", "2A", "A": the usual one of the form where left out */
  external?: string
  internal?: string
  /** unified: length engaged, m; the diameter where left out, as for coarse and fine threads */
  engaged?: number
}

/** Limits of a thread of a standard; RangeError for one that no standard has tolerances for. */
export function threadLimits(thread: Thread, fit: FitClass = {}): ThreadLimits {
  if (thread.form === 'metric') return metricLimits(thread, fit)
  if (thread.form === 'unified') return unifiedLimits(thread, fit)
  if (thread.form === 'pipe') return pipeLimits(thread, fit)
  throw threadError(
    'form',
    `"${thread.name}"`,
    'the threads of a standard: one of your own has the limits you print it to',
  )
}

function metricLimits(t: Thread, { external = '6g', internal = '6H' }: FitClass): ThreadLimits {
  const k = isoTolerances(t.d, t.pitch, { outside: external, inside: internal })
  const below = (x: number, tolerance: number): Span => ({
    low: x - k.outside - tolerance,
    high: x - k.outside,
  })
  const above = (x: number, tolerance: number): Span => ({
    low: x + k.inside,
    high: x + k.inside + tolerance,
  })
  return {
    classes: `${external} / ${internal}`,
    external: { major: below(t.d, k.Td), pitch: below(t.d2, k.Td2), minorMost: t.d1 - k.outside },
    internal: { minor: above(t.d1, k.TD1), pitch: above(t.d2, k.TD2), majorLeast: t.d + k.inside },
    tabled: k.tabled,
  }
}

const inch = 0.0254
/** to so many inches */
const rounded = (inches: number, step: number) => Math.round(inches / step) * step

function unifiedLimits(
  t: Thread,
  { external = '2A', internal = '2B', engaged = t.d }: FitClass,
): ThreadLimits {
  if (external !== '2A' || internal !== '2B')
    throw threadError('class', `"${external} / ${internal}"`, '2A and 2B, which common bolts and nuts have')
  const [D, P] = [t.d / inch, t.pitch / inch]
  const fine = 1e-4
  const Td2 = 0.0015 * Math.cbrt(D) + 0.0015 * Math.sqrt(engaged / inch) + 0.015 * Math.cbrt(P) ** 2
  const allowance = rounded(0.3 * Td2, fine)
  const Td = 0.06 * Math.cbrt(P) ** 2
  // small sizes have a wider crest tolerance
  const TD1 =
    D < 0.25
      ? Math.min(
          0.394 * P,
          Math.max(0.25 * P - 0.4 * P * P, 0.05 * Math.cbrt(P) ** 2 + (0.03 * P) / D - 0.002),
        )
      : Math.max(0.25 * P - 0.4 * P * P, 0)
  const d2 = rounded(t.d2 / inch, fine)
  const d1 = t.d1 / inch
  const major = D - allowance
  const pitch = d2 - allowance
  const minor = rounded(d1, D < 0.138 ? fine : 1e-3)
  return {
    classes: `${external} / ${internal}`,
    external: {
      major: { low: inch * rounded(major - Td, fine), high: inch * rounded(major, fine) },
      pitch: { low: inch * rounded(pitch - Td2, fine), high: inch * rounded(pitch, fine) },
      minorMost: inch * rounded(d1 - allowance, fine),
    },
    internal: {
      minor: { low: inch * minor, high: inch * rounded(d1 + TD1, D < 0.138 ? fine : 1e-3) },
      pitch: { low: inch * d2, high: inch * rounded(d2 + 1.3 * Td2, fine) },
      majorLeast: t.d,
    },
    tabled: true,
  }
}

/** pitch diameter (class A; B twice), crests of the outside thread, crests of the inside thread; µm, by threads an inch and diameter */
function pipeTolerances(t: Thread): readonly [pitch: number, major: number, minor: number] {
  const perInch = Math.round(inch / t.pitch)
  if (perInch === 28) return [107, 214, 282]
  if (perInch === 19) return [125, 250, 445]
  if (perInch === 14) return [142, 284, 541]
  return t.d < 0.0625 ? [180, 360, 640] : [217, 434, 640]
}

function pipeLimits(t: Thread, { external = 'A', internal = 'A' }: FitClass): ThreadLimits {
  if (!['A', 'B'].includes(external) || internal !== 'A')
    throw threadError('class', `"${external} / ${internal}"`, 'A or B outside and A inside')
  const [pitch, major, minor] = pipeTolerances(t).map((x) => 1e-6 * x) as [number, number, number]
  const wide = external === 'B' ? 2 : 1
  return {
    classes: `${external} / ${internal}`,
    external: {
      major: { low: t.d - major, high: t.d },
      pitch: { low: t.d2 - wide * pitch, high: t.d2 },
      minorMost: t.d1,
    },
    internal: {
      minor: { low: t.d1, high: t.d1 + minor },
      pitch: { low: t.d2, high: t.d2 + pitch },
      majorLeast: t.d,
    },
    tabled: true,
  }
}
