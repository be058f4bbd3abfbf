import { useId } from 'react'

interface Props {
  label: string
  hushLabel?: boolean
  value: string
  choices: readonly string[]
  /** shown when the value is not among the choices */
  unset?: string
  disabled?: boolean
  onChange: (word: string) => void
}

/** One word out of a few: the browser's own list, as it works with every keyboard and screen reader. */
export function ChoiceField({ label, hushLabel, value, choices, unset, disabled, onChange }: Props) {
  const id = useId()
  return (
    <span className="choice">
      <label htmlFor={id} className={hushLabel ? 'hush' : ''}>
        {label}
      </label>
      <select id={id} value={value} disabled={disabled} onChange={(event) => onChange(event.target.value)}>
        {!choices.includes(value) && <option value={value}>{unset ?? value}</option>}
        {choices.map((word) => (
          <option key={word}>{word}</option>
        ))}
      </select>
    </span>
  )
}
