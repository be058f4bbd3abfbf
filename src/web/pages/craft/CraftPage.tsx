import { useState } from 'react'
import { Button } from 'react-aria-components/Button'
import { AnswerHeader } from '../../parts/AnswerHeader.tsx'
import { useApp } from '../../state/hooks.ts'
import { FormView } from './FormView.tsx'
import { MeasureList } from './MeasureList.tsx'
import { Picture } from './Picture.tsx'
import { countSources, sourcesInWords } from './summary.ts'
import { TextView } from './TextView.tsx'
import './craft.css'

/** What have I got? The craft as a picture, a form and its own text. */
export function CraftPage() {
  const craft = useApp((s) => s.craft)
  const problems = useApp((s) => s.problems)
  const [asText, setAsText] = useState(false)
  // a text that cannot be read is mended as text
  const text = asText || !craft || problems.length > 0
  const counts = craft && countSources(craft)
  return (
    <>
      <AnswerHeader
        asks="What have I got?"
        says={craft && counts ? `${craft.name}: ${sourcesInWords(counts)}.` : 'This file cannot be read yet.'}
        confidence={
          problems.length > 0
            ? 'The text has problems; the last text that could be read stands until they are mended.'
            : craft?.about
        }
      />
      {craft && (
        <div className="beside">
          <Picture craft={craft} />
          <MeasureList craft={craft} />
        </div>
      )}
      <section className="file">
        <div className="row">
          <h2>The craft file</h2>
          <fieldset className="switch">
            <legend className="hush">Show the file</legend>
            <Button
              aria-pressed={!text}
              isDisabled={!craft || problems.length > 0}
              onPress={() => setAsText(false)}
            >
              As a form
            </Button>
            <Button aria-pressed={text} onPress={() => setAsText(true)}>
              As text
            </Button>
          </fieldset>
        </div>
        {text || !craft ? <TextView /> : <FormView craft={craft} />}
      </section>
    </>
  )
}
