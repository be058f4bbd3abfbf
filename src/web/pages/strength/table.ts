/** Columns that every table of builds shares. */
export const bayHead = [
  { head: 'Mass', unit: 'kg/m²' },
  { head: 'Bay', unit: 'kg' },
  { head: 'Gives, standing', unit: 'mm' },
  { head: 'Margin' },
  { head: 'Gives way first' },
]

export const partWord = { skin: 'sheet', foam: 'foam', stringer: 'stringers', core: 'core in shear' } as const
export const loadWord = { standing: 'standing', step: 'hard step', jump: 'jump' } as const
