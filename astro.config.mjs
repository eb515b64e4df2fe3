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
  // Nothing from elsewhere, and no script in a page that isn't one of ours: text from a link can never become one.
  security: {
    csp: {
      directives: [
        "default-src 'none'",
        "img-src 'self' blob:",
        "font-src 'self'",
        "connect-src 'self'",
        "worker-src 'self'",
        "manifest-src 'self'",
        "base-uri 'none'",
        "form-action 'self'",
      ],
      scriptDirective: { resources: ["'self'"] },
      styleDirective: { resources: ["'self'", { resource: "'unsafe-inline'", kind: 'attribute' }] },
    },
  },
  integrations: [mdx(), authoringCheck(), offline()],
  vite: { build: { rolldownOptions: { checks: { moduleLevelDirective: false } } } },
})
