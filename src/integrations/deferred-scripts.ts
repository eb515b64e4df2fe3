import { readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import type { AstroIntegration } from 'astro'
import { loader } from '../site/script-loader.ts'

const module = /<script type="module" src="([^"]+)"><\/script>/g
/** A page's own styles, which Astro puts before those that all pages share. */
const ownFirst = /((?:<style>(?:(?!<\/style>)[\s\S])*<\/style>)+)((?:<link rel="stylesheet"[^>]*>)+)/

/** All that a script imports at once, and what that imports, and so on. */
const importsOf = (script: string, imports: ReadonlyMap<string, readonly string[]>): string[] => {
  const found = new Set<string>()
  const follow = (file: string): void => {
    for (const next of imports.get(file) ?? [])
      if (!found.has(next)) {
        found.add(next)
        follow(next)
      }
  }
  follow(script)
  return [...found]
}

/**
 * Puts the styles of every built page in their order, what is its own after what it shares, and lets its scripts wait
 * until it is drawn; then they come all at once, not one after the other.
 */
export const afterPaint = (): AstroIntegration => {
  const imports = new Map<string, readonly string[]>()
  let base = '/'
  const later = (html: string): string =>
    html.replace(ownFirst, '$2$1').replace(module, (_, src: string) => {
      const others = importsOf(src.slice(base.length), imports).map((file) => base + file)
      return `<script type="later" src="${src}" data-with="${others.join(' ')}"></script>`
    }) + loader
  return {
    name: 'after-paint',
    hooks: {
      'astro:config:setup': ({ updateConfig }) => {
        const listen = {
          name: 'imports',
          generateBundle(_: unknown, bundle: Readonly<Record<string, { type: string; imports?: string[] }>>) {
            for (const [file, { imports: others }] of Object.entries(bundle))
              if (others) imports.set(file, others)
          },
        }
        updateConfig({ vite: { plugins: [listen] } })
      },
      'astro:config:done': ({ config }) => {
        base = config.base.replace(/\/*$/, '/')
      },
      'astro:build:done': ({ dir, pages }) => {
        for (const { pathname } of pages) {
          const file = join(fileURLToPath(dir), pathname, 'index.html')
          writeFileSync(file, later(readFileSync(file, 'utf8')))
        }
      },
    },
  }
}
