import { useEffect, useId, useRef, useState } from 'react'

interface Props {
  id?: string
  value: string
  /** what is wrong with a text, or nothing; a text with a fault is not handed on */
  fault?: (text: string) => string | undefined
  /** answers why the text was not taken; nothing or '' when it was */
  onCommit: (text: string) => string | undefined
  readOnly?: boolean
  placeholder?: string
  maxLength?: number
  size?: number
  /** goes into the craft file */
  kept?: boolean
}

/** milliseconds of quiet after which what was typed counts */
const quiet = 600
/** what is written into the craft file waits no longer than this, pause or no pause: little is lost if the tab dies */
export const longest = 150

/** Free text that counts after a pause, on Enter and on leaving; Escape takes it back. */
export function DraftInput(props: Props) {
  const { id, value, fault, onCommit, readOnly, placeholder, maxLength, size, kept } = props
  const [draft, setDraft] = useState<string>()
  const [refused, setRefused] = useState<{ text: string; why: string }>()
  const timer = useRef<ReturnType<typeof setTimeout>>(undefined)
  const newest = useRef('')
  const faultId = useId()
  useEffect(() => () => clearTimeout(timer.current), [])
  const typed = draft?.trim()
  const wrong =
    typed === undefined ? undefined : (fault?.(typed) ?? (refused?.text === typed ? refused.why : undefined))
  const commit = (text: string) => {
    clearTimeout(timer.current)
    timer.current = undefined
    const typed = text.trim()
    if (fault?.(typed) !== undefined) return false
    const why = typed === value ? '' : onCommit(typed)
    if (why) setRefused({ text: typed, why })
    return !why
  }
  const leave = () => draft !== undefined && commit(draft) && setDraft(undefined)
  return (
    <>
      <input
        id={id}
        className="plainfield"
        value={draft ?? value}
        readOnly={readOnly}
        placeholder={placeholder}
        maxLength={maxLength}
        size={size}
        autoComplete="off"
        aria-invalid={wrong !== undefined}
        aria-describedby={wrong === undefined ? undefined : faultId}
        onChange={(event) => {
          const text = event.target.value
          setDraft(text)
          newest.current = text
          if (!kept) clearTimeout(timer.current)
          if (!kept || timer.current === undefined)
            timer.current = setTimeout(() => commit(newest.current), kept ? longest : quiet)
        }}
        onBlur={leave}
        onKeyDown={(event) => {
          if (event.key === 'Enter') leave()
          else if (event.key === 'Escape') {
            clearTimeout(timer.current)
            timer.current = undefined
            setDraft(undefined)
          }
        }}
      />
      {wrong && (
        <span className="blankfault" id={faultId}>
          {wrong}
        </span>
      )}
    </>
  )
}
