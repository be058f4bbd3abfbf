import { defineConfig } from 'vite'

// The library as one module for node and browsers; its dependencies stay outside.
export default defineConfig({
  publicDir: false,
  build: {
    target: 'es2023',
    outDir: 'dist/lib',
    emptyOutDir: true,
    minify: false,
    lib: { entry: 'src/index.ts', formats: ['es'], fileName: 'index' },
    rolldownOptions: { external: [/^[a-z@][^:]*$/i] },
  },
  logLevel: 'warn',
})
