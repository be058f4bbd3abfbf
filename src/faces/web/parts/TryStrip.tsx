import { useEffect, useState } from 'react'
import { Button } from 'react-aria-components/Button'
import { app } from '../state/app.ts'
import { labelOf } from '../state/craftFile.ts'
import { useApp } from '../state/hooks.ts'
import type { Tried } from '../state/work.ts'

/** values said in full before the rest is folded */
const most = 4

/** the field that the keyboard was last on before it came here */
let left: HTMLElement | undefined

function useLeft(): void {
  useEffect(() => {
    const note = ({ target }: FocusEvent) => {
      if (target instanceof HTMLElement && target.closest('main')) left = target
    }
    addEventListener('focusout', note)
    return () => removeEventListener('focusout', note)
  }, [])
}

/** Puts the keyboard on Keep, while something is tried; false when there is nothing to keep. */
export function toKeep(): boolean {
  const button = document.querySelector<HTMLElement>('.trystrip button.main')
  button?.focus()
  return button !== null
}

/** Where the keyboard goes back to when the strip is gone: the field it came from, or the page. */
function cameFrom(): () => void {
  const at = left
  return () => {
    if (at?.isConnected && at.getClientRects().length > 0) at.focus()
    else document.getElementById('page')?.focus()
  }
}

/** The strip at the foot while something is tried: what, against what, and Keep, Drop or Why. */
export function TryStrip() {
  useLeft()
  const tried = useApp((s) => s.work?.tried)
  const expects = useApp((s) => s.expects)
  const [why, setWhy] = useState(false)
  const [reason, setReason] = useState('')
  const [hope, setHope] = useState<string>()
  if (!tried || tried.length === 0) return null
  // a whole pipe has a score of values: the strip must not hide the page
  const shown = tried.length > most + 1 ? most : tried.length
  const expect = hope ?? expects
  const keep = () => {
    const back = cameFrom()
    if (app.keep(reason.trim(), expect.trim()) !== '') return
    back()
    setReason('')
    setHope(undefined)
    setWhy(false)
  }
  return (
    <section className="trystrip" aria-label="What is being tried">
      <p>
        <strong>Trying</strong> <Values tried={tried.slice(0, shown)} />
      </p>
      {tried.length > shown && (
        <details>
          <summary>and {tried.length - shown} more</summary>
          <p>
            <Values tried={tried.slice(shown)} />
          </p>
        </details>
      )}
      {expects && <p className="quiet">{expects}</p>}
      {why && (
        <div className="why">
          <label>
            Why this change
            <textarea rows={2} value={reason} onChange={(e) => setReason(e.target.value)} />
          </label>
          <label>
            What it should do
            <textarea rows={2} value={expect} onChange={(e) => setHope(e.target.value)} />
          </label>
        </div>
      )}
      <div className="row">
        <Button className="main" onPress={keep}>
          Keep
        </Button>
        <Button
          onPress={() => {
            const back = cameFrom()
            app.dropAll()
            back()
          }}
        >
          Drop
        </Button>
        <Button aria-expanded={why} onPress={() => setWhy(!why)}>
          Why
        </Button>
      </div>
    </section>
  )
}

function Values({ tried }: { tried: readonly Tried[] }) {
  // a thing that is only tried may be called otherwise than in the file
  const craft = useApp((s) => s.triedCraft ?? s.craft)
  return tried.map((t, i) => (
    <span key={t.path}>
      {i > 0 && '; '}
      {labelOf(t.path, craft)} <b>{t.text}</b>, was {t.was || 'not there'}
    </span>
  ))
}
