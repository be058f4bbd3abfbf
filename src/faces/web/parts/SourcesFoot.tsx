import { Says } from './Says.tsx'

interface Props {
  /** how the answer is worked out, a sentence or two a step */
  how: readonly string[]
  /** author, year, title, table or equation */
  sources: readonly string[]
}

/** Where it all comes from: the way of working and the published sources. */
export function Sources({ how, sources }: Props) {
  const unique = [...new Set(sources)]
  return (
    <div className="sources">
      {how.map((line) => (
        <p key={line}>
          <Says says={line} />
        </p>
      ))}
      {unique.length > 0 && (
        <ul>
          {unique.map((source) => (
            <li key={source}>
              <Says says={source} />
            </li>
          ))}
        </ul>
      )}
    </div>
  )
}

/** The same at the foot of a page that has no folds. */
export function SourcesFoot(props: Props) {
  return (
    <footer>
      <h2>Where this comes from</h2>
      <Sources {...props} />
    </footer>
  )
}
