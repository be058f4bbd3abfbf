/** Pictures of a recording. */
import FFT from 'fft.js'
import type { Spectrogram } from './hearingTypes.ts'
import { ANALYSIS_RATE } from './resample.ts'
import { FFT_SIZE, STEP, WARP_RATE } from './settings.ts'
import { SPECTRUM_TOP } from './warp.ts'

/** frames a column, FFT bins a row of the picture kept while listening */
const FRAMES_A_COLUMN = 2
const BINS_A_ROW = 2
const ROWS = Math.floor((SPECTRUM_TOP * FFT_SIZE) / WARP_RATE / BINS_A_ROW)

/** ln of amplitude to a byte, half a decibel a step; 0 dB full scale of a sine lies near 220 */
const toByte = (ln: number) => Math.max(0, Math.min(255, Math.round(2 * (8.686 * ln + 60))))

export interface SpectrogramBuilder {
  /** ln |X| of frame i */
  add: (i: number, plain: Float64Array) => void
  /** columns made elsewhere, of the frames that follow */
  append: (level: Uint8Array) => void
  /** the picture so far; its levels are a view, to be copied before they are given away */
  finish: () => Spectrogram
}

/** Grows with the recording; `expected` columns have their room from the start. */
export function makeSpectrogram(expected = 256): SpectrogramBuilder {
  let level = new Uint8Array(ROWS * expected)
  let columns = 0
  return {
    add: (i, plain) => {
      if (i % FRAMES_A_COLUMN !== 0) return
      if ((columns + 1) * ROWS > level.length) {
        const bigger = new Uint8Array(Math.ceil(1.25 * level.length))
        bigger.set(level)
        level = bigger
      }
      for (let r = 0; r < ROWS; r++) {
        let top = plain[r * BINS_A_ROW]!
        for (let k = 1; k < BINS_A_ROW; k++) top = Math.max(top, plain[r * BINS_A_ROW + k]!)
        level[columns * ROWS + r] = toByte(top)
      }
      columns++
    },
    append: (more) => {
      const need = columns * ROWS + more.length
      if (need > level.length) {
        const bigger = new Uint8Array(need)
        bigger.set(level.subarray(0, columns * ROWS))
        level = bigger
      }
      level.set(more, columns * ROWS)
      columns += more.length / ROWS
    },
    finish: () => ({
      timeStep: STEP * FRAMES_A_COLUMN,
      hertzStep: (BINS_A_ROW * WARP_RATE) / FFT_SIZE,
      columns,
      rows: ROWS,
      level: level.subarray(0, columns * ROWS),
    }),
  }
}

/**
 * A quick picture of a whole recording at the analysis rate, `columns` wide at most: the first thing to show
 * while the listening goes on.
 */
export function quickSpectrogram(signal: Float32Array, columns = 1200): Spectrogram {
  const size = 1024
  const rows = Math.floor((SPECTRUM_TOP / ANALYSIS_RATE) * size)
  const fft = new FFT(size)
  const input = new Float64Array(size)
  const spectrum = new Float64Array(2 * size)
  const n = Math.max(1, Math.min(columns, Math.floor(signal.length / (size / 4))))
  const hop = signal.length / n
  const level = new Uint8Array(n * rows)
  for (let c = 0; c < n; c++) {
    const start = Math.round(c * hop + hop / 2 - size / 2)
    for (let i = 0; i < size; i++)
      input[i] = (signal[start + i] ?? 0) * (0.5 - 0.5 * Math.cos((2 * Math.PI * (i + 0.5)) / size))
    fft.realTransform(spectrum, input)
    for (let r = 0; r < rows; r++)
      level[c * rows + r] = toByte(0.5 * Math.log(spectrum[2 * r]! ** 2 + spectrum[2 * r + 1]! ** 2 + 1e-24))
  }
  return { timeStep: hop / ANALYSIS_RATE, hertzStep: ANALYSIS_RATE / size, columns: n, rows, level }
}
