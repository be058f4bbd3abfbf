import { Button } from 'react-aria-components/Button'
import { Menu, MenuItem, MenuTrigger, Popover } from 'react-aria-components/Menu'
import { app } from '../state/app.ts'
import { useApp } from '../state/hooks.ts'

/** Open, save, put away, and the units shown. */
export function FileMenu() {
  const units = useApp((s) => s.units)
  const other = units === 'metric' ? 'inch' : 'metric'
  return (
    <MenuTrigger>
      <Button>File and units</Button>
      <Popover placement="bottom end" className="menubox">
        <Menu
          className="menu"
          onAction={(key) => {
            if (key === 'save') void app.saveToFile()
            else if (key === 'open') void openPicked()
            else if (key === 'bench') void app.close()
            else app.setUnits(other)
          }}
        >
          <MenuItem id="save">Save to a file…</MenuItem>
          <MenuItem id="open">Open a file…</MenuItem>
          <MenuItem id="bench">All crafts, new craft, examples</MenuItem>
          <MenuItem id="units">
            {other === 'inch' ? 'Show inches and pounds' : 'Show millimetres and kilograms'}
          </MenuItem>
        </Menu>
      </Popover>
    </MenuTrigger>
  )
}

/** Opens a file by the browser's dialogue; what is wrong with it is shown by the frame. */
export async function openPicked(): Promise<void> {
  const fault = await app.openPicked()
  if (fault) app.store.set({ fault })
}
