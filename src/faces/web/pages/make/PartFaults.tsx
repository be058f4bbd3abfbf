import type { MadePart } from '../../../../base/answers/madePart.ts'
import { Says } from '../../parts/Says.tsx'

/** Why a part cannot be drawn. */
export function PartFaults({ part }: { part: MadePart }) {
  return (
    <ul>
      {part.findings.map((f) => (
        <li key={f.id}>
          <Says says={f.says} />
        </li>
      ))}
    </ul>
  )
}
