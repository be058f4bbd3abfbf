import { type Finding, worstFirst } from '../../../base/answers/finding.ts'
import { printed } from '../../../base/answers/sentence.ts'
import { InputLink } from './InputLink.tsx'
import { MeasureNote } from './MeasureNote.tsx'
import { Says } from './Says.tsx'
import { StandingMark } from './StandingMark.tsx'

interface Props {
  findings: readonly Finding[]
  title?: string
}

/** Findings, worst first; what drives each one leads to the input it comes from. */
export function FindingsList({ findings, title = 'What we found' }: Props) {
  if (findings.length === 0) return null
  const sorted = worstFirst(findings)
  const good = sorted.filter((finding) => finding.standing === 'good')
  const open = sorted.filter((finding) => finding.standing !== 'good')
  // a long list of good news is folded, so that what needs an eye is not lost in it
  const fold = open.length > 0 && good.length > 3
  return (
    <section className="findings">
      <h2>{title}</h2>
      <Items findings={fold ? open : sorted} />
      {fold && (
        <details>
          <summary>
            <StandingMark standing="good" word={`${good.length} more that are good`} />
          </summary>
          <Items findings={good} />
        </details>
      )}
    </section>
  )
}

function Items({ findings }: { findings: readonly Finding[] }) {
  return (
    <ul>
      {findings.map((finding) => (
        <li key={finding.id} data-standing={finding.standing}>
          <StandingMark standing={finding.standing} />
          <div>
            <p className="says">
              <Says says={finding.says} />
            </p>
            {finding.because.length > 0 && (
              <ul className="because">
                {finding.because.map((b) => (
                  <li key={printed(b.says)}>
                    <InputLink link={b.link}>
                      <Says says={b.says} />
                    </InputLink>
                  </li>
                ))}
              </ul>
            )}
            {finding.measureNext && <MeasureNote measure={finding.measureNext} />}
          </div>
        </li>
      ))}
    </ul>
  )
}
