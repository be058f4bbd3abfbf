/** A hull floating at rest, upright: the figures that drag, float and picture take from it, whoever worked them out. SI. */
export interface RestForm {
  /** m³ */
  volume: number
  /** m, waterline */
  length: number
  /** m, waterline beam */
  beam: number
  /** m */
  draft: number
  /** rad, half angle of entrance of the waterline */
  entrance: number
  /** immersed transom over largest immersed section, 0 to 1 */
  transomRatio: number
  /** m² */
  wettedSurface: number
  /** rad, bow up */
  trim: number
  /** m forward of the transom, centre of buoyancy */
  centre: number
  /** m, still water above the foot of the transom */
  waterAtTransom: number
  /** m², waterplane */
  waterplane: number
  /** m², largest immersed section */
  section: number
}
