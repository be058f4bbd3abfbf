import { useState } from 'react'
import { type TemplateKind, templateKinds } from '../../../../craft/templates.ts'
import { addressOf } from '../../frame/pageRoute.ts'
import { app } from '../../state/app.ts'

/** The name and the kind of a new craft; then the questions. */
export function NewCraft() {
  const [name, setName] = useState('')
  const [kind, setKind] = useState<TemplateKind>(templateKinds[0])
  return (
    <form
      className="newcraft"
      onSubmit={(event) => {
        event.preventDefault()
        app.newCraft(name.trim() || 'My craft', kind)
        location.hash = addressOf('begin', 'size')
      }}
    >
      <label>
        Its name
        <input
          value={name}
          onChange={(event) => setName(event.target.value)}
          maxLength={60}
          autoComplete="off"
        />
      </label>
      <fieldset>
        <legend>What kind of craft</legend>
        {templateKinds.map((one) => (
          <label key={one}>
            <input type="radio" name="kind" checked={kind === one} onChange={() => setKind(one)} />
            {one}
          </label>
        ))}
      </fieldset>
      <button type="submit" className="main">
        Begin: ten questions
      </button>
    </form>
  )
}
