import { readdirSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import type { AstroIntegration } from 'astro'

/** The pages that are made for frames of other sites. */
const forFrames = 'embed'

const rule = (path: string, ...headers: readonly string[]): string =>
  [path, ...headers.map((header) => `  ${header}`)].join('\n')

/**
 * The text of the file by which static hosts send headers: no page may be put into a frame of another site, but for those
 * made for it. Hosts send the headers of every rule that fits an address, and browsers keep to all of them, so no rule
 * covers both kinds of page.
 * @param names what lies at the top of the built site: folders, and files with their extensions
 * @param base the site's own path, with a slash at its end
 */
export const framingHeaders = (names: readonly string[], base: string): string => {
  const own = names
    .filter((name) => name !== forFrames && !name.startsWith('_'))
    .flatMap((name) => (name.endsWith('.html') ? [name] : name.includes('.') ? [] : [`${name}/*`]))
    .map((name) => (name === 'index.html' ? [base, `${base}index.html`] : [base + name]))
    .flat()
    .map((path) =>
      rule(path, "Content-Security-Policy: frame-ancestors 'self'", 'X-Frame-Options: SAMEORIGIN'),
    )
  return [...own, rule(`${base}${forFrames}/*`, 'Content-Security-Policy: frame-ancestors *'), ''].join('\n')
}

/** Writes the file of headers beside the pages. */
export const framing = (): AstroIntegration => {
  let base = '/'
  return {
    name: 'framing-headers',
    hooks: {
      'astro:config:done': ({ config }) => {
        base = config.base.replace(/\/*$/, '/')
      },
      'astro:build:done': ({ dir }) => {
        const folder = fileURLToPath(dir)
        writeFileSync(join(folder, '_headers'), framingHeaders(readdirSync(folder).sort(), base))
      },
    },
  }
}
