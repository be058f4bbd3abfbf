import type { ComponentType } from 'react'
import type { Question } from '../../../base/answers/finding.ts'

/** what every page is handed */
interface PageProps {
  id: Question
  asks: string
}

interface PageEntry {
  /** the word across the top */
  word: string
  /** the question the page answers */
  asks: string
  /** the page itself, fetched when it is first opened */
  load: () => Promise<ComponentType<PageProps>>
}

export interface Page extends PageEntry {
  id: Question
}

/** The eight questions in their order; one without `load` is read off the list of trades as soon as a trade answers it. */
const questions: readonly (Omit<Page, 'load'> & Partial<Pick<Page, 'load'>>)[] = [
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
  {
    id: 'make',
    word: 'Make',
    asks: 'What do I cut and print?',
    load: () => import('./make/MakePage.tsx').then((m) => m.MakePage),
  },
  {
    id: 'runs',
    word: 'Runs',
    asks: 'What happened, and what next?',
    load: () => import('./runs/RunsPage.tsx').then((m) => m.RunsPage),
  },
]

/** A page for every question: its own, or the one that any trade has. */
export const allPages: readonly Page[] = questions.map(({ load, ...page }) => ({
  ...page,
  load: load ?? (() => import('./trade/AnyTradePage.tsx').then((m) => m.AnyTradePage)),
}))

/** Pages that stand whatever trades there are. */
export const pages: readonly Page[] = allPages.filter((page) =>
  questions.some((own) => own.id === page.id && own.load !== undefined),
)

/** The pages across the top: those of their own, and one for each question that a trade answers. */
export function pagesFor(answered: Iterable<string>): readonly Page[] {
  const known = new Set(answered)
  return allPages.filter((page) => pages.includes(page) || known.has(page.id))
}

/** Pages beside the eight questions, which need no craft; their link stands with the tools, or on the page they go with. */
export const sidePages: readonly (PageEntry & { id: string; linked?: false })[] = [
  {
    id: 'reckoners',
    word: 'Reckoners',
    asks: 'One question, a few inputs, one answer',
    load: () => import('./reckoners/ReckonersPage.tsx').then((m) => m.ReckonersPage),
  },
  {
    id: 'begin',
    word: 'Begin',
    asks: 'A new craft in ten questions',
    load: () => import('./begin/BeginPage.tsx').then((m) => m.BeginPage),
    linked: false,
  },
  {
    id: 'pond',
    word: 'Pond',
    asks: 'Engine speed and a recording, at the water',
    // from the page Runs: a phone has no room for it among the tools
    linked: false,
    load: () => import('./pond/PondPage.tsx').then((m) => m.PondPage),
  },
]
