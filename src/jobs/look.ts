import type { Finding } from '../answers/finding.ts'
import { MapStore } from '../balance/fromCraft.ts'
import type { Balance } from '../balance/types.ts'
import { readCraft, whatIf } from '../craft/index.ts'
import { type Look, lookAt } from '../registry/findings.ts'
import { defineJob } from './job.ts'

export interface LookOrder {
  /** a craft file's text that reads without errors */
  text: string
  /** tried values by path: SI numbers, words, flags */
  tried?: Readonly<Record<string, number | string | boolean>>
}

export interface LookAnswer {
  now: Finding[]
  tried?: Finding[]
  /** with ranges and changes; absent when an engine has no torque curve yet */
  balance?: Balance
  triedBalance?: Balance
}

/** pump maps of earlier looks; most changes leave them as they are */
const maps = new MapStore()

/** the last text looked at: while values are tried it stays the same */
let last: { text: string; look: Look } | undefined

/** All findings of a craft, and of the same with the tried values in it. */
export const look = defineJob('look', (order: LookOrder, { progress }): LookAnswer => {
  const { craft } = readCraft(order.text)
  if (!craft) throw new RangeError('text: the craft file cannot be read')
  progress(0, 'Looking at the craft')
  if (last?.text !== order.text) last = { text: order.text, look: lookAt(craft, { maps }) }
  const now = last.look
  const answer: LookAnswer = { now: now.findings, ...(now.balance ? { balance: now.balance } : {}) }
  if (!order.tried) return answer
  progress(0.5, 'Looking at what is tried')
  const tried = lookAt(whatIf(craft, order.tried), { maps })
  return { ...answer, tried: tried.findings, ...(tried.balance ? { triedBalance: tried.balance } : {}) }
})
