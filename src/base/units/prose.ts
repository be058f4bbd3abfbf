/** Fixed words with metric figures in them (glosses, cautions, names of builds), for a reader of inches. */
import { toSi } from './convert.ts'
import { type DisplaySystem, displayUnit, formatQuantity } from './format.ts'
import type { Kind } from './kinds.ts'

/** units that fixed words use, longest first so that none hides in another */
const kindOfUnit: readonly (readonly [string, Kind])[] = [
  ['kg/m³', 'density'],
  ['kg/m²', 'massPerArea'],
  ['N/mm', 'lineLoad'],
  ['km/h', 'speed'],
  ['m/s', 'speed'],
  ['cm³', 'volume'],
  ['mm²', 'area'],
  ['cm²', 'area'],
  ['N·m', 'torque'],
  ['kPa', 'pressure'],
  ['MPa', 'pressure'],
  ['bar', 'pressure'],
  ['mm', 'length'],
  ['cm', 'length'],
  ['kg', 'mass'],
  ['kW', 'power'],
  ['°C', 'temperature'],
  ['µm', 'length'],
  ['m', 'length'],
  ['N', 'force'],
  ['L', 'volume'],
  ['g', 'mass'],
  ['K', 'temperatureStep'],
]

const kinds = new Map(kindOfUnit)
const number = String.raw`[−-]?\d[\d\u202F]*(?:\.\d+)?`
const figure = new RegExp(
  String.raw`(?<![\w.])(?:(${number})( to | and | or | × |–))?(${number})[ \u00a0](${kindOfUnit.map(([u]) => u).join('|')})(?![\w/²³·⁴])`,
  'g',
)

/** The words as they stand, or with every metric figure in inches, pounds and their kin, to as many digits as it had, two at least. */
export function proseIn(words: string, system: DisplaySystem): string {
  if (system === 'metric') return words
  return words.replace(
    figure,
    (_, first: string | undefined, between: string, last: string, unit: string) => {
      const kind = kinds.get(unit)!
      const to = displayUnit(kind, 'inch', unit)
      const shown = (text: string) => {
        const plain = text.replaceAll('\u202F', '').replace('−', '-')
        // degrees are read to the whole one
        const least = kind === 'temperature' ? 3 : 2
        const digits = Math.max(least, plain.replace(/[-.]|^0+/g, '').replace(/0+$/, '').length)
        return formatQuantity(toSi(Number(plain), kind, unit), kind, to, digits)
      }
      // the unit stands once behind both
      return first === undefined
        ? shown(last)
        : `${shown(first).replace(` ${to}`, '')}${between}${shown(last)}`
    },
  )
}
