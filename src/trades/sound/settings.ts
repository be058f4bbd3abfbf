/**
 * Numbers of the analysis. The warp is the fan-chirp transform (P. Cancela, E. López and M. Rocamora,
 * "Fan chirp transform for music representation", DAFx-10, 2010); the whitened comb follows the idea of
 * S. Gonzalez and M. Brookes, IEEE/ACM Trans. ASLP 22 (2014) 518. Values were tuned on this project's own
 * synthetic clips (tuning seeds only, see bench/hearing/evaluation.ts).
 */
import { ANALYSIS_RATE } from './resample.ts'

/** s of sound in a frame */
export const WINDOW = 0.36
/** samples in a frame */
export const FRAME = Math.round(WINDOW * ANALYSIS_RATE)
/** samples from one frame to the next */
export const HOP = 100
/** s from one frame to the next */
export const STEP = HOP / ANALYSIS_RATE
/** samples a second and samples of the warped frame: the teeth end below 1 kHz, so less is enough */
export const WARP_RATE = 2500
export const WARPED = Math.round(WINDOW * WARP_RATE)
export const FFT_SIZE = 1024
/** what reaches the warp ends here, so that nothing folds down into the teeth, Hz */
export const FRONT_TOP = 1120

/** relative slopes d ln f/dt tried in every frame, 1/s */
export const SLOPES = [0, 0.25, -0.25, 0.6, -0.6, 1.1, -1.1, 1.8, -1.8, 2.8, -2.8, 4.2, -4.2] as const

/** firing rates searched, Hz */
export const LOWEST = 22
export const HIGHEST = 235
/** step of the logarithm of the firing rate */
export const GRID_STEP = 0.006
/** frequencies the teeth of a comb may stand at, Hz */
export const TEETH_FROM = 40
export const TEETH_TO = 995

/** half of a Hann window's main lobe as masked around another engine's tooth, Hz */
export const MASK = 2.2 / WINDOW

/** Costs and rewards of the path search. */
export interface PathCosts {
  /** s from one frame to the next */
  step: number
  /** comb score a single engine must beat */
  offset: number
  /** what the second comb must add */
  pairOffset: number
  /** what it must add besides when its rate is a simple multiple of the first */
  rationalOffset: number
  reward: number
  birth: number
  death: number
  /** 1/s */
  moveSigma: number
  moveMost: number
  /** 1/s; faster is charged `fastCost` more */
  fastLimit: number
  fastCost: number
  /** frames of silence after an engine stops */
  restFrames: number
}

export const usualCosts: PathCosts = {
  step: STEP,
  offset: 1.8,
  pairOffset: 2,
  rationalOffset: 2,
  reward: 0.4,
  birth: 25,
  death: 6,
  moveSigma: 0.8,
  moveMost: 6,
  fastLimit: 15,
  fastCost: 18,
  restFrames: 12,
}
