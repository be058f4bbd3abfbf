import { memo } from 'react'
import { Button } from 'react-aria-components/Button'
import { Slider, SliderThumb, SliderTrack } from 'react-aria-components/Slider'
import type { Sentence } from '../../../base/answers/sentence.ts'
import { fromSi, toSi } from '../../../base/units/convert.ts'
import { app } from '../state/app.ts'
import type { InputAt } from '../state/craftFile.ts'
import { useApp } from '../state/hooks.ts'
import { stepOf, writtenNumber } from '../state/shownValues.ts'
import { ChoiceField } from './ChoiceField.tsx'
import { Provenance } from './Provenance.tsx'
import { QuantityField } from './QuantityField.tsx'
import { Says } from './Says.tsx'
import { toKeep } from './TryStrip.tsx'

interface Props {
  input: InputAt
  /** slider ends, SI */
  low: number
  high: number
  effect?: Sentence | undefined
}

/** One input of a page: its value, a slider, where it comes from, and what the file says while another is tried. */
export const TriedInput = memo(function TriedInput({ input, low, high, effect }: Props) {
  const tried = useApp((s) => s.work?.tried.find((t) => t.path === input.path))
  const readOnly = useApp((s) => s.role === 'follower')
  const { path, kind, unit, label } = input
  const value = tried?.value ?? input.value
  const tryValue = (si: number | string, text: string) => app.tryValue(path, si, text)

  const field =
    input.choices || typeof value === 'string' ? (
      <ChoiceField
        label={label}
        value={String(value ?? '')}
        choices={input.choices ?? []}
        disabled={readOnly}
        onChange={(word) => tryValue(word, word)}
      />
    ) : (
      <QuantityField
        label={label}
        kind={kind}
        unit={unit}
        value={value}
        min={input.min}
        max={input.max}
        readOnly={readOnly}
        onEnter={toKeep}
        onCommit={tryValue}
      />
    )

  return (
    <div className="tried" data-tried={tried !== undefined || undefined}>
      {field}
      {typeof value === 'number' && (
        <ValueSlider
          label={`${label}, slider`}
          at={value}
          low={low}
          high={high}
          input={input}
          disabled={readOnly}
          onMove={tryValue}
        />
      )}
      <p className="about">
        <Provenance input={input} />
        {effect && (
          <span className="effect">
            <Says says={effect} />
          </span>
        )}
        {tried && (
          <span className="was" title="Enter goes on to Keep">
            was {tried.was || 'not there'}{' '}
            <Button
              className="plain"
              aria-label={`Drop ${label}, back to ${tried.was || 'nothing'}`}
              onPress={() => app.dropOne(path)}
            >
              Drop
            </Button>
          </span>
        )}
      </p>
    </div>
  )
})

interface SliderProps {
  label: string
  at: number
  low: number
  high: number
  input: InputAt
  disabled: boolean
  onMove: (si: number, text: string) => void
}

/** A slider in the unit shown, so that its steps are round ones. */
function ValueSlider({ label, at, low, high, input, disabled, onMove }: SliderProps) {
  const { kind, unit } = input
  const ends = [low, high].map((end) => fromSi(end, kind, unit)) as [number, number]
  const step = stepOf((Math.abs(ends[0]) + Math.abs(ends[1])) / 2, kind, unit)
  const min = Math.floor(ends[0] / step) * step
  const max = Math.ceil(ends[1] / step) * step
  return (
    <Slider
      aria-label={label}
      minValue={min}
      maxValue={max}
      step={step}
      isDisabled={disabled}
      value={Math.min(max, Math.max(min, fromSi(at, kind, unit)))}
      onChange={(next) => {
        const si = Math.min(input.max, Math.max(input.min, toSi(next, kind, unit)))
        onMove(si, `${writtenNumber(si, kind, unit)} ${unit}`.trim())
      }}
    >
      <SliderTrack className="track">
        <SliderThumb className="thumb" />
      </SliderTrack>
    </Slider>
  )
}
