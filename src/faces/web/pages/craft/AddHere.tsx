import type { Spec } from '../../../../craft/fields.ts'
import { inputId } from '../../frame/pageRoute.ts'
import { Says } from '../../parts/Says.tsx'
import { app } from '../../state/app.ts'
import { labelOf } from '../../state/craftFile.ts'
import { useApp } from '../../state/hooks.ts'
import { AskFor } from './AskFor.tsx'
import { blanksOf } from './blanks.ts'

interface Props {
  spec: Spec
  /** where it goes; for a new item of a list, the list's path and the next number */
  path: string
  /** "Add a weight" for items, the field's own name else */
  word?: string
}

/** Something the file does not have yet, folded away until it is wanted. */
export function AddHere({ spec, path, word }: Props) {
  const readOnly = useApp((s) => s.role === 'follower')
  if (readOnly) return null
  return (
    <details className="add" id={inputId(path)}>
      <summary>{word ?? `${spec.label ?? labelOf(path)}: not given`}</summary>
      {spec.gloss && (
        <p className="quiet">
          <Says says={spec.gloss} />
        </p>
      )}
      <AskFor blanks={blanksOf(spec, path)} action="Add" onGive={app.writeAll} />
    </details>
  )
}
