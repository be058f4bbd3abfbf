import { useEffect, useState } from 'react'
import { Button } from 'react-aria-components/Button'
import { useRoute } from '../../frame/route.ts'
import { AnswerHeader } from '../../parts/AnswerHeader.tsx'
import { ProblemList } from '../../parts/ProblemList.tsx'
import { hasErrors } from '../../state/craftFile.ts'
import { useApp } from '../../state/hooks.ts'
import { ChangeLog } from './ChangeLog.tsx'
import { EarlierTexts } from './EarlierTexts.tsx'
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
  const file = useApp((s) => s.work?.fileName ?? '')
  const broken = hasErrors(problems)
  const [asText, setAsText] = useState(broken)
  // a text that cannot be read is mended as text, and stays in view when it reads again
  if (broken && !asText) setAsText(true)
  // an address that names an input asks for the form
  const { path } = useRoute()
  useEffect(() => {
    if (path) setAsText(false)
  }, [path])
  const counts = craft && countSources(craft)
  return (
    <>
      <AnswerHeader
        asks="What have I got?"
        says={craft && counts ? `${craft.name}: ${sourcesInWords(counts)}.` : 'This file cannot be read yet.'}
        confidence={
          broken
            ? craft
              ? 'The text has problems; the last text that could be read stands until they are mended.'
              : 'What is wrong with it, place by place, stands with the text below.'
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
            <Button aria-pressed={!asText} isDisabled={broken} onPress={() => setAsText(false)}>
              As a form
            </Button>
            <Button aria-pressed={asText} onPress={() => setAsText(true)}>
              As text
            </Button>
          </fieldset>
        </div>
        {!asText && problems.length > 0 && <ProblemList problems={problems} file={file} />}
        {asText || !craft ? <TextView /> : <FormView craft={craft} />}
        <EarlierTexts />
      </section>
      {craft && <ChangeLog craft={craft} />}
    </>
  )
}
