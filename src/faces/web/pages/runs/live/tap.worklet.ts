/** Runs in the audio thread: gathers the microphone's sound into stretches and hands them on. */
declare class AudioWorkletProcessor {
  readonly port: MessagePort
}
declare function registerProcessor(name: string, processor: new () => AudioWorkletProcessor): void

/** samples in a stretch, about a tenth of a second */
const STRETCH = 4096

class Tap extends AudioWorkletProcessor {
  stretch = new Float32Array(STRETCH)
  filled = 0

  process([input]: Float32Array[][]): boolean {
    const samples = input?.[0]
    if (!samples) return true
    for (let i = 0; i < samples.length; i++) {
      this.stretch[this.filled++] = samples[i]!
      if (this.filled < STRETCH) continue
      this.port.postMessage(this.stretch, [this.stretch.buffer])
      this.stretch = new Float32Array(STRETCH)
      this.filled = 0
    }
    return true
  }
}

registerProcessor('tap', Tap)
