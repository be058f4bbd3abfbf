import { useEffect, useState } from 'react'
import { Button } from 'react-aria-components/Button'
import { NewCraft } from '../pages/begin/NewCraft.tsx'
import { app } from '../state/app.ts'
import { demos } from '../state/demos.ts'
import type { Shelved } from '../state/saved.ts'
import { openPicked } from './FileMenu.tsx'

/** Nothing on the bench: begin a craft, open a file, take up one kept here, or look at an example. */
export function BenchPage() {
  const [kept, setKept] = useState<readonly Shelved[]>([])
  useEffect(() => void app.listKept().then(setKept), [])
  return (
    <div className="page bench">
      <header className="answer">
        <p className="asks">Nothing on the bench yet</p>
        <h1>Put one craft in, and see how it will go and what to change.</h1>
        <p>
          Engines, pipe, jet, hull and deck in one plain file. Everything is worked out in this page; nothing
          leaves your machine.
        </p>
      </header>
      <div className="cards">
        <section>
          <h2>Begin your own</h2>
          <p>
            Ten questions, one at a time; “about” and “I don’t know” are answers. What is left out is assumed
            and says so.
          </p>
          <NewCraft />
        </section>
        <section>
          <h2>Open a craft file</h2>
          <p>Pick it, or drop it anywhere on this window.</p>
          <Button onPress={() => void openPicked()}>Open a file…</Button>
        </section>
        <section>
          <h2>Look at an example</h2>
          <p>Made up for this project; no such craft was ever measured.</p>
          <ul className="plainlist">
            {demos.map((demo) => (
              <li key={demo.file}>
                <Button onPress={async () => void app.openExample(demo.file, await demo.text())}>
                  {demo.name}
                </Button>{' '}
                {demo.says}
              </li>
            ))}
          </ul>
        </section>
        {kept.length > 0 && (
          <section>
            <h2>Kept in this browser</h2>
            <ul className="plainlist">
              {kept.map((craft) => (
                <li key={craft.craftId}>
                  <Button onPress={() => void app.openKept(craft.craftId)}>{craft.fileName}</Button>{' '}
                  <span className="quiet">{new Date(craft.time).toLocaleString()}</span>{' '}
                  <Forget craft={craft} onGone={async () => setKept(await app.listKept())} />
                </li>
              ))}
            </ul>
          </section>
        )}
      </div>
    </div>
  )
}

/** Forgetting cannot be taken back, so it asks once more. */
function Forget({ craft, onGone }: { craft: Shelved; onGone: () => void }) {
  const [sure, setSure] = useState(false)
  if (!sure)
    return (
      <Button className="plain" aria-label={`Forget ${craft.fileName}`} onPress={() => setSure(true)}>
        Forget
      </Button>
    )
  return (
    <>
      <Button onPress={() => void app.forget(craft.craftId).then(onGone)}>Forget for good</Button>
      <Button className="plain" autoFocus onPress={() => setSure(false)}>
        Keep it
      </Button>
    </>
  )
}
