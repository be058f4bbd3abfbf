import { useId } from 'react'
import type { Spec, TextSpec } from '../../../../craft/fields.ts'
import { inputId } from '../../frame/route.ts'
import { ChoiceField } from '../../parts/ChoiceField.tsx'
import { DraftInput } from '../../parts/DraftInput.tsx'
import { Says } from '../../parts/Says.tsx'
import { app } from '../../state/app.ts'
import { useApp } from '../../state/hooks.ts'

interface Props {
  spec: Extract<Spec, { type: 'choice' | 'flag' | 'text' }>
  path: string
  value: unknown
}

/** A word of a few, yes or no, or free text. */
export function WordRow({ spec, path, value }: Props) {
  const readOnly = useApp((s) => s.role === 'follower')
  const label = spec.label ?? path
  const id = useId()
  if (spec.type === 'text') {
    const text = (value as string | undefined) ?? ''
    return (
      <div className="wrow" id={inputId(path)}>
        <label htmlFor={id}>{label}</label>
        <DraftInput
          kept
          id={id}
          value={text}
          maxLength={spec.maxLength}
          readOnly={readOnly}
          fault={(typed) => faultOf(spec, typed)}
          onCommit={(typed) => (typed === '' ? app.remove(path) : app.write(path, typed))}
        />
        <p className="quiet">
          <Says says={spec.gloss} />
        </p>
      </div>
    )
  }
  const flag = spec.type === 'flag'
  return (
    <div className="wrow" id={inputId(path)}>
      <ChoiceField
        label={label}
        value={flag ? (value ? 'yes' : 'no') : String(value ?? '')}
        unset="not given"
        choices={flag ? ['yes', 'no'] : spec.words}
        disabled={readOnly}
        onChange={(word) => app.write(path, word)}
      />
      <p className="quiet">
        <Says says={spec.gloss} />
      </p>
    </div>
  )
}

/** What is wrong with a text of this field, or nothing. */
function faultOf(spec: TextSpec, typed: string): string | undefined {
  if (typed === '') return spec.presence === 'required' ? 'It needs some text.' : undefined
  return spec.pattern && !spec.pattern.test(typed)
    ? `Expected ${spec.patternSays ?? 'another form'}.`
    : undefined
}
