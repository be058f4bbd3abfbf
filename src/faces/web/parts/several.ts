/** "1 line", "32 lines" */
export const several = (count: number, what: string): string => `${count} ${what}${count === 1 ? '' : 's'}`
