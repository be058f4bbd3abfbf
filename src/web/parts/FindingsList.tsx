import { type Finding, worstFirst } from '../../answers/finding.ts'
import { InputLink } from './InputLink.tsx'
import { MeasureNote } from './MeasureNote.tsx'
import { StandingMark } from './StandingMark.tsx'

interface Props {
  findings: readonly Finding[]
  title?: string
}

/** Findings, worst first; what drives each one leads to the input it comes from. */
export function FindingsList({ findings, title = 'What we found' }: Props) {
  if (findings.length === 0) return null
  return (
    <section className="findings">
      <h2>{title}</h2>
      <ul>
        {worstFirst(findings).map((finding) => (
          <li key={finding.id} data-standing={finding.standing}>
            <StandingMark standing={finding.standing} />
            <div>
              <p className="says">{finding.says}</p>
              {finding.because.length > 0 && (
                <ul className="because">
                  {finding.because.map((b) => (
                    <li key={b.says}>
                      <InputLink link={b.link}>{b.says}</InputLink>
                    </li>
                  ))}
                </ul>
              )}
              {finding.measureNext && <MeasureNote measure={finding.measureNext} />}
            </div>
          </li>
        ))}
      </ul>
    </section>
  )
}
