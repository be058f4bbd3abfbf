import { useRef } from 'react'
import { ProblemList } from '../../parts/ProblemList.tsx'
import { app } from '../../state/app.ts'
import { hasErrors, type Problem } from '../../state/craftFile.ts'
import { useApp } from '../../state/hooks.ts'

/** The file itself, to be edited as text, with what is wrong beside it. */
export function TextView() {
  const work = useApp((s) => s.work)
  const problems = useApp((s) => s.problems)
  const readOnly = useApp((s) => s.role === 'follower')
  const area = useRef<HTMLTextAreaElement>(null)
  if (!work) return null
  const go = ({ line, column }: Problem) => {
    const element = area.current
    if (!element) return
    const lines = work.text.split('\n')
    const start = lines.slice(0, line - 1).reduce((sum, l) => sum + l.length + 1, 0) + column - 1
    element.focus()
    element.setSelectionRange(start, start + Math.max(1, (lines[line - 1] ?? '').length - column + 1))
    // the browser does not scroll to a selection set by hand
    element.scrollTop = ((line - 4) / lines.length) * element.scrollHeight
  }
  return (
    <div className="textview">
      <label>
        <span className="hush">Text of the craft file</span>
        <textarea
          ref={area}
          value={work.text}
          readOnly={readOnly}
          spellCheck={false}
          autoCapitalize="off"
          autoComplete="off"
          aria-invalid={hasErrors(problems)}
          aria-describedby="text-problems"
          onChange={(event) => app.editText(event.target.value)}
        />
      </label>
      <div id="text-problems" role="status">
        {problems.length === 0 ? (
          <p className="quiet">The text reads well. Every change is kept as you type.</p>
        ) : (
          <>
            <h3>{problems.length === 1 ? 'One problem' : `${problems.length} problems`}</h3>
            <ProblemList problems={problems} file={work.fileName} onGo={go} />
          </>
        )}
      </div>
    </div>
  )
}
