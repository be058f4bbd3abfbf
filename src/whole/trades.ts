/** Every trade, one line each, in the order their findings are told. `look`, pages, JSON, book and generic tests go by this list. */
import type { Craft } from '../craft/index.ts'
import { hullDragFindings } from '../trades/drag/dragFindings.ts'
import { hullReckoners } from '../trades/drag/dragReckoners.ts'
import { floatTrade } from '../trades/float/floatTrade.ts'
import { situationOf } from '../trades/jet/jetFindings.ts'
import { jetTrade } from '../trades/jet/jetTrade.ts'
import { soundReckoners } from '../trades/sound/soundReckoners.ts'
import { strengthTrade } from '../trades/strength/strengthTrade.ts'
import { type AnyTrade, defineTrade, type Section } from '../trades/trade.ts'
import { breathTrade } from './breath/breathTrade.ts'
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

const hullSections: readonly Section[] = [
  'hull',
  'jet',
  'place',
  'rider',
  'weights',
  'tanks',
  'openings',
  'foam',
  'compartments',
  'engines',
  'deck',
  'drive',
  'files',
]

const dragTrade = defineTrade<{ craft: Craft; top: number | undefined }, undefined, number | undefined>({
  id: 'drag',
  question: 'push',
  title: 'Drag and trim',
  reads: hullSections,
  inputs: (craft, top) => ({ craft, top }),
  answer: () => undefined,
  limits: {},
  judge: ({ inputs }) => hullDragFindings(inputs.craft, inputs.top),
  reckoners: hullReckoners,
})

/** Answers a recording, not a craft: it has reckoners here and its findings on its own page. */
const soundTrade = defineTrade<undefined, undefined>({
  id: 'sound',
  question: 'runs',
  title: 'What was heard',
  reads: [],
  inputs: () => undefined,
  answer: () => undefined,
  limits: {},
  judge: () => [],
  reckoners: soundReckoners,
})

export const trades: readonly TradeEntry[] = [
  { trade: pushTrade, setting: (k) => k.push },
  { trade: dragTrade, setting: (k) => k.balance?.top?.speed },
  { trade: jetTrade, setting: (k) => k.balance && situationOf(k.balance) },
  { trade: breathTrade, setting: (k) => k.push.engines },
  { trade: floatTrade, apart: true },
  { trade: strengthTrade, apart: true },
  { trade: soundTrade },
]
