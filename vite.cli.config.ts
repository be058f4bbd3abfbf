import { defineConfig } from 'vite'

// The command line as plain node modules with its dependencies inside, so that a cold start reads few files.
export default defineConfig({
  publicDir: false,
  ssr: { noExternal: true, external: ['piscina'] },
  build: {
    ssr: true,
    target: 'node20',
    outDir: 'dist/cli',
    emptyOutDir: true,
    minify: false,
    rolldownOptions: {
      input: { main: 'src/faces/cli/main.ts', worker: 'src/faces/cli/worker.ts' },
      output: { entryFileNames: '[name].js', chunkFileNames: '[name]-[hash].js' },
    },
  },
  logLevel: 'warn',
})
