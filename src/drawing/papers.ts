/** Sizes of office paper, mm: ISO 216 (A4) and ANSI/ASME Y14.1 (Letter). */
export const papers = {
  A4: { width: 210, height: 297 },
  Letter: { width: 215.9, height: 279.4 },
} as const

export type PaperName = keyof typeof papers
