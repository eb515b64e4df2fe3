import { readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import type { AstroIntegration } from 'astro'
import { loadDeferredScripts } from '../site/inline-script.ts'
import { type Edit, edited, elementsOf, type PageElement } from './html-edits.ts'

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

/** The elements from the n-th on that fit, each beginning where the one before ends. */
const runFrom = (
  elements: readonly PageElement[],
  n: number,
  fits: (element: PageElement) => boolean,
): PageElement[] => {
  const run: PageElement[] = []
  for (const element of elements.slice(n)) {
    const before = run.at(-1)
    if (!fits(element) || (before && before.span.to !== element.span.from)) break
    run.push(element)
  }
  return run
}

const isStyle = ({ tag }: PageElement): boolean => tag === 'style'
const isSheet = ({ tag, attributes }: PageElement): boolean =>
  tag === 'link' && attributes.get('rel') === 'stylesheet'

/** Puts a page's own styles after the sheets that all pages share: Astro puts them before. */
const ownStylesLast = (html: string, elements: readonly PageElement[]): Edit[] => {
  for (const [n] of elements.entries()) {
    const styles = runFrom(elements, n, isStyle)
    const sheets = runFrom(elements, n + styles.length, isSheet)
    const [style, sheet, end] = [styles[0], sheets[0], sheets.at(-1)]
    if (!style || !sheet || !end || styles.at(-1)?.span.to !== sheet.span.from) continue
    const [from, middle, to] = [style.span.from, sheet.span.from, end.span.to]
    return [{ from, to, text: html.slice(middle, to) + html.slice(from, middle) }]
  }
  return []
}

/** Lets a page's module scripts wait for what loads them, which needs to know all that each imports. */
const scriptsDeferred = (
  elements: readonly PageElement[],
  importsOfScript: (address: string) => readonly string[],
): Edit[] =>
  elements.flatMap(({ tag, attributes, span }) => {
    const address = attributes.get('src')
    if (tag !== 'script' || attributes.get('type') !== 'module' || address === undefined) return []
    const others = importsOfScript(address).join(' ')
    return [{ ...span, text: `<script type="deferred" src="${address}" data-with="${others}"></script>` }]
  })

/** The built file of a page: a page's own folder has it, but that for unknown addresses has the name that hosts look for. */
export const fileOfPage = (pathname: string): string =>
  pathname === '404/' ? '404.html' : join(pathname, 'index.html')

/**
 * Puts the styles of every built page in their order, what is its own after what it shares, and lets its scripts wait
 * until it is drawn; then they come all at once, not one after the other.
 */
export const deferScripts = (): AstroIntegration => {
  const imports = new Map<string, readonly string[]>()
  let base = '/'
  const importsOfScript = (address: string): string[] =>
    importsOf(address.slice(base.length), imports).map((file) => base + file)
  return {
    name: 'deferred-scripts',
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
      'astro:build:done': async ({ dir, pages }) => {
        const { code } = await loadDeferredScripts()
        for (const { pathname } of pages) {
          const file = join(fileURLToPath(dir), fileOfPage(pathname))
          const html = readFileSync(file, 'utf8')
          const elements = elementsOf(html)
          const edits = [...ownStylesLast(html, elements), ...scriptsDeferred(elements, importsOfScript)]
          // The page's first drawing waits until this element is there (Page.astro).
          writeFileSync(file, `${edited(html, edits)}<script id="end">${code}</script>`)
        }
      },
    },
  }
}
