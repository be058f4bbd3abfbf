/** Every trade, one line each, in the order their findings are told. `look`, pages, JSON, book and generic tests go by this list. */
import type { Craft } from '../craft/index.ts'
import { bayTrade } from '../trades/bay/bayTrade.ts'
import { controlsTrade } from '../trades/controls/controlsTrade.ts'
import { dragTrade } from '../trades/drag/dragTrade.ts'
import { drivelineTrade } from '../trades/driveline/drivelineTrade.ts'
import { driveSettingOf } from '../trades/driveline/driveSetting.ts'
import { floatTrade } from '../trades/float/floatTrade.ts'
import { fuelTrade } from '../trades/fuel/fuelTrade.ts'
import { situationOf } from '../trades/jet/jetFindings.ts'
import { jetTrade } from '../trades/jet/jetTrade.ts'
import { patternsTrade } from '../trades/patterns/patternsTrade.ts'
import { printsTrade } from '../trades/prints/printsTrade.ts'
import { soundTrade } from '../trades/sound/soundTrade.ts'
import { strengthTrade } from '../trades/strength/strengthTrade.ts'
import type { AnyTrade } from '../trades/trade.ts'
import { bayAirOf, bayRunOf } from './bayAir.ts'
import { breathTrade } from './breath/breathTrade.ts'
import { fuelKnown } from './fuel/fuelKnown.ts'
import { deckAsksOf } from './make/deckAsks.ts'
import type { Balance } from './push/balanceTypes.ts'
import { type PushSetting, pushTrade } from './push/pushTrade.ts'

/** What is known of a craft before a trade is asked. */
export interface Known {
  readonly craft: Craft
  readonly push: PushSetting
  /** absent when an engine has no torque curve yet */
  readonly balance?: Balance
}

export interface TradeEntry {
  trade: AnyTrade
  /** what it is handed besides the craft: what others found out first */
  setting?: (known: Known) => unknown
  /** leans on no other trade, so that it can be worked out beside them on another core */
  apart?: true
}

export const trades: readonly TradeEntry[] = [
  { trade: pushTrade, setting: (k) => k.push },
  { trade: dragTrade, setting: (k) => k.balance?.top?.speed },
  { trade: jetTrade, setting: (k) => k.balance && situationOf(k.balance) },
  { trade: breathTrade, setting: (k) => k.push.engines },
  { trade: floatTrade, apart: true },
  { trade: strengthTrade, setting: bayAirOf },
  { trade: controlsTrade, apart: true },
  { trade: fuelTrade, setting: fuelKnown },
  { trade: bayTrade, setting: bayRunOf },
  {
    trade: drivelineTrade,
    setting: (k) => k.balance && driveSettingOf(k.balance, k.push.engines?.solved, bayAirOf(k)),
  },
  { trade: printsTrade, apart: true },
  { trade: patternsTrade, apart: true, setting: (k) => deckAsksOf(k.craft) },
  { trade: soundTrade },
]

const handed = new WeakMap<Known, Map<TradeEntry, unknown>>()

/**
 * What a trade is handed besides the craft: the same thing however often it is asked of the same knowledge, so that a trade asked again (by the
 * book after a look) gives the answer it has.
 */
export function handedTo(entry: TradeEntry, known: Known): unknown {
  if (!entry.setting) return undefined
  const own = handed.get(known) ?? new Map<TradeEntry, unknown>()
  handed.set(known, own)
  if (!own.has(entry)) own.set(entry, entry.setting(known))
  return own.get(entry)
}
