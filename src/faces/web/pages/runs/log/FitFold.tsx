import { useEffect, useRef, useState } from 'react'
import { Button } from 'react-aria-components/Button'
import type { Calibration } from '../../../../../whole/calibrate/calibrate.ts'
import { calibrationSays, fitValues } from '../../../../../whole/calibrate/calibrateSays.ts'
import { Says } from '../../../parts/Says.tsx'
import { app } from '../../../state/app.ts'
import type { Craft } from '../../../state/craftFile.ts'
import { useApp } from '../../../state/hooks.ts'
import { hullFilesOf } from '../../../state/hullFiles.ts'
import { type Call, callJob } from '../../../work/call.ts'

type Found = { of: string; fit: Calibration | undefined } | { of: string; fault: string }

/** Fits the models to the runs of the log; keeping it is the builder's choice, and so is taking it out again. */
export function FitFold({ craft, log }: { craft: Craft; log: string }) {
  const text = useApp((s) => s.work?.goodText ?? '')
  const looked = useApp((s) => (s.looked?.craft === s.craft ? s.looked : undefined))
  const [found, setFound] = useState<Found>()
  const call = useRef<Call<Calibration | undefined>>(undefined)
  useEffect(() => () => call.current?.cancel(), [])
  const of = `${text}\n${log}`
  const now = found?.of === of ? found : undefined
  const start = () => {
    call.current?.cancel()
    const { files } = hullFilesOf(craft)
    const order = { text, log, ...(looked ? { solved: looked.solved } : {}), ...(files ? { files } : {}) }
    call.current = callJob('calibrate', order)
    call.current.done.then(
      (fit) => setFound({ of, fit }),
      (error: Error) => error.name !== 'AbortError' && setFound({ of, fault: error.message }),
    )
  }
  const fit = now && 'fit' in now ? now.fit : undefined
  return (
    <section>
      <p>
        Engines, thrust and drag fitted to what was read in the runs since the last change. Kept, it stands in
        the craft file, and all pages reckon with it.
      </p>
      {now && 'fault' in now && <p role="alert">{now.fault}</p>}
      {now && 'fit' in now && !now.fit && (
        <p>No run since the last change left a reading of pull, engine speed or top speed.</p>
      )}
      {fit && (
        <ul>
          {calibrationSays(fit).map((s, i) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: the list never changes its order
            <li key={i}>
              <Says says={s} />
            </li>
          ))}
        </ul>
      )}
      <div className="row">
        <Button onPress={start}>Fit to the runs</Button>
        {fit && !fit.refused && (
          <Button
            className="plain"
            onPress={() => app.say(app.writeAll(fitValues(fit)) || 'The fit is kept.')}
          >
            Keep the fit
          </Button>
        )}
        {craft.fitted && (
          <Button className="plain" onPress={() => app.remove('fitted')}>
            Take the fit out
          </Button>
        )}
      </div>
    </section>
  )
}
