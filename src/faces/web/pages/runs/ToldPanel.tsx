import { useId } from 'react'
import { inCount, inNewtons, ranged } from '../../../../base/answers/amounts.ts'
import { printed, say } from '../../../../base/answers/sentence.ts'
import { observations } from '../../../../trades/sound/observations.ts'
import { inPounds, parseReadings, readingsFault, readPull } from '../../../../trades/sound/pull.ts'
import type { Episode } from '../../../../whole/faults/rankingTypes.ts'
import { ChoiceField } from '../../parts/ChoiceField.tsx'
import { DraftInput } from '../../parts/DraftInput.tsx'
import { Says } from '../../parts/Says.tsx'
import { several } from '../../parts/several.ts'
import { useApp } from '../../state/hooks.ts'
import { bench } from './bench.ts'
import type { Expected } from './expected.ts'
import { GpxField } from './GpxField.tsx'
import type { RunKind, Told } from './told.ts'

interface Props {
  told: Told
  /** hears anew when the engine count was changed */
  onAgain: () => void
}

const kinds: readonly RunKind[] = ['not said', 'tied up', 'under way']
const counts = ['let the sound decide', 'one', 'two']
const noticed = 'did not notice'

/** The three things told of a run that move its reading most. Leaving one out never counts as a no. */
export function ToldPanel({ told, onAgain }: Props) {
  const id = useId()
  const unit = useApp((s) => (s.units === 'inch' ? 'lb' : 'kg'))
  const pull = readPull(parseReadings(told.readings))
  const count = told.engines === 1 ? 'one' : told.engines === 2 ? 'two' : counts[0]!
  return (
    <section className="panel told">
      <h2>What you know of it</h2>
      <ChoiceField
        label="The craft was"
        value={told.kind}
        choices={kinds}
        onChange={(kind) => bench.tell({ kind: kind as RunKind })}
      />
      <ChoiceField
        label="Engines that ran"
        value={count}
        choices={counts}
        onChange={(word) => {
          bench.tell({ engines: word === 'one' ? 1 : word === 'two' ? 2 : 'auto' })
          onAgain()
        }}
      />
      <div>
        <label htmlFor={`${id}p`}>Luggage scale, {unit}</label>
        <DraftInput
          id={`${id}p`}
          value={told.readings}
          placeholder={unit === 'lb' ? '47.2, 48.5, 47.8' : '21.4, 22.0, 21.7'}
          fault={readingsFault}
          onCommit={(typed) => {
            const readings = unit === 'lb' ? inPounds(typed) : typed
            bench.tell({ readings, ...(told.kind === 'not said' && readings ? { kind: 'tied up' } : {}) })
            return ''
          }}
        />
        {pull && (
          <p className="quiet">
            <Says
              says={say`Pull ${ranged(inNewtons, pull.force)}, middle of ${inCount(pull.readings)} ${pull.readings === 1 ? 'reading' : 'readings'}.`}
            />
          </p>
        )}
      </div>
    </section>
  )
}

interface MoreProps {
  told: Told
  sync: Expected['sync']
  /** the stretches of the run, for what was seen in one of them */
  episodes: readonly Episode[]
}

const wholeDay = 'the whole day'

/** What else the user knows of the run: its track, what was seen, in words. */
export function ToldMore({ told, sync, episodes }: MoreProps) {
  const id = useId()
  return (
    <section className="told">
      <GpxField told={told} sync={sync} />
      <div>
        <h3>What you saw and tried</h3>
        <p className="quiet">
          Each answer parts one cause from another, as said beside it, and moves what went wrong at once. At
          half throttle nothing is compared with the prediction.
        </p>
        <div className="observed">
          {observations.map((o) => (
            <div key={o.id}>
              <ChoiceField
                label={o.asks}
                value={told.observed.find((x) => x.id === o.id)?.state ?? noticed}
                choices={[noticed, ...o.states]}
                onChange={(state) => {
                  const rest = told.observed.filter((x) => x.id !== o.id)
                  const was = told.observed.find((x) => x.id === o.id)
                  bench.tell({ observed: state === noticed ? rest : [...rest, { ...was, id: o.id, state }] })
                }}
              />
              <Within id={o.id} told={told} episodes={episodes} />
              <p className="quiet">Tells {o.tells}.</p>
            </div>
          ))}
        </div>
      </div>
      <div>
        <label htmlFor={`${id}n`}>In your own words</label>
        <textarea
          id={`${id}n`}
          rows={3}
          maxLength={4000}
          value={told.notes}
          onChange={(e) => bench.tell({ notes: e.target.value })}
        />
      </div>
    </section>
  )
}

/** In which stretch of the run an answer was so. */
function Within({ id, told, episodes }: { id: string; told: Told; episodes: readonly Episode[] }) {
  const units = useApp((s) => s.units)
  const own = told.observed.find((x) => x.id === id)
  if (!own || episodes.length < 2) return null
  const words = episodes.map((e) => printed(e.says, units))
  const at = episodes.findIndex((e) => e.id === own.episode)
  return (
    <ChoiceField
      label="When"
      value={words[at] ?? wholeDay}
      choices={[wholeDay, ...words]}
      onChange={(word) => {
        const episode = episodes[words.indexOf(word)]?.id
        const { episode: _, ...bare } = own
        const now = episode === undefined ? bare : { ...bare, episode }
        bench.tell({ observed: told.observed.map((x) => (x.id === id ? now : x)) })
      }}
    />
  )
}

/** How much else was told, in a few words. */
export function toldSays({ observed, notes, gpxName }: Told): string {
  const parts = [
    ...(gpxName ? [gpxName] : []),
    ...(observed.length > 0 ? [several(observed.length, 'answer')] : []),
    ...(notes ? ['a note'] : []),
  ]
  return parts.length > 0 ? parts.join(', ') : 'a GPX track, what you saw, a note'
}
