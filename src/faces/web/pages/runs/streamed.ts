import { inSeconds } from '../../../../base/answers/amounts.ts'
import { printed, say } from '../../../../base/answers/sentence.ts'
import type { Flag } from '../../../../base/answers/solved.ts'
import { mostSeconds } from '../../../../trades/sound/container.ts'
import { flag, type Reading, type Sink } from './sink.ts'

/** Sound of a file read bit by bit: long videos, and what the browser refuses to decode as a whole. */
export async function decodeStreamed(
  file: File,
  sink: Sink,
  reading: Pick<Reading, 'progress'>,
  lasts?: number,
): Promise<{ frames: number; flags: Flag[] }> {
  const flags: Flag[] = []
  let frames = 0
  let rate = 0
  const { ALL_FORMATS, AudioSampleSink, BlobSource, Input, Logging, LogLevel } = await import('mediabunny')
  // its words are about pictures and oddities of the container; what matters for the sound is said here
  Logging.level = LogLevel.Errors
  const input = new Input({ source: new BlobSource(file), formats: ALL_FORMATS })
  try {
    if (!(await input.canRead()))
      return { frames, flags: [flag('unreadable', 'This file could not be read as a recording.')] }
    const track = await input.getPrimaryAudioTrack()
    if (!track)
      return {
        frames,
        flags: [flag('no-sound', 'There is no sound in this file: it may be a video filmed without it.')],
      }
    if (!(await track.canDecode()))
      return {
        frames,
        flags: [
          flag(
            'coding',
            `This browser has no decoder for the sound in this file (${track.codec ?? 'of an unknown coding'}). Save the sound as WAV or MP3 and open that.`,
          ),
        ],
      }
    // only where the container does not say: it may mean looking at every packet
    const duration = lasts ?? (await track.computeDuration().catch(() => 0))
    const longest = mostSeconds(file.size)
    let told = 0
    for await (const sample of new AudioSampleSink(track).samples()) {
      rate = sample.sampleRate
      const channels = Array.from({ length: sample.numberOfChannels }, (_, planeIndex) => {
        const plane = new Float32Array(sample.numberOfFrames)
        sample.copyTo(plane, { planeIndex, format: 'f32-planar' })
        return plane
      })
      frames += sample.numberOfFrames
      const { timestamp } = sample
      sample.close()
      sink(channels, rate, duration)
      // a damaged file may claim hours that its bytes cannot hold
      if (frames > rate * longest) throw new RangeError('longer than its bytes can be')
      if (timestamp < told) continue
      told = timestamp + 5
      reading.progress(duration > 0 ? Math.min(1, timestamp / duration) : 0)
    }
  } catch {
    flags.push(
      frames > 0
        ? flag(
            'damaged',
            printed(say`The recording is damaged or cut off; ${inSeconds(frames / rate)} could be read.`),
          )
        : flag('unreadable', 'This file could not be read as a recording; it may be damaged or cut off.'),
    )
  } finally {
    input.dispose()
  }
  return { frames, flags }
}
