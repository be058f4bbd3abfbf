import type { Spec } from '../../../craft/fields.ts'
import { inputId } from '../../frame/route.ts'
import { ChoiceField } from '../../parts/ChoiceField.tsx'
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
  if (spec.type === 'text') {
    const text = (value as string | undefined) ?? ''
    return (
      <div className="wrow" id={inputId(path)}>
        <label>
          {label}
          <input
            key={text}
            className="plainfield"
            defaultValue={text}
            maxLength={spec.maxLength}
            readOnly={readOnly}
            autoComplete="off"
            onBlur={(event) => {
              const typed = event.target.value.trim()
              if (typed !== text && typed !== '') app.write(path, typed)
            }}
            onKeyDown={(event) => event.key === 'Enter' && event.currentTarget.blur()}
          />
        </label>
        <p className="quiet">{spec.gloss}</p>
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
      <p className="quiet">{spec.gloss}</p>
    </div>
  )
}
