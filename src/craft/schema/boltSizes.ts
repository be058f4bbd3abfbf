/** Sizes of bolt a craft file may name: ISO 261 coarse threads that a small drive line is put together with. */
export const boltSizes = ['M3', 'M4', 'M5', 'M6', 'M8', 'M10', 'M12'] as const

export type BoltSize = (typeof boltSizes)[number]
