import { createHash } from 'node:crypto'
import react from '@vitejs/plugin-react'
import { defineConfig, type Plugin } from 'vite'

const worker = 'sw.js'

/** Writes the list of built files and a hash of their contents into the service worker, so that one build is one cache. */
function offline(): Plugin {
  return {
    name: 'offline',
    apply: 'build',
    enforce: 'post',
    generateBundle(_, bundle) {
      const shell = bundle[worker]
      if (shell?.type !== 'chunk') throw new Error('the service worker was not built')
      const hash = createHash('sha256')
      const files = Object.keys(bundle)
        .filter((name) => name !== worker && !name.endsWith('.map'))
        .sort()
      for (const name of files) {
        const part = bundle[name]!
        hash.update(name).update(part.type === 'chunk' ? part.code : part.source)
      }
      const list = [...files, 'mark.svg', 'app.webmanifest']
      shell.code = `self.build=${JSON.stringify({ files: list, version: hash.digest('hex').slice(0, 16) })};${shell.code}`
    },
  }
}

export default defineConfig({
  base: './',
  publicDir: 'src/faces/web/public',
  plugins: [react(), offline()],
  worker: { format: 'es' },
  build: {
    outDir: 'dist/web',
    target: 'es2023',
    modulePreload: { polyfill: false },
    rolldownOptions: {
      input: { index: 'index.html', sw: 'src/faces/web/offline/sw.ts' },
      output: {
        entryFileNames: (chunk) => (chunk.name === 'sw' ? worker : 'assets/[name]-[hash].js'),
      },
    },
  },
})
