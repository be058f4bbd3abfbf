import { memo } from 'react'
import { type Because, type Finding, worstFirst } from '../../../base/answers/finding.ts'
import { printed, whole } from '../../../base/answers/sentence.ts'
import { findingId } from '../frame/pageRoute.ts'
import { InputLink } from './InputLink.tsx'
import { MeasureNote } from './MeasureNote.tsx'
import { reasonsOf } from './reasons.ts'
import { Says } from './Says.tsx'
import { StandingMark } from './StandingMark.tsx'
import { useNotYours } from './useNotYours.ts'

interface Props {
  findings: readonly Finding[]
  title?: string
  /** each with what to do; why is a tap away */
  brief?: boolean
}

/** Findings, worst first; what drives each one leads to the input it comes from. */
export const FindingsList = memo(function FindingsList({
  findings,
  title = 'What we found',
  brief = false,
}: Props) {
  const notYours = useNotYours()
  if (findings.length === 0) return null
  const sorted = worstFirst(findings)
  const good = sorted.filter((finding) => finding.standing === 'good')
  const open = sorted.filter((finding) => finding.standing !== 'good')
  // a long list of good news is folded, so that what needs an eye is not lost in it
  const fold = open.length > 0 && good.length > 3
  return (
    <section className="findings">
      {title && <h2>{title}</h2>}
      <Items findings={fold ? open : sorted} brief={brief} />
      {fold && (
        <details>
          <summary>
            {notYours ? (
              `${good.length} more`
            ) : (
              <StandingMark standing="good" word={`${good.length} more that are good`} />
            )}
          </summary>
          <Items findings={good} brief={brief} />
        </details>
      )}
    </section>
  )
})

function Items({ findings, brief }: { findings: readonly Finding[]; brief: boolean }) {
  const notYours = useNotYours()
  return (
    <ul>
      {findings.map((finding) => {
        const reasons = reasonsOf(finding)
        const why = reasons.length > 0 && <Reasons reasons={reasons} />
        return (
          <li key={finding.id} id={findingId(finding.id)} tabIndex={-1} data-standing={finding.standing}>
            {notYours ? <span /> : <StandingMark standing={finding.standing} />}
            <div>
              <p className="says">
                <Says says={finding.says} />
              </p>
              {finding.act && (
                <p className="act">
                  <Says says={whole(finding.act)} />
                </p>
              )}
              {brief && why ? (
                <details className="reasons">
                  <summary>Why</summary>
                  {why}
                </details>
              ) : (
                why
              )}
              {finding.measureNext && !brief && <MeasureNote measure={finding.measureNext} />}
            </div>
          </li>
        )
      })}
    </ul>
  )
}

function Reasons({ reasons }: { reasons: readonly Because[] }) {
  return (
    <ul className="because">
      {reasons.map((b) => (
        <li key={printed(b.says)}>
          <InputLink link={b.link}>
            <Says says={b.says} />
          </InputLink>
        </li>
      ))}
    </ul>
  )
}
