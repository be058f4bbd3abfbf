import type { Finding } from '../answers/finding.ts'
import { MapStore } from '../balance/fromCraft.ts'
import { readCraft, whatIf } from '../craft/index.ts'
import { lookAt } from '../registry/findings.ts'
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
}

/** pump maps of earlier looks; most changes leave them as they are */
const maps = new MapStore()

/** All findings of a craft, and of the same with the tried values in it. */
export const look = defineJob('look', (order: LookOrder, { progress }): LookAnswer => {
  const { craft } = readCraft(order.text)
  if (!craft) throw new RangeError('text: the craft file cannot be read')
  progress(0, 'Looking at the craft')
  const now = lookAt(craft, { maps }).findings
  if (!order.tried) return { now }
  progress(0.5, 'Looking at what is tried')
  return { now, tried: lookAt(whatIf(craft, order.tried), { maps }).findings }
})
