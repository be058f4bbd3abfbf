import type { Flag } from '../../../../base/answers/solved.ts'

/** Takes the sound as it is read: channels of one stretch, at `rate` samples a second; `expected` s in all, where known. */
export type Sink = (channels: readonly Float32Array[], rate: number, expected?: number) => void

export interface Reading {
  /** 0 to 1 */
  progress(part: number): void
  /** has the whole file decoded and handed on by the browser's own decoder; answers the frames, 0 when it cannot */
  decodeAtOnce(): Promise<number>
}

export const flag = (code: string, text: string): Flag => ({ code, text, path: 'recording' })
