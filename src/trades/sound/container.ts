/**
 * What a recording's container says of itself (how long its sound and its picture are, how the sound is coded),
 * and what that means beside what could be read of it. The containers are taken apart by mediabunny.
 */
import type { Source } from 'mediabunny'
import { inSeconds } from '../../base/answers/amounts.ts'
import { printed, type Sentence, say } from '../../base/answers/sentence.ts'
import type { Flag } from '../../base/answers/solved.ts'

export interface Container {
  /** false when no container was recognised */
  known: boolean
  sound: boolean
  picture: boolean
  /** s of sound and of picture as announced; undefined where the container does not say */
  soundLasts?: number
  pictureLasts?: number
}

const unknown: Container = { known: false, sound: false, picture: false }

/** Looks into a file's container; reads little of it. Never throws for what is in the file. */
export async function readContainer(source: Source): Promise<Container> {
  const { ALL_FORMATS, Input, Logging, LogLevel } = await import('mediabunny')
  // its words are about oddities of the container; what matters here is said in flags
  Logging.level = LogLevel.Errors
  const input = new Input({ source, formats: ALL_FORMATS })
  try {
    if (!(await input.canRead())) return unknown
    const [sound, picture] = [await input.getPrimaryAudioTrack(), await input.getPrimaryVideoTrack()]
    const soundLasts = (await sound?.getDurationFromMetadata()) ?? undefined
    const pictureLasts = (await picture?.getDurationFromMetadata()) ?? undefined
    return {
      known: true,
      sound: sound !== null,
      picture: picture !== null,
      ...(soundLasts === undefined ? {} : { soundLasts }),
      ...(pictureLasts === undefined ? {} : { pictureLasts }),
    }
  } catch {
    return unknown
  } finally {
    input.dispose()
  }
}

/** s, and part of the whole, that padding and rounding may take */
const SLACK = 0.35
const SLACK_PART = 0.02

const shorter = (a: number, b: number) => b - a > Math.max(SLACK, SLACK_PART * b)
const flag = (code: string, says: Sentence): Flag => ({ code, text: printed(says), path: 'recording' })

/** Words for a container in which nothing could be read; undefined when it says nothing that helps. */
export function whyNothing(c: Container): Flag | undefined {
  if (!c.known) return undefined
  if (!c.sound && c.picture)
    return flag('no-sound', 'There is no sound in this file: it may be a video filmed without it.')
  if (!c.sound)
    return flag(
      'no-index',
      'This file was cut off before its index was written, and without the index its sound cannot be found. Copy it again from the phone, whole, or record in a form that needs no index, such as WAV.',
    )
  return undefined
}

/** bytes a second of the meanest sound a phone writes (4 kbit/s of speech coding), and s that a short clip may take whatever its size */
const meanest = 500
const always = 60

/** Longest that the sound of a file of so many bytes can last, s: a damaged one may claim hours, and decoding would fill them with silence. */
export const mostSeconds = (bytes: number): number => always + Math.max(0, bytes) / meanest

/**
 * What is missing of a recording of which `read` s could be read, and whether its sound and picture are of one
 * length: a clip slowed down or edited for speed has a sound that no longer tells the engine's speed.
 */
export function lengthFlags(c: Container, read: number): Flag[] {
  const flags: Flag[] = []
  const { soundLasts, pictureLasts } = c
  if (soundLasts !== undefined && shorter(read, soundLasts))
    flags.push(
      flag(
        'truncated',
        say`The recording is cut short or damaged: ${inSeconds(read)} could be read of ${inSeconds(soundLasts)} announced.`,
      ),
    )
  const sound = soundLasts ?? read
  if (pictureLasts !== undefined && (shorter(sound, pictureLasts) || shorter(pictureLasts, sound)))
    flags.push(
      flag(
        'edited',
        say`The picture lasts ${inSeconds(pictureLasts)} and the sound ${inSeconds(sound)}: the clip may have been slowed down, sped up or edited. If the sound was stretched with it, every speed heard is wrong by that much; use the clip as it came from the camera.`,
      ),
    )
  return flags
}

/** Bytes from the end of a file in which an Ogg stream's last page lies: a page is at most 65307 bytes (RFC 3533, section 6). */
export const OGG_TAIL = 65_307

/** True when the last page in the file's last bytes carries the mark that ends the stream (RFC 3533, header type 0x04). */
export function oggEnds(tail: Uint8Array): boolean {
  for (let i = tail.length - 27; i >= 0; i--)
    if (tail[i] === 0x4f && tail[i + 1] === 0x67 && tail[i + 2] === 0x67 && tail[i + 3] === 0x53)
      return (tail[i + 5]! & 4) !== 0
  return false
}

export const oggCut = (read: number): Flag =>
  flag(
    'truncated',
    say`The recording breaks off without its end mark, so its end is probably missing; ${inSeconds(read)} could be read.`,
  )
