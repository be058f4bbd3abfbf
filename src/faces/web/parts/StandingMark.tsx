import type { Standing } from '../../../base/answers/finding.ts'

const words: Record<Standing, string> = { good: 'good', watch: 'watch', stop: 'stop', unknown: 'not known' }

/** How an answer stands: a shape and a word, never colour alone. */
export function StandingMark({ standing, word }: { standing: Standing; word?: string }) {
  return (
    <span className="mark" data-standing={standing}>
      <svg viewBox="0 0 16 16" aria-hidden="true">
        {shapes[standing]}
      </svg>
      {word ?? words[standing]}
    </span>
  )
}

const line = { fill: 'none', stroke: 'currentColor', strokeWidth: 2 } as const
const shapes: Record<Standing, React.ReactNode> = {
  good: <path d="M2 9l4 4L14 3" {...line} strokeWidth={2.6} />,
  watch: <path d="M8 1.8 15 14.2H1z M8 6v4 M8 11.5v1.4" {...line} strokeWidth={1.7} strokeLinejoin="round" />,
  stop: (
    <path
      d="M5 .8h6L15.2 5v6L11 15.2H5L.8 11V5z M4.3 6.9v2.2h7.4V6.9z"
      fill="currentColor"
      fillRule="evenodd"
    />
  ),
  unknown: <circle cx="8" cy="8" r="6" {...line} strokeDasharray="2.6 2.1" />,
}
