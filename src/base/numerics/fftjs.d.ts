/** The little of fft.js that is used here; the package carries no types of its own. */
declare module 'fft.js' {
  export default class FFT {
    constructor(size: number)
    readonly size: number
    transform(out: ArrayLike<number>, data: ArrayLike<number>): void
    inverseTransform(out: ArrayLike<number>, data: ArrayLike<number>): void
    realTransform(out: ArrayLike<number>, data: ArrayLike<number>): void
    completeSpectrum(spectrum: ArrayLike<number>): void
  }
}
