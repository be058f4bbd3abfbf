import { useState } from 'react'
import { Button } from 'react-aria-components/Button'
import type { VariantSpec } from '../../../../craft/fields.ts'
import { ChoiceField } from '../../parts/ChoiceField.tsx'
import { Says } from '../../parts/Says.tsx'
import { app } from '../../state/app.ts'
import { useApp } from '../../state/hooks.ts'
import { AskFor } from './AskFor.tsx'
import { requiredOf } from './blanks.ts'

interface Props {
  spec: VariantSpec
  path: string
  /** the kind now */
  word: string
}

/** The kind of a thing. Another kind needs other numbers, so they are asked for before anything is written. */
export function VariantField({ spec, path, word }: Props) {
  const readOnly = useApp((s) => s.role === 'follower')
  const has = useApp((s) => s.work?.text ?? '')
  const [wanted, setWanted] = useState<string>()
  const next = wanted === undefined || wanted === word ? undefined : spec.variants[wanted]
  const now = spec.variants[word]
  const stays = new Set(Object.keys(next?.fields ?? {}))
  const goes = Object.keys(now?.fields ?? {}).filter((key) => !stays.has(key))
  return (
    <div className="wrow">
      <ChoiceField
        label="Kind"
        value={wanted ?? word}
        choices={Object.keys(spec.variants)}
        disabled={readOnly}
        onChange={setWanted}
      />
      <p className="quiet">
        <Says says={(next ?? now)?.gloss ?? ''} />
      </p>
      {next && wanted && (
        <div className="group">
          <p>
            To make it “{wanted}”, give these. What only “{word}” needs is taken out; Undo brings it back.
          </p>
          <AskFor
            blanks={requiredOf(next.fields, path).filter(({ path: at }) => !app.isWritten(has, at))}
            action={`Change to ${wanted}`}
            onGive={(values) => app.changeKind(path, spec.tag, wanted, goes, values)}
          />
          <Button className="plain" onPress={() => setWanted(undefined)}>
            Leave it
          </Button>
        </div>
      )}
    </div>
  )
}
