import { useId, useState } from 'react'
import { Button } from 'react-aria-components/Button'
import { inPercent, inSeconds, inSpeed, ranged } from '../../../../base/answers/amounts.ts'
import { printed, say } from '../../../../base/answers/sentence.ts'
import { bestSpeed, speedsOf } from '../../../../trades/sound/gpx.ts'
import { ChoiceField } from '../../parts/ChoiceField.tsx'
import { DraftInput } from '../../parts/DraftInput.tsx'
import { Says } from '../../parts/Says.tsx'
import { bench } from './bench.ts'
import type { Expected } from './expected.ts'
import type { PhonePlace, Told } from './told.ts'

interface Props {
  told: Told
  sync: Expected['sync']
}

const fastest = ({ speed, error }: { speed: number; error: number }) =>
  say`; best five seconds ${ranged(inSpeed, { value: speed, low: speed - error, high: speed + error })}`

const places: readonly PhonePlace[] = ['on shore', 'on the craft']

/** The craft's GPX track: taken in, laid beside the sound by matching or by hand. */
export function GpxField({ told, sync }: Props) {
  const id = useId()
  const [says, setSays] = useState('')
  const take = async (file: File) => setSays(await bench.addGpx(file))
  const best = told.gpx.length >= 3 ? bestSpeed(speedsOf(told.gpx)) : undefined
  const long = told.gpx.length > 1 ? told.gpx[told.gpx.length - 1]!.time - told.gpx[0]!.time : 0
  return (
    <div className="gpx">
      <label htmlFor={id}>GPX track of the craft</label>
      {told.gpxName && (
        <>
          <p className="row">
            <span>
              {told.gpxName}, {told.gpx.length} points
            </span>
            <Button className="plain" onPress={() => bench.tell({ gpx: [], gpxName: '', lag: undefined })}>
              Take away
            </Button>
          </p>
          <p className="quiet">
            <Says says={say`${inSeconds(long, 1)} long${best ? fastest(best) : ''}.`} />
          </p>
          <ChoiceField
            label="The phone that recorded was"
            value={told.phone}
            choices={places}
            onChange={(phone) => bench.tell({ phone: phone as PhonePlace })}
          />
          <div>
            <label htmlFor={`${id}l`}>Track begins, s after the recording</label>
            <div className="row">
              <DraftInput
                id={`${id}l`}
                value={sync ? String(Math.round(10 * sync.lag) / 10) : ''}
                size={7}
                fault={(text) =>
                  /^[-−]?\d+([.,]\d+)?$/.test(text)
                    ? undefined
                    : 'seconds; below 0 when the track began first'
                }
                onCommit={(text) => {
                  bench.tell({ lag: Number(text.replace('−', '-').replace(',', '.')) })
                  return ''
                }}
              />
              <Button isDisabled={told.lag === undefined} onPress={() => bench.tell({ lag: undefined })}>
                Match to the sound
              </Button>
            </div>
            {sync && (
              <p className="quiet" role="status">
                {told.lag !== undefined
                  ? 'Set by hand.'
                  : sync.matched
                    ? printed(
                        say`Matched: the craft speeds up when the engine does (likeness ${inPercent(sync.likeness)}).`,
                      )
                    : 'No clear match: set it by hand, by the moment the craft began to move.'}
              </p>
            )}
          </div>
        </>
      )}
      <input
        id={id}
        type="file"
        accept=".gpx,application/gpx+xml"
        onChange={(e) => {
          const file = e.target.files?.[0]
          e.target.value = ''
          if (file) void take(file)
        }}
      />
      {says && <p role="status">{says}</p>}
    </div>
  )
}
