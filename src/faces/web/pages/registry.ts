import type { ComponentType } from 'react'
import type { Question } from '../../../base/answers/finding.ts'

export interface Page {
  id: Question
  /** the word across the top */
  word: string
  /** the question the page answers */
  asks: string
  /** the page itself, fetched when it is first opened; absent while there is none */
  load?: () => Promise<ComponentType>
}

/** The eight questions in their order; only those with a page of their own are shown. */
const allPages: readonly Page[] = [
  {
    id: 'craft',
    word: 'Craft',
    asks: 'What have I got?',
    load: () => import('./craft/CraftPage.tsx').then((m) => m.CraftPage),
  },
  {
    id: 'push',
    word: 'Push',
    asks: 'How will it go?',
    load: () => import('./push/PushPage.tsx').then((m) => m.PushPage),
  },
  {
    id: 'breath',
    word: 'Breath',
    asks: 'How do the engines breathe?',
    load: () => import('./breath/BreathPage.tsx').then((m) => m.BreathPage),
  },
  {
    id: 'float',
    word: 'Float',
    asks: 'How does it sit?',
    load: () => import('./float/FloatPage.tsx').then((m) => m.FloatPage),
  },
  {
    id: 'strength',
    word: 'Strength',
    asks: 'Will it hold?',
    load: () => import('./strength/StrengthPage.tsx').then((m) => m.StrengthPage),
  },
  { id: 'fuel', word: 'Fuel', asks: 'Will it be fed?' },
  { id: 'make', word: 'Make', asks: 'What do I cut and print?' },
  {
    id: 'runs',
    word: 'Runs',
    asks: 'What happened, and what next?',
    load: () => import('./runs/RunsPage.tsx').then((m) => m.RunsPage),
  },
]

export const pages = allPages.filter(
  (page): page is Page & Required<Pick<Page, 'load'>> => page.load !== undefined,
)

/** Pages beside the eight questions, which need no craft; their link stands with the tools. */
export const sidePages: readonly (Omit<Page, 'id' | 'load'> &
  Required<Pick<Page, 'load'>> & { id: string })[] = [
  {
    id: 'reckoners',
    word: 'Reckoners',
    asks: 'One question, a few inputs, one answer',
    load: () => import('./reckoners/ReckonersPage.tsx').then((m) => m.ReckonersPage),
  },
]
