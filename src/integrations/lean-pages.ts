import { readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import type { AstroIntegration } from 'astro'
import { fileOfPage } from './deferred-scripts.ts'
import { edited, elementsOf } from './html-edits.ts'
import { ownPolicy } from './own-policy.ts'

/** Leaves in the policy of every built page only what is said of that page itself. */
export const leanPages = (): AstroIntegration => ({
  name: 'lean-pages',
  hooks: {
    'astro:build:done': ({ dir, pages }) => {
      const folder = fileURLToPath(dir)
      for (const { pathname } of pages) {
        const file = join(folder, fileOfPage(pathname))
        const html = readFileSync(file, 'utf8')
        writeFileSync(file, edited(html, ownPolicy(html, elementsOf(html))))
      }
    },
  },
})
