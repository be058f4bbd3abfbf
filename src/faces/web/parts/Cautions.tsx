/** The usual cautions, next to the work they belong to: the first in full, the rest one tap away. */
export function Cautions({ says }: { says: readonly string[] }) {
  const [first, ...rest] = says
  if (first === undefined) return null
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
      {rest.length === 0 ? (
        <p>{first}</p>
      ) : (
        <details>
          <summary>
            {first} <span className="quiet">{rest.length} more</span>
          </summary>
          <ul>
            {rest.map((line) => (
              <li key={line}>{line}</li>
            ))}
          </ul>
        </details>
      )}
    </aside>
  )
}
