import './style/base.css'
import './style/frame.css'
import './style/page.css'
import './style/parts.css'
import './style/fields.css'
import './style/tables.css'
import './style/trying.css'
import './style/large.css'
import './style/print.css'
import { StrictMode } from 'react'
import { createRoot } from 'react-dom/client'
import { App } from './frame/App.tsx'
import { keepOffline } from './offline.ts'
import { app } from './state/app.ts'

createRoot(document.getElementById('app')!).render(
  <StrictMode>
    <App />
  </StrictMode>,
)
void app.start()
keepOffline((use) => app.store.set({ newVersion: use }))
