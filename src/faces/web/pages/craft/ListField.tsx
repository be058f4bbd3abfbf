import type { ReactNode } from 'react'
import { Button } from 'react-aria-components/Button'
import type { Spec } from '../../../../craft/fields.ts'
import { Says } from '../../parts/Says.tsx'
import { app } from '../../state/app.ts'
import { useApp } from '../../state/hooks.ts'
import { AddHere } from './AddHere.tsx'

interface Props {
  spec: Extract<Spec, { type: 'list' }>
  path: string
  value: readonly unknown[]
  bare?: boolean
  /** draws one item: items are fields of any kind, lists among them */
  draw: (spec: Spec, path: string, value: unknown) => ReactNode
}

/** Several of the same, each folded away under its name, with a way to add and take away. */
export function ListField({ spec, path, value, bare = false, draw }: Props) {
  const readOnly = useApp((s) => s.role === 'follower')
  const item = spec.item as Spec
  const what = item.label ?? 'item'
  const body = (
    <>
      {value.map((held, i) => (
        <details
          // biome-ignore lint/suspicious/noArrayIndexKey: items have no name of their own; the path is their number
          key={i}
          className="item"
        >
          <summary>
            {what} {i + 1}
            {nameOf(held)}
          </summary>
          {draw(item, `${path}.${i}`, held)}
          {value.length > spec.minItems && !readOnly && (
            <Button className="plain" onPress={() => app.remove(`${path}.${i}`)}>
              Take {what.toLowerCase()} {i + 1} out
            </Button>
          )}
        </details>
      ))}
      {value.length < spec.maxItems && (
        <AddHere spec={item} path={`${path}.${value.length}`} word={`Add ${article(what)}`} />
      )}
    </>
  )
  if (bare) return body
  return (
    <fieldset className="group">
      <legend>{spec.label ?? path}</legend>
      <p className="quiet">
        <Says says={spec.gloss} />
      </p>
      {body}
    </fieldset>
  )
}

const nameOf = (held: unknown): string => {
  const name = held !== null && typeof held === 'object' && 'name' in held ? held.name : undefined
  return typeof name === 'string' ? `: ${name}` : ''
}
const article = (word: string) => `${/^[aeiou]/i.test(word) ? 'an' : 'a'} ${word.toLowerCase()}`
