import type { Flag } from '../../../answers/solved.ts'

/** Takes the sound as it is read: channels of one stretch, at `rate` samples a second. */
export type Sink = (channels: readonly Float32Array[], rate: number) => void

export interface Reading {
  /** 0 to 1 */
  progress(part: number): void
  cancelled(): boolean
}

export const flag = (code: string, text: string): Flag => ({ code, text, path: 'recording' })
