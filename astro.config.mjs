import mdx from '@astrojs/mdx'
import { defineConfig } from 'astro/config'
import { authoringCheck } from './src/integrations/authoring.ts'
import { deferScripts } from './src/integrations/deferred-scripts.ts'
import { decodeFonts, loadDeferredScripts } from './src/site/inline-script.ts'
import { licencesCheck } from './src/integrations/licences.ts'
import { leanPages } from './src/integrations/lean-pages.ts'
import { fontSubset } from './src/integrations/font-subset.ts'
import { framing } from './src/integrations/framing-headers.ts'
import { offline } from './src/integrations/offline.ts'

const [start, end] = await Promise.all([decodeFonts(), loadDeferredScripts()])
const { SITE, BASE = '/' } = process.env

export default defineConfig({
  ...(SITE ? { site: SITE } : {}),
  base: BASE,
  output: 'static',
  trailingSlash: 'ignore',
  compressHTML: true,
  // No text has code in it, and what colours it would need inline styles.
  markdown: { syntaxHighlight: false },
  build: { format: 'directory' },
  // Nothing from elsewhere, and no script in a page that isn't one of ours: text from a link can never become one.
  security: {
    csp: {
      directives: [
        "default-src 'none'",
        "img-src 'self' blob: data:",
        "font-src 'self' data:",
        "connect-src 'self'",
        "worker-src 'self'",
        "manifest-src 'self'",
        "base-uri 'none'",
        "form-action 'self'",
      ],
      scriptDirective: { resources: ["'self'"], hashes: [end.hash, start.hash] },
      // Sheets and style elements are from 'self' unless something else is said here.
      styleDirective: { resources: [{ resource: "'unsafe-inline'", kind: 'attribute' }] },
    },
  },
  integrations: [
    mdx(),
    authoringCheck(),
    licencesCheck(),
    fontSubset(),
    deferScripts(),
    leanPages(),
    framing(),
    offline(),
  ],
  vite: {
    plugins: [
      {
        // The list of what each part needs, which Vite writes into what fetches the part, weighs more than it saves: most
        // of it is on the page by then. Astro sets the option itself, so that only a plug-in's word comes after it.
        name: 'without-lists-of-needs',
        config: () => ({
          build: {
            modulePreload: {
              resolveDependencies: (_, needed, { hostType }) => (hostType === 'js' ? [] : needed),
            },
          },
        }),
      },
    ],
    // Who was promised a port finds the site there and nowhere else.
    preview: { strictPort: true },
    build: {
      // One file of styles for all pages, with its fonts in it; what is a page's own is in the page, since each file
      // more holds its first paint up. The sheets' own is long, and many pages share it: it is a file.
      assetsInlineLimit: (file, content) =>
        /\.(css|woff2)$/.test(file) ? content.length < 16_000 && !/\bpaper\./.test(file) : undefined,
      rolldownOptions: {
        // What many pages with a machine have is one file: many small ones weigh more.
        output: {
          codeSplitting: {
            groups: [
              {
                name: 'common',
                test: /\/src\/(browser(?!\/dom)|link|words|mechanism|drawings\/shared)\//,
                minShareCount: 9,
              },
            ],
          },
        },
        checks: { moduleLevelDirective: false },
        // Its modules only declare, which its package does not say: of those that write PDF, only what is asked for is sent.
        treeshake: { moduleSideEffects: [{ test: /\/@cantoo\/pdf-lib\//, sideEffects: false }] },
      },
    },
  },
})
