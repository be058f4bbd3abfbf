import { pushTrade } from '../../../../whole/push/pushTrade.ts'
import { AnswerHeader } from '../../parts/AnswerHeader.tsx'
import { Cautions } from '../../parts/Cautions.tsx'
import { EmptyState } from '../../parts/EmptyState.tsx'
import { FindingsList } from '../../parts/FindingsList.tsx'
import { InputLink } from '../../parts/InputLink.tsx'
import { JobProgress } from '../../parts/JobProgress.tsx'
import { useFindings } from '../../parts/useFindings.ts'
import { useApp } from '../../state/hooks.ts'

/** Engines are simulated, or open choices made, before there is a first answer: what is done, and how far it is. */
export function Coming() {
  const looking = useApp((s) => s.looking)
  return (
    <div className="question" data-question="push">
      <AnswerHeader asks="How will it go?" says="Being worked out…" />
      <JobProgress says={looking?.says ?? 'Looking at the craft'} part={looking?.part} />
      <p className="quiet findingscoming">
        A first answer comes in some seconds, and gets finer while you look on.
      </p>
    </div>
  )
}

/** What is missing for an answer, where to give it, and what is known already. */
export function NoAnswer({ says, path }: { says: string; path: string | undefined }) {
  const found = useFindings('push')
  return (
    <>
      <EmptyState title="How it will go cannot be worked out yet" says={`${says}.`}>
        {path && (
          <p>
            <InputLink link={path}>Fill it in on the Craft page</InputLink>
          </p>
        )}
      </EmptyState>
      <FindingsList findings={found.now} title="What is known already" />
      <Cautions says={pushTrade.cautions ?? []} />
    </>
  )
}
