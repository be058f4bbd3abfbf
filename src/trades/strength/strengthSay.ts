/** Parts of a deck as the sentences of Strength name them, and the sources several of them share. */

export const loadWord = {
  standing: 'standing still',
  step: 'a hard step',
  jump: 'a jump with both feet',
} as const
/** parts of a deck that may give way, without an article */
export const partWord = { skin: 'sheet', foam: 'foam', stringer: 'stringers', core: 'core in shear' } as const
/** "what the stringers bear" */
export const bearWord = (part: keyof typeof partWord): string =>
  part === 'stringer' ? `${partWord[part]} bear` : `${partWord[part]} bears`

export const plates = 'S. Timoshenko and S. Woinowsky-Krieger, Theory of Plates and Shells (1959)'
export const yieldLines =
  'K. W. Johansen, Yield-Line Theory (1962); N. Jones, Structural Impact (1989): lasting dish, from memory'
export const berger = 'H. M. Berger, J. Appl. Mech. 22 (1955): large deflection'
export const foamTables = 'ASTM C578 and D6817: least strengths of foam'
export const factors = 'Step twice, jump four times the rider’s weight: common practice, no source'
