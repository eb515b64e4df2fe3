import mdx from '@astrojs/mdx'
import { defineConfig } from 'astro/config'
import { authoringCheck } from './src/components/authoring-check.ts'
import { offline } from './src/components/offline/build.ts'

const { SITE, BASE = '/' } = process.env

export default defineConfig({
  ...(SITE ? { site: SITE } : {}),
  base: BASE,
  output: 'static',
  trailingSlash: 'ignore',
  compressHTML: true,
  build: { format: 'directory' },
  integrations: [mdx(), authoringCheck(), offline()],
  vite: { build: { rolldownOptions: { checks: { moduleLevelDirective: false } } } },
})
