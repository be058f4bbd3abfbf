import { camel, type Fields, type Spec } from '../../../../craft/fields.ts'
import { Says } from '../../parts/Says.tsx'
import { AddHere } from './AddHere.tsx'
import { ListField } from './ListField.tsx'
import { QuantityRow } from './QuantityRow.tsx'
import { VariantField } from './VariantField.tsx'
import { WordRow } from './WordRow.tsx'

interface Props {
  spec: Spec
  path: string
  value: unknown
  /** without a heading of its own */
  bare?: boolean
}

/** One field of the form, whatever it is; groups and lists hold more of them. */
export function SpecField({ spec, path, value, bare = false }: Props) {
  const absent = value === undefined
  switch (spec.type) {
    case 'quantity':
      return <QuantityRow path={path} />
    case 'choice':
    case 'flag':
    case 'text':
      return <WordRow spec={spec} path={path} value={value} />
    case 'point':
      if (absent) return <AddHere spec={spec} path={path} />
      return (
        <fieldset className="point">
          <legend>{spec.label ?? path}</legend>
          {spec.axes.map((axis, i) => (
            <QuantityRow key={axis} path={`${path}.${i}`} label={axis} brief />
          ))}
        </fieldset>
      )
    case 'list':
      if (absent) return <AddHere spec={spec} path={path} />
      return (
        <ListField
          spec={spec}
          path={path}
          value={value as readonly unknown[]}
          bare={bare}
          draw={(item, at, held) => <SpecField spec={item} path={at} value={held} bare />}
        />
      )
    case 'variant': {
      const word = String((value as Record<string, unknown>)['kind'])
      return (
        <>
          <VariantField key={word} spec={spec} path={path} word={word} />
          <FieldsOf fields={spec.variants[word]?.fields ?? {}} path={path} value={value} />
        </>
      )
    }
    case 'group':
      if (absent) return <AddHere spec={spec} path={path} />
      if (bare) return <FieldsOf fields={spec.fields} path={path} value={value} />
      return (
        <fieldset className="group">
          <legend>{spec.label ?? path}</legend>
          <p className="quiet">
            <Says says={spec.gloss} />
          </p>
          <FieldsOf fields={spec.fields} path={path} value={value} />
        </fieldset>
      )
  }
}

function FieldsOf({ fields, path, value }: { fields: Fields; path: string; value: unknown }) {
  const held = value as Record<string, unknown>
  return (
    <div className="fields">
      {Object.entries(fields).map(([key, spec]) => (
        <SpecField key={key} spec={spec} path={`${path}.${key}`} value={held[camel(key)]} />
      ))}
    </div>
  )
}
