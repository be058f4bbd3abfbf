import { memo, useMemo } from 'react'
import type { Sentence } from '../../../base/answers/sentence.ts'
import { inputId } from '../frame/pageRoute.ts'
import { type Craft, type InputAt, inputAt, labelOf } from '../state/craftFile.ts'
import { useApp } from '../state/hooks.ts'
import { TriedInput } from './TriedInput.tsx'

export interface PanelInput {
  path: string
  /** what to call it; the file's own words when left out */
  label?: string
  /** what moving it does to this page's answer, "+40 rpm a millimetre" */
  effect?: Sentence
  /** ends of its slider, SI; left out, six tenths to one and a half of the file's value */
  low?: number
  high?: number
}

interface Props {
  /** in order of effect, the strongest first */
  inputs: readonly PanelInput[]
  title?: string
  /** the craft whose values they show, where it is not the file's as it stands */
  of?: Craft | undefined
}

/** The few inputs that move this page's answer most. Moving one tries it; nothing is written until it is kept. */
export const InputsPanel = memo(function InputsPanel({ inputs, title = 'What moves this most', of }: Props) {
  const own = useApp((s) => s.craft)
  const craft = of ?? own
  const units = useApp((s) => s.units)
  const rows = useMemo(
    () =>
      inputs.flatMap((row) => {
        const input = craft && inputAt(craft, row.path, units)
        return input ? [{ row, input: { ...input, label: row.label ?? labelOf(row.path, craft) } }] : []
      }),
    [inputs, craft, units],
  )
  if (rows.length === 0) return null
  return (
    <section className="panel">
      {title && <h2>{title}</h2>}
      <ul>
        {rows.map(({ row, input }) => (
          <li key={row.path} id={inputId(row.path)}>
            <TriedInput input={input} {...ends(input, row)} effect={row.effect} />
          </li>
        ))}
      </ul>
    </section>
  )
})

/** Slider ends: as given, or round the file's value, within what the field allows. */
function ends(input: InputAt, row: PanelInput): { low: number; high: number } {
  const now = typeof input.value === 'number' ? input.value : 0
  const [a, b] = [row.low ?? now * 0.6, row.high ?? now * 1.5].sort((x, y) => x - y) as [number, number]
  const low = Math.max(input.min, input.kind === 'count' ? Math.floor(a) : a)
  const high = Math.min(input.max, input.kind === 'count' ? Math.ceil(b) : b)
  return { low, high: high > low ? high : low + 1 }
}
