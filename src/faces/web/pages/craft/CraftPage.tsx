import { lazy, Suspense, useEffect, useMemo, useState } from 'react'
import { Button } from 'react-aria-components/Button'
import type { Decision } from '../../../../base/answers/decision.ts'
import { nextFirst } from '../../../../whole/decisions.ts'
import { useRoute } from '../../frame/pageRoute.ts'
import { AnswerHeader } from '../../parts/AnswerHeader.tsx'
import { Fold } from '../../parts/Fold.tsx'
import { ProblemList } from '../../parts/ProblemList.tsx'
import { answerOf } from '../../parts/pageAnswer.ts'
import { useFindings } from '../../parts/useFindings.ts'
import { useNotYours } from '../../parts/useNotYours.ts'
import type { Craft } from '../../state/craftFile.ts'
import { hasErrors } from '../../state/craftFile.ts'
import { useApp } from '../../state/hooks.ts'
import { ChangeLog } from './ChangeLog.tsx'
import { Deciding } from './Deciding.tsx'
import { EarlierTexts } from './EarlierTexts.tsx'
import { FormView } from './FormView.tsx'
import { MeasureList } from './MeasureList.tsx'
import { countSources, sourcesInWords } from './summary.ts'
import { TextView } from './TextView.tsx'
import { NextCard, Todo } from './Todo.tsx'
import './craft.css'

/** What have I got? The craft as a picture, a form and its own text. */
export function CraftPage() {
  const craft = useApp((s) => s.craft)
  const problems = useApp((s) => s.problems)
  const broken = hasErrors(problems)
  const [asText, setAsText] = useState(broken)
  // a text that cannot be read is mended as text, and stays in view when it reads again
  if (broken && !asText) setAsText(true)
  // an address that names an input asks for the form
  const { path } = useRoute()
  useEffect(() => {
    if (path) setAsText(false)
  }, [path])
  if (!craft)
    return (
      <>
        <AnswerHeader
          asks="What have I got?"
          says="This file cannot be read yet."
          confidence="What is wrong with it, place by place, stands with the text below."
        />
        <CraftText asText={asText} broken={broken} onPick={setAsText} />
      </>
    )
  return (
    <>
      <Opening craft={craft} broken={broken} />
      <CraftText asText={asText} broken={broken} onPick={setAsText} />
      <ChangeLog craft={craft} />
    </>
  )
}

/** the hull has to be floated for it: that code comes when there is a craft to draw */
const Picture = lazy(async () => ({ default: (await import('./Picture.tsx')).Picture }))

const BookFold = lazy(async () => ({ default: (await import('./book/BookFold.tsx')).BookFold }))

/** decisions in sight, beside the next one */
const few = 3
const noDecisions: readonly Decision[] = []

/** The answer to how it goes, what to do next, the craft to scale, and what is worth measuring. */
function Opening({ craft, broken }: { craft: Craft; broken: boolean }) {
  const found = useFindings('push')
  const looked = useApp((s) => s.looked)
  const notYours = useNotYours()
  const fresh = looked?.craft === craft ? looked : undefined
  const decisions = fresh?.triedDecisions ?? fresh?.decisions ?? looked?.decisions ?? noDecisions
  const ordered = useMemo(() => nextFirst(decisions), [decisions])
  const byPage = useApp((s) => (fresh?.triedDecisions ? s.triedFindings : s.findings))
  const findings = useMemo(() => Object.values(byPage).flat(), [byPage])
  const first = useApp((s) => (s.first?.craft === craft ? s.first.headline : undefined))
  const answer = answerOf(found.headline ?? first)
  const counts = sourcesInWords(countSources(craft))
  return (
    <>
      <AnswerHeader
        asks={`What have I got? ${craft.name}`}
        says={answer.says}
        saysTried={found.triedHeadline?.says}
        confidence={
          broken
            ? 'The text has problems; the last text that could be read stands until they are mended.'
            : answer.confidence
        }
      />
      <div className="status" role="status">
        {looked && !fresh
          ? 'Being worked out again…'
          : fresh?.coarse
            ? 'From a coarse simulation of the engines; the fine one is being worked out…'
            : !looked && first
              ? 'A first range from few draws; the good one is being worked out…'
              : ''}
      </div>
      <div className="beside">
        <Suspense fallback={<div className="figure picturecoming" />}>
          <Picture craft={craft} decisions={notYours ? noDecisions : ordered} findings={findings} />
        </Suspense>
        <div className="block">
          {looked && !notYours && <NextCard next={ordered[0]} findings={findings} />}
          {!notYours && <Todo decisions={ordered.slice(1, few)} findings={findings} from={2} />}
        </div>
      </div>
      <div className="folds">
        {ordered.length > few && !notYours && (
          <Fold id="todo" title="What to do" says={`${ordered.length - few} more, worst first`}>
            <Todo decisions={ordered.slice(few)} findings={findings} from={few + 1} />
          </Fold>
        )}
        <Fold id="measure" title="Worth measuring next" says={counts} eager>
          <MeasureList craft={craft} />
          {!broken && !notYours && <Deciding craft={craft} />}
        </Fold>
        {!broken && !notYours && (
          <Fold id="book" title="The book to build from" says="one PDF for the bench, readings typed back">
            <Suspense fallback={<p className="quiet">Being fetched…</p>}>
              <BookFold craft={craft} />
            </Suspense>
          </Fold>
        )}
        {craft.about !== undefined && (
          <Fold id="about" title={`About ${craft.name}`}>
            <p>{craft.about}</p>
          </Fold>
        )}
      </div>
    </>
  )
}

interface TextProps {
  asText: boolean
  broken: boolean
  onPick: (asText: boolean) => void
}

/** The file itself, as a form or as text. */
function CraftText({ asText, broken, onPick }: TextProps) {
  const craft = useApp((s) => s.craft)
  const problems = useApp((s) => s.problems)
  const file = useApp((s) => s.work?.fileName ?? '')
  return (
    <section className="file">
      <div className="row">
        <h2>The craft file</h2>
        <fieldset className="switch">
          <legend className="hush">Show the file</legend>
          <Button aria-pressed={!asText} isDisabled={broken} onPress={() => onPick(false)}>
            As a form
          </Button>
          <Button aria-pressed={asText} onPress={() => onPick(true)}>
            As text
          </Button>
        </fieldset>
      </div>
      {!asText && problems.length > 0 && <ProblemList problems={problems} file={file} />}
      {asText || !craft ? <TextView /> : <FormView craft={craft} />}
      <EarlierTexts />
    </section>
  )
}
