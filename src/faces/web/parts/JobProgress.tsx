import { Button } from 'react-aria-components/Button'
import { ProgressBar } from 'react-aria-components/ProgressBar'

interface Props {
  /** what is being done, "Filling the pipe at 6500 rpm" */
  says: string
  /** 0 to 1; absent while it cannot be told */
  part?: number | undefined
  /** absent for what nobody asked for */
  onCancel?: () => void
}

/** Long work: what it is doing, how far it is, and a way to call it off. */
export function JobProgress({ says, part, onCancel }: Props) {
  return (
    <div className="job">
      <ProgressBar
        aria-label={says}
        {...(part === undefined ? { isIndeterminate: true } : { value: part * 100 })}
        valueLabel={part === undefined ? says : `${Math.round(part * 100)} %`}
      >
        {({ percentage, valueText }) => (
          <>
            <span>
              {says} {part !== undefined && valueText}
            </span>
            <span className="bar" data-busy={part === undefined || undefined}>
              <span style={{ width: `${percentage ?? 30}%` }} />
            </span>
          </>
        )}
      </ProgressBar>
      {onCancel && <Button onPress={onCancel}>Cancel</Button>}
    </div>
  )
}
