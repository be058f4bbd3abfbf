/** Numbers and parts of a deck as the sentences of Strength say them, and the sources several of them share. */
export const mm = (x: number): string => `${(1e3 * x).toFixed(1)} mm`
/** whole millimetres: sizes to cut */
export const wholeMm = (x: number): string => `${Math.round(1e3 * x)} mm`
export const MPa = (p: number): string => `${Math.round(p / 1e6)} MPa`
export const kPa = (p: number): string => `${Math.round(p / 1e3)} kPa`
export const celsius = (T: number): string => `${Math.round(T - 273.15)} °C`

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
export const berger = 'H. M. Berger, J. Appl. Mech. 22 (1955): large deflection'
export const foamTables = 'ASTM C578 and D6817: least strengths of foam'
export const factors = 'Step twice, jump four times the rider’s weight: common practice, no source'
