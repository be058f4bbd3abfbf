import { useMemo } from 'react'
import type { DriveAnswer, DriveInputs } from '../../../../trades/driveline/driveAnswer.ts'
import { drivelineTrade } from '../../../../trades/driveline/drivelineTrade.ts'
import { driveSettingOf } from '../../../../trades/driveline/driveSetting.ts'
import { type Solved, solveTrade } from '../../../../trades/trade.ts'
import { lookedOf, triedCraftOf, useApp, useAppLater } from '../../state/hooks.ts'

export type Drive = Solved<DriveInputs, DriveAnswer | undefined>

/** Shaft and joints now and with what is tried, by the balance of the last look; undefined where the file has no shaft. */
export function useDrive(): { now: Drive; tried: Drive | undefined } | undefined {
  const craft = useApp((s) => s.craft)
  const triedCraft = useAppLater(triedCraftOf)
  const looked = useAppLater(lookedOf)
  return useMemo(() => {
    if (!craft || craft.shaft.length === 0) return undefined
    const of = looked?.craft === craft ? looked : undefined
    const setting = of?.balance && driveSettingOf(of.balance, of.solved)
    const now = solveTrade(drivelineTrade, craft, setting)
    if (!triedCraft || of?.triedCraft !== triedCraft) return { now, tried: undefined }
    const balance = of.triedBalance
    const other = balance && driveSettingOf(balance, of.triedSolved ?? of.solved)
    return { now, tried: other && solveTrade(drivelineTrade, triedCraft, other) }
  }, [craft, triedCraft, looked])
}
