import { drivelineTrade } from '../../../../trades/driveline/drivelineTrade.ts'
import { driveCautions, driveMethod } from '../../../../trades/driveline/driveSay.ts'
import type { FoldPart } from '../../parts/Fold.tsx'
import type { PanelInput } from '../../parts/InputsPanel.tsx'
import { foldsOf, TradeFigureView } from '../../parts/TradeParts.tsx'
import { useDrive } from './useDrive.ts'

interface DriveParts {
  picture: React.ReactNode
  inputs: readonly PanelInput[]
  folds: readonly FoldPart[]
  cautions: readonly string[]
  method: readonly string[]
}

const nothing: DriveParts = { picture: undefined, inputs: [], folds: [], cautions: [], method: [] }

/** The second half of the page: the chain to scale with each part's margin, its inputs and its folds. Empty without a shaft in the file. */
export function useDriveParts(): DriveParts {
  const drive = useDrive()
  if (!drive) return nothing
  const { now, tried } = drive
  const figure = drivelineTrade.figures?.[0]
  return {
    picture: figure && <TradeFigureView figure={figure} now={now} tried={tried} />,
    inputs: drivelineTrade.levers?.(tried ?? now) ?? [],
    folds: foldsOf(drivelineTrade, now, tried).map((fold) => ({
      ...fold,
      title: `${drivelineTrade.title}: ${fold.title.toLowerCase()}`,
    })),
    cautions: driveCautions,
    method: driveMethod,
  }
}
