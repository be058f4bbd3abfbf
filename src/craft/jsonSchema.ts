import { spellings } from '../base/units/convert.ts'
import { unitless } from '../base/units/parse.ts'
import type { Fields, QuantitySpec, Spec } from './fields.ts'
import { limitsInWords, undecidedWord } from './reader.ts'
import { craftFields, currentVersion, versionKey } from './schema/craftSchema.ts'
import { oldKeys } from './schema/oldKeys.ts'

/**
 * The JSON Schema (draft 2020-12) of a craft file, made from the field tables, for editors that check while
 * one types. It knows keys, words and the form of quantities; limits and contradictions only the reader knows.
 */
export type Json = { [key: string]: unknown }

const literally = (s: string) => s.replace(/[.*+?^${}()|[\]\\/]/g, '\\$&')

const digits = String.raw`(?:\d+(?:[\u202F\u2009]\d{3})+(?:\.\d*)?|\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?`
const number = String.raw`[+\-−]?(?:\d+(?:\s+|-)\d+\s*/\s*\d+|\d+\s*/\s*\d+|\d*\s*[¼½¾]|${digits})`
const source = String.raw`(?:\s*\(\s*(?:[mM]easured|[mM]aker|[gG]uess|MEASURED|MAKER|GUESS)\s*\))?`

/** a regular expression for the written form of a kind: what the reader accepts, it accepts */
export function quantityPattern(spec: Pick<QuantitySpec, 'kind'>): string {
  const loose = (name: string) => literally(name).replaceAll(' ', String.raw`\s+`)
  const units = spellings(spec.kind)
    .sort((a, b) => b.length - a.length)
    .map((s) => (s === '1' ? '1' : loose(s).replace(/(\\\*|\\\/|·)/g, String.raw`\s?$1\s?`)))
  const unit = `(?:${units.join('|')})`
  // without a unit there is nothing to add up; with one, three amounts are plenty ("1 h 20 min 5 s")
  const amount = unitless(spec.kind) ? `${number}\\s*${unit}?` : `(?:${number}\\s*${unit}\\s*){1,3}`
  const spread = String.raw`(?:\s*(?:±|\+\s?/\s?-|\+-)\s*${number}\s*(?:%|${unit})?)?`
  const shared = unitless(spec.kind) ? '' : `|${number}\\s*(?:±|\\+\\s?/\\s?-|\\+-)\\s*${number}\\s*${unit}`
  return `^\\s*(?:${amount}${spread}${shared})${source}\\s*$`
}

const words = (spec: Spec): Json => ({
  ...(spec.label === undefined ? {} : { title: spec.label }),
  description: spec.gloss,
})

/** schemas of kinds are shared, as one kind's pattern is long */
type Definitions = Map<string, Json>

function quantitySchema(spec: QuantitySpec, defs: Definitions): Json {
  const name = `${spec.kind}Text`
  if (!defs.has(name)) {
    const text: Json = { type: 'string', pattern: quantityPattern(spec) }
    defs.set(name, unitless(spec.kind) ? { anyOf: [{ type: 'number' }, text] } : text)
  }
  const written = { $ref: `#/$defs/${name}` }
  return {
    ...words(spec),
    ...(spec.undecided ? { anyOf: [written, { const: undecidedWord }] } : written),
    $comment: `${limitsInWords(spec)}; usually in ${spec.unit === '' ? 'plain numbers' : spec.unit}`,
  }
}

function schemaOf(spec: Spec, defs: Definitions): Json {
  switch (spec.type) {
    case 'quantity':
      return quantitySchema(spec, defs)
    case 'choice':
      return { ...words(spec), enum: [...spec.words] }
    case 'text':
      return {
        ...words(spec),
        // a text may look like a number to a YAML reader, a date like a date
        type: ['string', 'number', 'boolean'],
        ...(spec.pattern ? { pattern: spec.pattern.source } : {}),
        maxLength: spec.maxLength,
      }
    case 'flag':
      return { ...words(spec), enum: ['yes', 'no', true, false] }
    case 'point':
      return {
        ...words(spec),
        type: 'array',
        items: quantitySchema(spec.each, defs),
        minItems: spec.size,
        maxItems: spec.size,
      }
    case 'group': {
      const made = { ...words(spec), ...objectOf(spec.fields, defs) }
      return orNothing(made, !('required' in made))
    }
    case 'list':
      return orNothing(
        {
          ...words(spec),
          type: 'array',
          items: schemaOf(spec.item as Spec, defs),
          minItems: spec.minItems,
          maxItems: spec.maxItems,
        },
        spec.minItems === 0,
      )
    case 'variant':
      return {
        ...words(spec),
        type: 'object',
        required: [spec.tag],
        properties: { [spec.tag]: { enum: Object.keys(spec.variants) } },
        oneOf: Object.entries(spec.variants).map(([word, v]) => {
          const one = objectOf(v.fields, defs)
          return {
            title: word,
            description: v.gloss,
            ...one,
            properties: { [spec.tag]: { const: word }, ...(one['properties'] as Json) },
          }
        }),
      }
  }
}

/** `rider:` with nothing under it is an empty group, which YAML readers call null */
const orNothing = (schema: Json, may: boolean): Json =>
  may && typeof schema['type'] === 'string' ? { ...schema, type: [schema['type'], 'null'] } : schema

/** a group must be there when something in it must be */
function needed(spec: Spec): boolean {
  if (spec.presence === 'required') return true
  if (spec.type === 'list') return spec.presence === 'assumed' && spec.minItems > 0
  return spec.type === 'group' && spec.presence === 'assumed' && Object.values(spec.fields).some(needed)
}

function objectOf(fields: Fields, defs: Definitions): Json {
  const required = Object.entries(fields)
    .filter(([, spec]) => needed(spec))
    .map(([key]) => key)
  const old = Object.entries(oldKeys).flatMap(([was, is]) => {
    const spec = Object.hasOwn(fields, is) ? fields[is] : undefined
    return spec ? [[was, { ...schemaOf(spec, defs), deprecated: true }] as const] : []
  })
  return {
    type: 'object',
    properties: Object.fromEntries([
      ...Object.entries(fields).map(([key, spec]) => [key, schemaOf(spec, defs)] as const),
      ...old,
    ]),
    ...(required.length > 0 ? { required } : {}),
    additionalProperties: false,
  }
}

/** The schema as an object; written to schema/craft.schema.json by scripts/craftDocs.ts. */
export function craftJsonSchema(): Json {
  const defs: Definitions = new Map()
  const body = objectOf(craftFields, defs)
  return {
    $schema: 'https://json-schema.org/draft/2020-12/schema',
    title: 'Craft file',
    description: `One small powered craft, version ${currentVersion} of the file.`,
    ...body,
    required: [versionKey, ...((body['required'] as string[]) ?? [])],
    properties: { [versionKey]: { const: currentVersion }, ...(body['properties'] as Json) },
    $defs: Object.fromEntries(defs),
  }
}
