import { useState } from 'react'
import { Button } from 'react-aria-components/Button'
import { app } from '../../state/app.ts'
import { useApp } from '../../state/hooks.ts'
import type { Snapshot } from '../../state/saved.ts'
import { linesChanged } from './linesChanged.ts'

/** Texts of this craft kept in the browser, newest first, each to be looked at or gone back to. */
export function EarlierTexts() {
  const work = useApp((s) => s.work)
  const readOnly = useApp((s) => s.role === 'follower')
  const [kept, setKept] = useState<readonly Snapshot[]>([])
  if (!work) return null
  // several were kept of the same text while something was tried: the newest stands for them
  const others = kept.filter(({ work: { text } }, i) => text !== work.text && text !== kept[i - 1]?.work.text)
  return (
    <details
      className="fold"
      onToggle={async (event) => {
        if (event.currentTarget.open) setKept(await app.history(work.id))
      }}
    >
      <summary>
        <span className="foldname">Earlier texts</span> <span className="quiet">kept in this browser</span>
      </summary>
      {others.length === 0 && <p className="quiet">None that differ from the text now.</p>}
      <ol className="plainlist">
        {others.map((snapshot) => (
          <li key={snapshot.time} className="row">
            <span>{new Date(snapshot.time).toLocaleString()}</span>
            <span className="quiet">{linesChanged(snapshot.work.text, work.text)}</span>
            {!readOnly && (
              <Button className="plain" onPress={() => app.restore(snapshot.work.text)}>
                Go back to this
              </Button>
            )}
          </li>
        ))}
      </ol>
    </details>
  )
}
