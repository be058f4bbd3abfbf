import { kernelFrom } from '../../shapes/solid/kernel.ts'

/** Hands the geometry kernel its code, which is packed into the command line; loaded only by commands that make solids. */
export async function kernelHere(): Promise<void> {
  const { default: packed } = await import('manifold-3d/manifold.wasm?url&inline')
  kernelFrom(Buffer.from(packed.slice(packed.indexOf(',') + 1), 'base64'))
}
