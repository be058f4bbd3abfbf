import { Button } from 'react-aria-components/Button'
import { ChoiceField } from '../../parts/ChoiceField.tsx'
import { app } from '../../state/app.ts'
import { useApp } from '../../state/hooks.ts'
import { hullMeshes, useHullMesh } from './hullMesh.ts'

const guess = 'guess it'
const units = [guess, 'mm', 'm', 'in'] as const
const axes = [guess, '+x', '-x', '+y', '-y', '+z', '-z'] as const

/** A hull drawn elsewhere: opened, looked at as the tried hull, and kept by name in the craft file. */
export function HullFile() {
  const craft = useApp((s) => s.craft)
  const readOnly = useApp((s) => s.role === 'follower')
  const { file, choices, looked, refused, own } = useHullMesh(craft)
  const named = craft?.hull.mesh
  const unit = choices.unit ?? unitSaid(looked?.flags.map((f) => f.text) ?? [])
  const choose = (part: 'unit' | 'forward' | 'up', word: string) => {
    const { [part]: _, ...rest } = choices
    hullMeshes.choose(word === guess ? rest : { ...rest, [part]: word })
  }
  const keep = () => {
    if (!looked || !unit) return
    app.writeAll([
      ['hull.mesh', looked.fileName],
      ['hull.mesh unit', unit],
      ...(choices.forward ? [['hull.mesh forward', choices.forward] as const] : []),
      ...(choices.up ? [['hull.mesh up', choices.up] as const] : []),
    ])
    void hullMeshes.keep(unit)
  }
  return (
    <section className="hullfile">
      <h2>The hull from a file</h2>
      <p>
        A hull drawn elsewhere can stand in for the measures: one closed skin, deck included, as STL or 3MF.
        It is read here and stays on this machine; the craft file only names it.
      </p>
      {named !== undefined && (
        <p>
          The craft file names <strong>{named}</strong>
          {own
            ? ', which is used here.'
            : ', which this browser does not have: open it below. Until then the measures stand in.'}{' '}
          <Button
            className="plain"
            isDisabled={readOnly}
            onPress={() => {
              app.remove('hull.mesh')
              for (const path of ['hull.mesh unit', 'hull.mesh forward', 'hull.mesh up'])
                if (app.isWritten(app.store.get().work?.text ?? '', path)) app.remove(path)
            }}
          >
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
            onChange={(e) => {
              const picked = e.target.files?.[0]
              if (picked) void hullMeshes.open(picked)
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
      {file && (
        <div className="fields">
          <ChoiceField
            label="One unit of the file is"
            value={choices.unit ?? guess}
            choices={units}
            onChange={(w) => choose('unit', w)}
          />
          <ChoiceField
            label="Forward in the file"
            value={choices.forward ?? guess}
            choices={axes}
            onChange={(w) => choose('forward', w)}
          />
          <ChoiceField
            label="Up in the file"
            value={choices.up ?? guess}
            choices={axes}
            onChange={(w) => choose('up', w)}
          />
        </div>
      )}
      {looked && (
        <>
          <p role="status">
            {looked.fileName}: {looked.mesh.triangles.length / 3} triangles, closed. It is looked at above as
            the tried hull.
          </p>
          <ul>
            {looked.flags.map((f) => (
              <li key={f.text}>{f.text}</li>
            ))}
          </ul>
          {unit === undefined && (
            <p>A craft file takes a mesh in mm, m or in: choose which this is to keep it.</p>
          )}
          <div className="row">
            <Button className="main" isDisabled={readOnly || unit === undefined} onPress={keep}>
              Use it in the craft file
            </Button>
            <Button onPress={() => hullMeshes.drop()}>Drop it</Button>
          </div>
        </>
      )}
    </section>
  )
}

/** The unit a reading guessed or a 3MF file names, where the craft file can say it; a 3MF file names its own again when read. */
function unitSaid(flags: readonly string[]): 'mm' | 'm' | 'in' | undefined {
  if (flags.some((f) => f.startsWith('The 3MF file'))) return 'mm'
  const word = flags.map((f) => /was taken as (mm|m|in),/.exec(f)?.[1]).find((w) => w !== undefined)
  return word as 'mm' | 'm' | 'in' | undefined
}
