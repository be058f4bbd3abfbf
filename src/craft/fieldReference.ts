import { formatQuantity } from '../base/units/format.ts'
import { type Kind, kinds, type Unit } from '../base/units/kinds.ts'
import type {
  Default,
  Fields,
  FixedDefault,
  FollowingDefault,
  ListSpec,
  QuantitySpec,
  Spec,
} from './fields.ts'
import { limitsInWords } from './reader.ts'
import { craftFields } from './schema/craftSchema.ts'
import { spreads } from './valueSpread.ts'

/** The reference part of docs/craft-file.md, made from the field tables, the units and the usual ranges. */
function craftReference(): string {
  const sections = Object.entries(craftFields as Fields)
    .filter(([, spec]) => spec.type === 'group' || spec.type === 'list')
    .map(([key, spec]) => section(key, spec))
  return `${sections.join('\n')}\n${unitTable()}\n${spreadTable()}`
}

const cell = (text: string) => text.replaceAll('|', '\\|')

function section(key: string, spec: Spec): string {
  const out = [`### ${key}`, '', spec.gloss, '']
  describe(key, spec, out)
  return out.join('\n')
}

function describe(path: string, spec: Spec, out: string[]): void {
  if (spec.type === 'group') table(path, spec.fields, out)
  else if (spec.type === 'list') describe(`${path}.*`, (spec as ListSpec<Spec>).item, out)
  else if (spec.type === 'variant')
    for (const [word, v] of Object.entries(spec.variants)) {
      out.push(`#### ${path}: ${spec.tag} ${word}`, '', v.gloss, '')
      table(path, v.fields, out)
    }
}

const holdsMore = (spec: Spec) =>
  spec.type === 'group' ||
  (spec.type === 'list' && ['group', 'variant'].includes((spec as ListSpec<Spec>).item.type))

function table(path: string, fields: Fields, out: string[]): void {
  const rows = Object.entries(fields).map(
    ([key, spec]) => `| \`${key}\` | ${cell(spec.gloss)} | ${cell(takes(spec))} | ${cell(leftOut(spec))} |`,
  )
  out.push('| key | what | takes | left out |', '|---|---|---|---|', ...rows, '')
  for (const [key, spec] of Object.entries(fields))
    if (holdsMore(spec)) {
      out.push(`\`${path}.${key}\``, '')
      describe(`${path}.${key}`, spec, out)
    }
}

function takes(spec: Spec): string {
  switch (spec.type) {
    case 'quantity': {
      const { coarse, kind, unit } = spec
      const limits =
        coarse === undefined
          ? limitsInWords(spec)
          : `${limitsInWords(spec)}; read to ±${formatQuantity(coarse, kind, unit)}`
      return spec.undecided ? `${limits}, or \`undecided\`` : limits
    }
    case 'choice':
      return spec.words.join(', ')
    case 'flag':
      return 'yes, no'
    case 'text':
      return spec.patternSays ?? 'words'
    case 'point':
      return `[${spec.axes.join(', ')}]`
    case 'list':
      return `a list of ${spec.minItems > 0 ? `${spec.minItems} to` : 'up to'} ${spec.maxItems}`
    default:
      return 'keys, below'
  }
}

function leftOut(spec: Spec): string {
  if (spec.presence === 'required') return 'must be given'
  if (spec.presence === 'optional') return 'absent'
  if (spec.type === 'quantity') return inWords(spec.assumed!, spec)
  if (spec.type === 'choice' || spec.type === 'flag') {
    const value = spec.type === 'flag' ? (spec.assumed.value ? 'yes' : 'no') : spec.assumed!.value
    return `${value}: ${spec.assumed!.why}`
  }
  return spec.type === 'list' ? (spec.minItems > 0 ? 'must be given' : 'an empty list') : 'its keys as below'
}

/** "0.4 mm (0.25 mm to 1 mm): a printed impeller fitted by hand" */
function inWords(d: Default, spec: QuantitySpec): string {
  if ('by' in d)
    return `by \`${d.by}\`: ${Object.entries(d.each)
      .map(([word, one]) => `${word} ${amount(one, spec)}`)
      .join('; ')}`
  return `${amount(d, spec)}: ${d.why}`
}

function amount(d: FixedDefault | FollowingDefault, spec: QuantitySpec): string {
  const show = (x: number) => formatQuantity(x, spec.kind, spec.unit, 4)
  if ('value' in d) {
    const range = d.low === d.high ? '' : ` (${show(d.low)} to ${show(d.high)})`
    return `${show(d.value)}${range}`
  }
  if (d.times !== undefined) {
    const range = d.low === d.high ? '' : ` (${d.low} to ${d.high})`
    return d.times === 1 && d.low === d.high ? `as \`${d.of}\`` : `${d.times}${range} × \`${d.of}\``
  }
  // amounts added are differences: no offset
  const step = (x: number) => formatQuantity(x, spec.kind, spec.unit, 4)
  return `\`${d.of}\` + ${step(d.plus ?? 0)} (${step(d.low)} to ${step(d.high)})`
}

const usedKinds: readonly Kind[] = [
  'length',
  'area',
  'volume',
  'mass',
  'angle',
  'rotation',
  'speed',
  'temperature',
  'pressure',
  'torque',
  'power',
  'inertia',
  'voltage',
  'current',
  'resistance',
  'torquePerCurrent',
  'flowResistivity',
]

function unitTable(): string {
  const rows = usedKinds.map((kind) => {
    const units = (kinds[kind] as readonly Unit[]).map((u) =>
      u.also?.length ? `${u.name} (${u.also.join(', ')})` : u.name,
    )
    return `| ${kind.replace(/[A-Z]/g, (c) => ` ${c.toLowerCase()}`)} | ${cell(units.join(' · '))} |`
  })
  return [
    '### Units',
    '',
    '| kind | units, with other spellings that are read |',
    '|---|---|',
    ...rows,
    '',
  ].join('\n')
}

function spreadTable(): string {
  const says = (kind: Kind, s: { part: number; floor: number }) => {
    const part = s.part > 0 ? `${Number((s.part * 100).toPrecision(3))} %` : ''
    const unit = { length: 'mm', mass: 'g', angle: 'deg', temperature: 'K' }[kind as string]
    const floor =
      s.floor > 0 ? formatQuantity(s.floor, kind === 'temperature' ? 'temperatureStep' : kind, unit, 3) : ''
    return part && floor ? `${part}, at least ${floor}` : part || floor || 'none'
  }
  const rows = Object.entries(spreads).map(([kind, row]) => {
    const [m, k, g] = (['measured', 'maker', 'guess'] as const).map((s) => says(kind as Kind, row[s]))
    return `| ${kind} | ${m} | ${k} | ${g} |`
  })
  return [
    '### Usual ranges',
    '',
    'The ± a value gets when none is written (common practice, no source). Kinds not listed: 3 %, 5 %, 15 %.',
    'The least amount never exceeds a fifth of a size. Where a thing stands (heights above the water, places on the',
    'craft) the ± does not grow with the distance; it is given with the field, and a guess is three times as coarse.',
    'Speeds and torques of a curve, ratios of a drive and other decisions take no ± unless one is written.',
    '',
    '| kind | measured | maker | guess or no source |',
    '|---|---|---|---|',
    ...rows,
    '',
  ].join('\n')
}

const begin = '<!-- made from the field tables by scripts/craftDocs.ts; do not edit below -->'

/** The page with its reference part made anew. Throws RangeError when the mark is gone. */
export function withReference(page: string): string {
  const at = page.indexOf(begin)
  if (at === -1) throw new RangeError(`docs/craft-file.md has lost the line ${begin}`)
  return `${page.slice(0, at)}${begin}\n\n${craftReference()}`
}
