import type { ReactNode } from 'react'
import { engineAnswer } from '../../../../whole/breath/breathAnswer.ts'
import { canSimulate } from '../../../../whole/breath/breathView.ts'
import { AnswerHeader } from '../../parts/AnswerHeader.tsx'
import { Cautions } from '../../parts/Cautions.tsx'
import { EmptyState } from '../../parts/EmptyState.tsx'
import { FindingsList } from '../../parts/FindingsList.tsx'
import { InputLink } from '../../parts/InputLink.tsx'
import { useFindings } from '../../parts/useFindings.ts'
import { ownFindings } from './breathLines.ts'
import { cautions } from './breathWords.ts'
import { Progress } from './Progress.tsx'
import type { Side } from './useBreath.ts'

/** Before there is a curve: what is being worked out, or what is missing for it. */
export function NotYet({ side, choose }: { side: Side; choose: ReactNode }) {
  const found = useFindings('breath')
  const own = ownFindings(side)
  const ids = new Set(own.map((f) => f.id))
  const findings = [...own, ...found.now.filter((f) => !ids.has(f.id))]
  const { view } = side
  const at = `engines.${view.index}`
  const busy = canSimulate(view)
  const lacks = view.findings[0] ?? engineAnswer(view)
  return (
    <>
      {choose}
      {busy ? (
        <AnswerHeader
          asks="How do the engines breathe?"
          says={`${view.name} is being worked out from its ports and pipe.`}
        />
      ) : (
        <EmptyState
          title="How it breathes cannot be worked out yet"
          says={lacks.says}
          measures={view.reading?.missing ? pipeMeasures(at) : []}
        >
          <p>
            <InputLink link={lacks.because[0]?.link ?? at}>Fill it in on the Craft page</InputLink>
          </p>
        </EmptyState>
      )}
      <Progress side={side} />
      <FindingsList findings={findings} title="What is known already" />
      <Cautions says={cautions} />
    </>
  )
}

const pipeMeasures = (at: string) => [
  {
    what: 'the pipe: length of each cone along the outside and the inside, and round the outside at each joint',
    with: 'string and tape',
    minutes: 20,
    path: `${at}.exhaust`,
  },
  { what: 'stinger bore and length', with: 'caliper and tape', minutes: 3, path: `${at}.exhaust` },
]
