import { useMemo } from 'react'
import type { Hearing } from '../../../../trades/sound/hearingTypes.ts'
import { expectsOf } from '../../../../trades/sound/soundFromCraft.ts'
import { type BesideRun, besideRun, matchTrack, type TrackMatch } from '../../../../whole/runs/besideRun.ts'
import type { Craft } from '../../state/craftFile.ts'
import { useApp } from '../../state/hooks.ts'
import type { Told } from './told.ts'

export interface Expected extends BesideRun {
  /** how the GPX track was laid beside the sound; absent without one */
  sync: TrackMatch | undefined
}

/** What the craft should have run at, by what was told of the run, and the hearing settled by it. */
export function useExpected(heard: Hearing | undefined, told: Told, craft: Craft): Expected {
  const looked = useApp((s) => s.looked)
  const balance = looked?.craft === craft ? looked.balance : undefined
  const { kind, gpx, observed, readings, phone, lag } = told
  const throttle = observed.find((o) => o.id === 'throttle')?.state
  const expects = useMemo(() => expectsOf(craft), [craft])
  // matching is a matter of the track and the sound only
  const match = useMemo(() => matchTrack(heard, gpx), [heard, gpx])
  return useMemo(() => {
    const beside = besideRun(heard, { kind, throttle, readings, gpx, lag, phone }, expects, balance, match)
    const sync = match && { ...match, lag: lag ?? match.lag }
    return { ...beside, sync }
  }, [heard, kind, throttle, readings, gpx, lag, phone, expects, balance, match])
}
