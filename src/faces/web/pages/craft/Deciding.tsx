import { Button } from 'react-aria-components/Button'
import { decidingSays, turnSays } from '../../../../whole/decidingSays.ts'
import { InputLink } from '../../parts/InputLink.tsx'
import { Says } from '../../parts/Says.tsx'
import { SearchState } from '../../parts/SearchState.tsx'
import { type Craft, labelOf } from '../../state/craftFile.ts'
import { useApp } from '../../state/hooks.ts'
import { hullFilesOf } from '../../state/hullFiles.ts'
import { cancelSearch, startSearch, useSearch } from '../../work/searches.ts'

/** Which guesses would change a decision: each is put at both ends of its range, on request, as it takes a while. */
export function Deciding({ craft }: { craft: Craft }) {
  const text = useApp((s) => s.work?.goodText ?? '')
  const { filesAre, ...files } = hullFilesOf(craft)
  const key = JSON.stringify([text, filesAre])
  const search = useSearch('deciding', key)
  const found = search?.answer
  return (
    <section className="search deciding">
      <SearchState search={search} onCancel={() => cancelSearch('deciding', key)}>
        {!found?.final && (
          <div className="row">
            <Button onPress={() => startSearch('deciding', key, { text, ...files })}>
              Which of them would change a decision?
            </Button>
            <span className="quiet">Each is tried at both ends of its range; a minute or two.</span>
          </div>
        )}
      </SearchState>
      {found && (
        <>
          <p className="says" role="status">
            {found.final ? '' : 'So far: '}
            <Says says={decidingSays(found)} />
          </p>
          <ol>
            {found.values.map((value) => (
              <li key={value.path}>
                <InputLink link={value.path}>{labelOf(value.path, craft)}</InputLink>
                {value.ends.map(({ at, turns }) => (
                  <ul className="plainlist quiet" key={at}>
                    {turns.map((turn) => (
                      <li key={turn.decision}>
                        <Says says={turnSays(value, at, turn)} />
                      </li>
                    ))}
                  </ul>
                ))}
              </li>
            ))}
          </ol>
        </>
      )}
    </section>
  )
}
