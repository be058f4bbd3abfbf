import tapAddress from './tap.worklet.ts?worker&url'

/** where the code that hands the sound on is fetched from */
export { tapAddress }

/** The microphone, open. */
export interface Microphone {
  rate: number
  close(): void
}

export interface Hearer {
  /** the next stretch of sound; the array is the hearer's to keep */
  take(samples: Float32Array<ArrayBuffer>): void
  /** the device went away */
  lost(): void
  /** the system silenced it, or gave it back */
  muted(muted: boolean): void
}

/** Opens the microphone with the phone's voice processing off and hands its sound on in stretches. Throws what `refusal` puts into words. */
export async function openMicrophone({ take, lost, muted }: Hearer): Promise<Microphone> {
  if (!navigator.mediaDevices?.getUserMedia)
    throw new DOMException('no microphone access', 'NotSupportedError')
  const stream = await navigator.mediaDevices.getUserMedia({
    audio: { echoCancellation: false, noiseSuppression: false, autoGainControl: false },
  })
  const context = new AudioContext()
  const heard = new AbortController()
  const { signal } = heard
  for (const track of stream.getTracks()) {
    track.addEventListener('ended', lost, { signal })
    track.addEventListener('mute', () => muted(true), { signal })
    track.addEventListener('unmute', () => muted(false), { signal })
  }
  // a call or another app may have stopped the audio clock
  context.addEventListener(
    'statechange',
    () => context.state !== 'running' && context.state !== 'closed' && void context.resume(),
    { signal },
  )
  const stop = () => {
    heard.abort()
    for (const track of stream.getTracks()) track.stop()
    void context.close()
  }
  try {
    await context.resume()
    const source = context.createMediaStreamSource(stream)
    const halt = context.audioWorklet ? await tap(context, source, take) : poll(context, source, take)
    return {
      rate: context.sampleRate,
      close() {
        halt()
        stop()
      },
    }
  } catch (error) {
    stop()
    throw error
  }
}

async function tap(
  context: AudioContext,
  source: MediaStreamAudioSourceNode,
  take: (samples: Float32Array<ArrayBuffer>) => void,
): Promise<() => void> {
  await context.audioWorklet.addModule(tapAddress)
  const node = new AudioWorkletNode(context, 'tap', {
    numberOfOutputs: 0,
    channelCount: 1,
    channelCountMode: 'explicit',
  })
  node.port.onmessage = ({ data }) => take(data as Float32Array<ArrayBuffer>)
  source.connect(node)
  return () => node.port.close()
}

/** Without a worklet: looks several times a second at the last samples and hands on what is new. */
function poll(
  context: AudioContext,
  source: MediaStreamAudioSourceNode,
  take: (samples: Float32Array<ArrayBuffer>) => void,
): () => void {
  const analyser = context.createAnalyser()
  analyser.fftSize = 32768
  source.connect(analyser)
  const all = new Float32Array(analyser.fftSize)
  let seen = context.currentTime
  const timer = setInterval(() => {
    const now = context.currentTime
    const fresh = Math.min(all.length, Math.round((now - seen) * context.sampleRate))
    if (fresh <= 0) return
    seen = now
    analyser.getFloatTimeDomainData(all)
    take(all.slice(all.length - fresh))
  }, 150)
  return () => clearInterval(timer)
}

/** Why there is no microphone, in a sentence that says what to do. */
export function refusal(error: unknown): string {
  switch ((error as Error).name) {
    case 'NotAllowedError':
      return 'The browser was not allowed to use the microphone. Allow it beside the page’s address, then start again.'
    case 'SecurityError':
      return 'This page may not use the microphone here. Serve the app from this machine or over https, or record with the phone’s camera and open the file.'
    case 'NotFoundError':
    case 'OverconstrainedError':
      return 'No microphone was found on this device. Plug one in, or record with a phone and open the file.'
    case 'NotReadableError':
    case 'AbortError':
      return 'Another program is using the microphone. Close it, then start again.'
    case 'NotSupportedError':
      return 'This browser gives pages no microphone. Serve the app from this machine or over https, or record with the phone’s camera and open the file.'
    default:
      return `The microphone could not be opened: ${(error as Error).message}.`
  }
}
