import { Says } from './Says.tsx'

/** The usual cautions, next to the work they belong to: the first in full, the rest one tap away. */
export function Cautions({ says }: { says: readonly string[] }) {
  const [first, ...rest] = says
  if (first === undefined) return null
  // one line at the act: the first sentence, and what goes on from it with the rest
  const lead = /^.*?[.!](?= |$)/.exec(first)?.[0] ?? first
  const more = [first.slice(lead.length).trim(), ...rest].filter((line) => line !== '')
  return (
    <aside className="cautions" aria-label="Cautions">
      <svg viewBox="0 0 16 16" aria-hidden="true">
        <path
          d="M8 1.5 15.2 14.3H.8z"
          fill="none"
          stroke="currentColor"
          strokeWidth="1.4"
          strokeLinejoin="round"
        />
        <path d="M8 6v4.2M8 11.6v1.5" stroke="currentColor" strokeWidth="1.6" />
      </svg>
      {more.length === 0 ? (
        <p>
          <Says says={lead} />
        </p>
      ) : (
        <details>
          <summary>
            <Says says={lead} /> <span className="quiet">More</span>
          </summary>
          <ul>
            {more.map((line) => (
              <li key={line}>
                <Says says={line} />
              </li>
            ))}
          </ul>
        </details>
      )}
    </aside>
  )
}
