import fc from 'fast-check'
import { expect, test } from 'vitest'
import { fileKind, makeWavReader, readWav, writeWav } from './wav.ts'

/** A WAV file of one ramp in any sample form. */
function wavOf(bits: number, float: boolean, channels: number, frames: number, rate = 48000): Uint8Array {
  const bytes = (bits / 8) * channels * frames
  const out = new Uint8Array(44 + bytes)
  const v = new DataView(out.buffer)
  const put = (at: number, s: string) => {
    for (const [i, c] of [...s].entries()) v.setUint8(at + i, c.charCodeAt(0))
  }
  put(0, 'RIFF')
  v.setUint32(4, 36 + bytes, true)
  put(8, 'WAVEfmt ')
  v.setUint32(16, 16, true)
  v.setUint16(20, float ? 3 : 1, true)
  v.setUint16(22, channels, true)
  v.setUint32(24, rate, true)
  v.setUint32(28, rate * channels * (bits / 8), true)
  v.setUint16(32, channels * (bits / 8), true)
  v.setUint16(34, bits, true)
  put(36, 'data')
  v.setUint32(40, bytes, true)
  let at = 44
  for (let i = 0; i < frames; i++)
    for (let c = 0; c < channels; c++, at += bits / 8) {
      const x = ramp(i, frames) * (c % 2 === 0 ? 1 : -1)
      if (float && bits === 32) v.setFloat32(at, x, true)
      else if (float) v.setFloat64(at, x, true)
      else if (bits === 8) v.setUint8(at, Math.round(128 + 127 * x))
      else if (bits === 16) v.setInt16(at, Math.round(32767 * x), true)
      else if (bits === 24) {
        const k = Math.round(8388607 * x)
        v.setUint8(at, k & 255)
        v.setUint8(at + 1, (k >> 8) & 255)
        v.setUint8(at + 2, (k >> 16) & 255)
      } else v.setInt32(at, Math.round(2147483647 * x), true)
    }
  return out
}
const ramp = (i: number, n: number) => -0.9 + (1.8 * i) / Math.max(1, n - 1)

test('readWav gives the samples of 8, 16, 24 and 32 bit and floating point files, 1 to 6 channels, within one step', () => {
  for (const [bits, float] of [
    [8, false],
    [16, false],
    [24, false],
    [32, false],
    [32, true],
    [64, true],
  ] as const)
    for (const channels of [1, 2, 6]) {
      const w = readWav(wavOf(bits, float, channels, 50))
      expect(w.flags).toEqual([])
      expect(w.rate).toBe(48000)
      expect(w.channels).toHaveLength(channels)
      for (let c = 0; c < channels; c++)
        for (let i = 0; i < 50; i++)
          expect(
            Math.abs(w.channels[c]![i]! - ramp(i, 50) * (c % 2 === 0 ? 1 : -1)),
            `${bits} ${float} ${c} ${i}`,
          ).toBeLessThan(float ? 1e-6 : 3 / 2 ** Math.min(bits, 20))
    }
})

test('writeWav read back gives the same sound to 16 bits', () => {
  const x = Float32Array.from({ length: 100 }, (_, i) => Math.sin(i))
  const back = readWav(writeWav([x, x], 8000))
  expect(back.rate).toBe(8000)
  back.channels[1]!.forEach((v, i) => {
    expect(Math.abs(v - x[i]!)).toBeLessThan(1e-4)
  })
})

test('a file fed in pieces of any size gives the same sound as the whole', () => {
  const file = wavOf(24, false, 3, 300)
  const whole = readWav(file).channels[1]!
  fc.assert(
    fc.property(fc.array(fc.integer({ min: 1, max: 97 }), { minLength: 1, maxLength: 20 }), (sizes) => {
      const reader = makeWavReader()
      const got: number[] = []
      for (let at = 0, k = 0; at < file.length; k++) {
        const n = sizes[k % sizes.length]!
        const block = reader.push(file.subarray(at, at + n))
        if (block) got.push(...block[1]!)
        at += n
      }
      reader.end()
      expect(got).toEqual(Array.from(whole))
      expect(reader.flags).toEqual([])
    }),
    { numRuns: 30 },
  )
})

test('a truncated file gives what is there and says how much is missing', () => {
  const w = readWav(wavOf(16, false, 2, 48000).subarray(0, 44 + 4 * 24000))
  expect(w.channels[0]).toHaveLength(24000)
  expect(w.flags[0]!.text).toBe('The WAV file is cut short: 0.5 s are there of 1.0 s announced.')
})

test('a recorder’s unfinished file with length zero is read to its end', () => {
  const file = wavOf(16, false, 1, 500)
  new DataView(file.buffer).setUint32(40, 0, true)
  expect(readWav(file).channels[0]).toHaveLength(500)
})

test('empty, foreign and misnamed files are refused in a plain sentence', () => {
  expect(readWav(new Uint8Array(0)).flags[0]!.text).toBe('The file is empty.')
  expect(readWav(new Uint8Array([1, 2, 3])).flags[0]!.code).toBe('empty')
  const ogg = new TextEncoder().encode('OggS and then some more bytes')
  expect(readWav(ogg).flags[0]!.text).toContain('This is an Ogg file, not a WAV file')
  expect(fileKind(new TextEncoder().encode('\0\0\0\x20ftypisom....'))).toBe('an MP4, M4A or MOV file')
  expect(readWav(wavOf(16, false, 1, 0)).flags[0]!.text).toBe('The WAV file holds no sound.')
  const adpcm = wavOf(16, false, 1, 10)
  new DataView(adpcm.buffer).setUint16(20, 2, true)
  expect(readWav(adpcm).flags[0]!.text).toContain('format 2')
})

test('no bytes whatever make the reader throw, nor give samples that are not finite', () => {
  const good = wavOf(16, false, 2, 40)
  fc.assert(
    fc.property(
      fc.array(fc.tuple(fc.nat(good.length - 1), fc.nat(255)), { maxLength: 30 }),
      fc.nat(good.length),
      fc.uint8Array({ maxLength: 60 }),
      (edits, length, tail) => {
        const file = good.slice()
        for (const [at, value] of edits) file[at] = value
        const joined = new Uint8Array(length + tail.length)
        joined.set(file.subarray(0, length))
        joined.set(tail, length)
        const w = readWav(joined)
        for (const c of w.channels) for (const v of c) expect(Number.isFinite(v)).toBe(true)
        if (w.channels.length === 0) expect(w.flags.length).toBeGreaterThan(0)
      },
    ),
    { numRuns: 400 },
  )
})

test('a header that announces too little, or a format of impossible size, hides no sound', () => {
  const x = Float32Array.from({ length: 9000 }, (_, i) => 0.5 * Math.sin(i / 7))
  const little = writeWav([x], 8000)
  new DataView(little.buffer).setUint32(40, 1000, true)
  const read = readWav(little)
  expect(read.channels[0]).toHaveLength(9000)
  expect(read.channels[0]![8000]).toBeCloseTo(x[8000]!, 4)
  expect(read.flags.map((f) => f.code)).toEqual(['header'])
  const wide = writeWav([x], 8000)
  new DataView(wide.buffer).setUint32(16, 4_000_000_000, true)
  expect(readWav(wide).channels[0]).toHaveLength(9000)
})

test('a chunk behind the sound is no sound, whatever pieces the bytes come in', () => {
  const x = new Float32Array(500).map((_, i) => Math.sin(i))
  const wav = writeWav([x], 8000)
  const bytes = new Uint8Array(wav.length + 20)
  bytes.set(wav)
  bytes.set([0x4c, 0x49, 0x53, 0x54, 12, 0, 0, 0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12], wav.length)
  for (const piece of [7, 64, 5000]) {
    const reader = makeWavReader()
    let frames = 0
    for (let i = 0; i < bytes.length; i += piece)
      frames += reader.push(bytes.slice(i, i + piece))?.[0]?.length ?? 0
    reader.end()
    expect([piece, frames, reader.flags.length]).toEqual([piece, 500, 0])
  }
})
