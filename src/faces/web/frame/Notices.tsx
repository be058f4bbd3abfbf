import { Button } from 'react-aria-components/Button'
import { ProblemList } from '../parts/ProblemList.tsx'
import { app } from '../state/app.ts'
import { useApp } from '../state/hooks.ts'

/** What the app has to say just now: another tab, a file that could not be opened, a new version. */
export function Notices() {
  const notice = useApp((s) => s.notice)
  const follower = useApp((s) => s.role === 'follower' && s.work !== undefined)
  const newVersion = useApp((s) => s.newVersion)
  return (
    <>
      <div role="status">
        {(notice || follower) && (
          <div className="notice">
            <p>{notice || 'Another tab keeps this craft; this one shows what it saves.'}</p>
            {follower && <Button onPress={() => app.takeOver()}>Take over here</Button>}
            {notice && (
              <Button className="plain" onPress={() => app.say('')}>
                Done
              </Button>
            )}
          </div>
        )}
      </div>
      {newVersion && (
        <div className="notice">
          <p>A newer Wakewright is ready.</p>
          <Button onPress={newVersion}>Use it now</Button>
        </div>
      )}
      <Fault />
    </>
  )
}

/** A file that was not opened: why, place by place. The craft on the bench stays as it was. */
function Fault() {
  const fault = useApp((s) => s.fault)
  if (!fault) return null
  const { file, problems } = fault
  const close = () => app.store.set({ fault: undefined })
  return (
    <section className="fault" role="alert">
      <h2>{file.name} was not opened</h2>
      <p>What you had stays as it was. In the file:</p>
      <ProblemList problems={problems} file={file.name} />
      <div className="row">
        {!file.fault && (
          <Button
            className="main"
            onPress={() => {
              close()
              app.openToMend(file)
              location.hash = '#/craft'
            }}
          >
            Mend it here
          </Button>
        )}
        <Button onPress={close}>Leave it</Button>
      </div>
    </section>
  )
}
