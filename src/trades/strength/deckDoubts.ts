/**
 * What is doubtful of a deck bay: its sizes and sheet as the file bounds them, the rider, and what sheet and foam of a name are worth.
 * The range of its margin comes from all of them together (rangeOf). Sheet is bought over the least its standard names, the mill
 * keeping clear of it: tensile tests of sheet lie 5 to 25 % over, a weld's poorer sides 10 % under (from memory). Foam boards
 * of one type scatter by about a sixth about their makers' figures (from memory).
 */
import { type Bounded, rangeOf } from '../../base/answers/rangeOf.ts'
import type { Range } from '../../base/answers/solved.ts'
import type { Craft, Quantity } from '../../craft/index.ts'
import type { Alloy } from './alloys.ts'
import { type DeckBay, deckBay } from './deckBay.ts'
import type { Foam } from './foams.ts'
import { type StrengthLimits, strengthLimits } from './strengthLimits.ts'

type CraftBay = Craft['deck']['bays'][number]
type SizeName =
  | 'length'
  | 'width'
  | 'skin'
  | 'spacing'
  | 'stringerHeight'
  | 'stringerSheet'
  | 'depth'
  | 'core'
  | 'lowerSkin'

const sizeNames: Readonly<Record<CraftBay['kind'], readonly SizeName[]>> = {
  alone: ['length', 'width', 'skin'],
  stringers: ['length', 'width', 'skin', 'spacing', 'stringerHeight', 'stringerSheet'],
  foam: ['length', 'width', 'skin', 'depth'],
  sandwich: ['length', 'width', 'skin', 'core', 'lowerSkin'],
}

/** Factors on the strengths that the tables give, as bought and beside a weld, and on a foam's. */
export const materialDoubts = {
  sheet: { value: 1, low: 1, high: 1.25 },
  welded: { value: 1, low: 0.9, high: 1.15 },
  foam: { value: 1, low: 0.85, high: 1.15 },
} as const satisfies Record<string, Bounded>

/** Factors put on what a bay is made of. */
export interface MaterialShares {
  sheet: number
  foam: number
}

const sheetOf = (a: Alloy, share: number): Alloy => ({
  ...a,
  yield: share * a.yield,
  ultimate: share * a.ultimate,
  weldedYield: share * a.weldedYield,
  weldedUltimate: share * a.weldedUltimate,
})

const foamOf = (f: Foam, share: number): Foam => ({
  ...f,
  crush: share * f.crush,
  shearStrength: share * f.shearStrength,
  modulus: share * f.modulus,
  shearModulus: share * f.shearModulus,
  ...(f.first === undefined ? {} : { first: share * f.first }),
})

/** The bay with its materials stronger or weaker by shares. */
export function ofMaterial(bay: DeckBay, { sheet, foam }: MaterialShares): DeckBay {
  const s = bay.support
  const support = 'foam' in s ? { ...s, foam: foamOf(s.foam, foam) } : s
  return { ...bay, alloy: sheetOf(bay.alloy, sheet), support }
}

/** One bay with all that is doubtful of it. */
export interface DoubtfulBay {
  doubts: readonly Bounded[]
  /** the bay and the rider's mass, kg, with values in the order of the doubts */
  at: (values: readonly number[]) => { bay: DeckBay; rider: number }
}

/** Doubts of a bay of the file; `made` builds a bay from one of the file. */
export function doubtfulBay(b: CraftBay, rider: Quantity, made: (b: CraftBay) => DeckBay): DoubtfulBay {
  const names = sizeNames[b.kind]
  const sizes = names.map((name) => (b as unknown as Record<SizeName, Quantity>)[name])
  const { welded } = made(b)
  const doubts = [rider, welded ? materialDoubts.welded : materialDoubts.sheet, materialDoubts.foam, ...sizes]
  return {
    doubts,
    at: ([mass, sheet, foam, ...given]) => {
      const put = Object.fromEntries(
        names.map((name, i) => [name, { ...sizes[i]!, value: given[i] ?? sizes[i]!.value }]),
      )
      const bay = made({ ...b, ...put } as CraftBay)
      return { bay: ofMaterial(bay, { sheet: sheet ?? 1, foam: foam ?? 1 }), rider: mass ?? rider.value }
    },
  }
}

type DeckLimits = Pick<StrengthLimits, 'standingShare' | 'stepDish' | 'jumpDish'>

/** terms of the plates' series: shares need fewer than the margin itself */
const terms = 21
const known = new WeakMap<DoubtfulBay, { limits: DeckLimits; shares: Range }>()

/** The margin of a bay with its range: two-sided, from all that is doubtful of it together. The value is the bay's own as written. */
export function marginRange(of: DoubtfulBay, margin: number, limits: DeckLimits = strengthLimits): Range {
  let shares = known.get(of)
  if (shares?.limits !== limits) {
    const marginAt = (values: readonly number[]) => {
      const { bay, rider } = of.at(values)
      return deckBay(bay, rider, undefined, terms, limits).margin
    }
    const still = marginAt(of.doubts.map((d) => d.value))
    shares = { limits, shares: rangeOf((values) => marginAt(values) / still, of.doubts) }
    known.set(of, shares)
  }
  const { low, high } = shares.shares
  return { value: margin, low: margin * Math.min(low, 1), high: margin * Math.max(high, 1) }
}
