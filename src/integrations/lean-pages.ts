import { readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import type { AstroIntegration } from 'astro'
import { fileOfPage } from './deferred-scripts.ts'
import { edited, elementsOf } from './html-edits.ts'
import { ownPolicy } from './own-policy.ts'
import { linkStyles, sharedStyles } from './shared-styles.ts'

/** The folder of what is built, in the site's. */
const built = '_astro'

/** Takes out of every built page what it shares with many, and what it says of others only. */
export const leanPages = (): AstroIntegration => {
  let base = '/'
  return {
    name: 'lean-pages',
    hooks: {
      'astro:config:done': ({ config }) => {
        base = config.base.replace(/\/*$/, '/')
      },
      'astro:build:done': ({ dir, pages }) => {
        const folder = fileURLToPath(dir)
        const all = pages.map(({ pathname }) => {
          const file = join(folder, fileOfPage(pathname))
          const html = readFileSync(file, 'utf8')
          return { file, html, elements: elementsOf(html) }
        })
        const shared = sharedStyles(all)
        for (const [css, name] of shared) writeFileSync(join(folder, built, name), css)
        for (const page of all) {
          const styled = edited(page.html, linkStyles(page, shared, `${base}${built}/`))
          writeFileSync(page.file, edited(styled, ownPolicy(styled, elementsOf(styled))))
        }
      },
    },
  }
}
