/** Inputs that the reckoners of patterns share. */
import { choice, mm } from '../../base/answers/portMakers.ts'

export const trade = 'patterns'

/** where handbooks print the developments; formulas are elementary and were worked out again */
export const src = {
  drafting: 'Handbooks of sheet-metal pattern drafting; exact geometry, worked out again',
  mean: 'DIN 6935 and Machinery’s Handbook (thin sheet keeps the length of its middle), from memory',
  bends: 'Machinery’s Handbook, bending sheet metal; DIN 6935; from memory, worked out again',
  dandelin: 'J. P. Dandelin (1822): equal cones round one sphere meet in a plane',
} as const

export const sheet = mm('thickness', 'of the sheet', 1e-4, 0.006)
export const measured = choice('measured', 'how the diameters were measured', ['mean', 'inside', 'outside'])

/** at the cut */
export const sharp =
  'Cut edges of sheet are sharp and offcuts fly: gloves, eyes and ears covered, the sheet clamped, edges filed before anything else.'
