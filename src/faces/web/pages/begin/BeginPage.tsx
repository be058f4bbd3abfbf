import { useCallback, useMemo } from 'react'
import { Button } from 'react-aria-components/Button'
import { toolSketch } from '../../../../drawing/toolSketch.ts'
import { craftPicture } from '../../../../whole/picture/craftPicture.ts'
import { placeOnCraft } from '../../../../whole/picture/placeOnCraft.ts'
import { addressOf, useRoute } from '../../frame/pageRoute.ts'
import { AnswerHeader } from '../../parts/AnswerHeader.tsx'
import { lookOf } from '../../parts/displayLook.ts'
import { answerOf } from '../../parts/pageAnswer.ts'
import { SheetSvg } from '../../parts/SheetSvg.tsx'
import { several } from '../../parts/several.ts'
import { useFindings } from '../../parts/useFindings.ts'
import type { Craft } from '../../state/craftFile.ts'
import { useApp } from '../../state/hooks.ts'
import { ownValues } from '../../state/ownValues.ts'
import { AnswerFields } from './AnswerFields.tsx'
import { NewCraft } from './NewCraft.tsx'
import { type BeginQuestion, questionsFor } from './questions.ts'
import './begin.css'

/** A new craft in ten questions, one at a time, with the answer growing beside them. */
export function BeginPage() {
  const craft = useApp((s) => s.craft)
  const { path } = useRoute()
  if (!craft || path === undefined)
    return (
      <>
        <AnswerHeader asks="A new craft" says="Ten questions, and you see how it will go." />
        <NewCraft />
      </>
    )
  return <Asking craft={craft} at={path} />
}

const go = (id: string) => {
  location.hash = addressOf('begin', id)
}

function Asking({ craft, at }: { craft: Craft; at: string }) {
  const questions = useMemo(() => questionsFor(craft), [craft])
  const index = Math.max(
    0,
    questions.findIndex((q) => q.id === at),
  )
  const question = questions[index]!
  const next = questions[index + 1]
  const before = questions[index - 1]
  const forward = useCallback(() => {
    if (next) go(next.id)
    else location.hash = '#/craft'
  }, [next])
  return (
    <div className="begin">
      <div className="asking">
        <p className="asks">
          {index + 1} of {questions.length}
        </p>
        <h1 id="asked">{question.asks}</h1>
        <p>{question.how}</p>
        <Sketch which={question.tool} />
        <AnswerFields key={question.id} craft={craft} question={question} onDone={forward} />
        <p className="row">
          {before && (
            <Button className="plain" onPress={() => go(before.id)}>
              Back
            </Button>
          )}
          <a href="#/craft">That is enough for now</a>
        </p>
      </div>
      <Growing craft={craft} question={question} />
    </div>
  )
}

function Sketch({ which }: { which: BeginQuestion['tool'] }) {
  const draw = useCallback(() => toolSketch(which), [which])
  return (
    <div className="tool">
      <SheetSvg draw={draw} />
    </div>
  )
}

/** What is known so far: the answer with its range, and the craft with the place that is asked for. */
function Growing({ craft, question }: { craft: Craft; question: BeginQuestion }) {
  const found = useFindings('push')
  const looked = useApp((s) => s.looked)
  const first = useApp((s) => (s.first?.craft === craft ? s.first.headline : undefined))
  const units = useApp((s) => s.units)
  const own = ownValues(craft)
  const answer = answerOf(first ?? found.headline)
  const place = useMemo(() => placeOnCraft(craft, question.place), [craft, question.place])
  const draw = useCallback(
    (width: number) => craftPicture(craft, lookOf(units, width), place ? [{ n: 1, ...place }] : []),
    [craft, units, place],
  )
  return (
    <div className="growing">
      <AnswerHeader asks="So far" says={answer.says} confidence={answer.confidence} />
      <p className="quiet" role="status">
        {several(own, 'value')} of yours
        {looked?.craft === craft ? '' : ', being worked out again…'}
      </p>
      <SheetSvg draw={draw} />
    </div>
  )
}
