import { useState } from 'react'
import type { Reckoner } from '../../../../base/answers/reckoner.ts'
import { findReckoner, reckoners } from '../../../../whole/reckoners.ts'
import { useRoute } from '../../frame/pageRoute.ts'
import { ReckonerForm } from './ReckonerForm.tsx'
import './reckoners.css'

const trades = [...new Set(reckoners.map((r) => r.trade))].sort()
const simple = (text: string) => text.toLowerCase()

/** words of the search must all stand somewhere in what a reckoner says of itself */
function found(search: string): Reckoner[] {
  const words = simple(search).split(/\s+/).filter(Boolean)
  return reckoners.filter((r) => {
    const all = simple([r.id, r.title, r.trade, r.says, ...r.outputs.map((o) => o.says)].join(' '))
    return words.every((w) => all.includes(w))
  })
}

/** Handbook questions one at a time: pick one, give its few inputs, read the answer. Needs no craft. */
export function ReckonersPage() {
  const { path } = useRoute()
  const [search, setSearch] = useState('')
  const picked = path ? findReckoner(path) : undefined
  const list = found(search)
  return (
    <>
      <header className="answer">
        <p className="asks">One question, a few inputs, one answer</p>
        <h1>{picked ? picked.title : 'Reckoners'}</h1>
      </header>
      <div className="reckoners">
        <nav aria-label="Reckoners">
          <label>
            Look for
            <input
              type="search"
              value={search}
              onChange={(e) => setSearch(e.target.value)}
              placeholder="pitch, plate, tuned length…"
            />
          </label>
          <p role="status" className="quiet">
            {list.length === reckoners.length
              ? `${list.length} reckoners`
              : `${list.length} of ${reckoners.length} match`}
          </p>
          {trades.map((trade) => {
            const own = list.filter((r) => r.trade === trade)
            if (own.length === 0) return null
            return (
              <details key={trade} open={search !== '' || picked?.trade === trade || !picked}>
                <summary>
                  {trade} <span className="quiet">{own.length}</span>
                </summary>
                <ul>
                  {own.map((r) => (
                    <li key={r.id}>
                      <a
                        href={`#/reckoners/${encodeURIComponent(r.id)}`}
                        aria-current={r === picked ? 'page' : undefined}
                      >
                        {r.title}
                      </a>
                    </li>
                  ))}
                </ul>
              </details>
            )
          })}
        </nav>
        {picked ? (
          <ReckonerForm key={picked.id} reckoner={picked} />
        ) : (
          <p className="hint">
            Pick a question. Values may be typed with any unit of their kind, metric or inch; what is left as
            it stands is assumed and says so.
          </p>
        )}
      </div>
    </>
  )
}
