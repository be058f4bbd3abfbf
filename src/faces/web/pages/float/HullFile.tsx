import { useState } from 'react'
import { Button } from 'react-aria-components/Button'
import { inMetres } from '../../../../base/answers/amounts.ts'
import { say } from '../../../../base/answers/sentence.ts'
import { namedMesh } from '../../../../hull/mesh/namedMesh.ts'
import { Says } from '../../parts/Says.tsx'
import { TriedInput } from '../../parts/TriedInput.tsx'
import { inputAt, labelOf } from '../../state/craftFile.ts'
import { useApp } from '../../state/hooks.ts'
import { haveHullFile } from '../../state/hullFiles.ts'
import { backToMeasures, openHull } from './openHull.ts'

const lie = ['hull.mesh unit', 'hull.bow along', 'hull.deck faces'] as const

/** A hull drawn elsewhere: opened, tried as the hull like any other value, and kept by name in the craft file. */
export function HullFile() {
  const craft = useApp((s) => s.craft)
  const triedCraft = useApp((s) => s.triedCraft)
  const readOnly = useApp((s) => s.role === 'follower')
  const [refused, setRefused] = useState('')
  if (!craft) return null
  const named = craft.hull.mesh
  const trying = triedCraft?.hull.mesh !== named ? triedCraft?.hull.mesh : undefined
  return (
    <section className="hullfile">
      <p>
        A hull drawn elsewhere can stand in for the measures: one closed skin, deck included, as STL or 3MF.
        It is read here and stays on this machine; the craft file only names it.
      </p>
      {named !== undefined && (
        <p>
          The craft file names <strong>{named}</strong>
          {haveHullFile(named)
            ? ', which this browser has.'
            : ', which this browser does not have: open it below. Until then the measures stand in.'}{' '}
          <Button className="plain" isDisabled={readOnly} onPress={backToMeasures}>
            Go back to the measures
          </Button>
        </p>
      )}
      <p>
        <label className="filepick">
          Open a hull file
          <input
            type="file"
            accept=".stl,.3mf,model/stl,model/3mf"
            disabled={readOnly}
            onChange={(e) => {
              const picked = e.target.files?.[0]
              if (picked) void openHull(craft, picked).then(setRefused)
              e.target.value = ''
            }}
          />
        </label>
      </p>
      {refused && (
        <p role="alert" className="refused">
          Not taken: {refused}
        </p>
      )}
      <Reading />
      {trying !== undefined && (
        <p>
          Keep it with the strip at the foot of the page: the craft file then names {trying}. Save the file
          beside the craft file, where the command line looks for it.
        </p>
      )}
    </section>
  )
}

/** How the file that is named or tried was read, what was guessed, and the words that settle it. */
function Reading() {
  const craft = useApp((s) => s.craft)
  const shown = useApp((s) => s.triedCraft) ?? craft
  const units = useApp((s) => s.units)
  const read = shown && namedMesh(shown)
  if (!craft || !shown || !read) return null
  return (
    <>
      {'hull' in read ? (
        <>
          <p role="status">
            {shown.hull.mesh}: {read.hull.mesh.triangles.length / 3} triangles, closed;{' '}
            <Says says={say`${inMetres(read.hull.length)} long, ${inMetres(read.hull.beam)} wide.`} />
          </p>
          <ul>
            {read.hull.flags.map((f) => (
              <li key={f.text}>
                <Says says={f.text} />
              </li>
            ))}
          </ul>
        </>
      ) : (
        <p role="status">
          {shown.hull.mesh} {read.trouble}
        </p>
      )}
      <ul className="fields plainlist">
        {lie.map((path) => {
          const input = inputAt(craft, path, units)
          return input ? (
            <li key={path}>
              <TriedInput input={{ ...input, label: labelOf(path) }} low={0} high={1} />
            </li>
          ) : null
        })}
      </ul>
    </>
  )
}
