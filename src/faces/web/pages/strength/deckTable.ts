/** Columns that every table of builds shares. */
export const bayHead = [
  { head: 'Mass', unit: 'kg/m²' },
  { head: 'Bay', unit: 'kg' },
  { head: 'Gives, standing', unit: 'mm' },
  { head: 'Margin' },
  { head: 'Gives way first' },
]

export const loadWord = { standing: 'standing', step: 'hard step', jump: 'jump' } as const
