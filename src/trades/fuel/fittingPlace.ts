/** Where on its tank a fitting sits, in words. */
import { inMm } from '../../base/answers/amounts.ts'
import { type Sentence, say } from '../../base/answers/sentence.ts'
import type { Vec3 } from '../../physics/solid/mesh.ts'
import type { FuelCraft } from './fuelFromCraft.ts'

/** "90 mm forward of the tank's middle". */
export function fittingPlace(at: Vec3, c: FuelCraft): Sentence {
  const middle =
    c.tank.shape.kind === 'box' && c.tank.shape.cells > 1 ? 'its cell’s middle' : 'the tank’s middle'
  const along: Sentence =
    Math.abs(at[0]) < 5e-4 ? '' : say`${inMm(Math.abs(at[0]))} ${at[0] > 0 ? 'forward' : 'aft'}`
  const aside: Sentence =
    Math.abs(at[1]) < 5e-4 ? '' : say`${inMm(Math.abs(at[1]))} to ${at[1] > 0 ? 'port' : 'starboard'}`
  if (along === '' && aside === '') return `over ${middle}`
  return say`${along}${along !== '' && aside !== '' ? ' and ' : ''}${aside} of ${middle}`
}
