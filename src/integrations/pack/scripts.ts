import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import type { Plugin } from 'rolldown'
import { bundleScript } from '../../site/bundle-script.ts'

const pageSource = fileURLToPath(new URL('../../browser/packed-links.ts', import.meta.url))

/** A module script of a page: the address of its file, or its own text. */
export type PageScript = { readonly src: string } | { readonly text: string }

const helper = /preload-helper[^/]*\.js$/
const workerMade = /new Worker\(new URL\(`([^`]+)`,``\+import\.meta\.url\)(?:,\{[^}]*\})?\)/g

/** What a browser refuses to a page from files, done otherwise: files fetched ahead, and workers from a file. */
const fromFiles = (site: string, base: string): Plugin => ({
  name: 'from-files',
  resolveId: (id) =>
    id.startsWith(base) && id.includes('/_astro/') ? join(site, id.slice(base.length)) : null,
  async transform(code, id) {
    // All that it fetches ahead is in the same file by now.
    if (helper.test(id)) {
      const [, name] = /export\{\w+ as (\w+)\}/.exec(code) ?? []
      if (!name) throw new Error(`The pack does not know the helper ${id} any more.`)
      return `export const ${name} = (load) => load()`
    }
    let made = code
    for (const [all, address = ''] of code.matchAll(workerMade)) {
      const { code: worker } = await bundleScript(join(site, address.slice(base.length)))
      made = made.replace(all, () => `new Worker(URL.createObjectURL(new Blob([${JSON.stringify(worker)}])))`)
    }
    if (made.includes('import.meta')) throw new Error(`The pack cannot carry import.meta in ${id}.`)
    return made === code ? null : made
  },
})

const entry = '\0entry'

/** The scripts of a page, in their order, as one script that runs from a file too. */
export const packedScript = async (
  scripts: readonly PageScript[],
  site: string,
  base: string,
): Promise<string> => {
  const own = join(site, '_astro')
  const texts = scripts.map((script, n) =>
    'src' in script ? null : { id: join(own, `\0inline-${n}.js`), ...script },
  )
  const imports = scripts.map((script, n) => ('src' in script ? script.src : (texts[n]?.id ?? '')))
  const parts: Plugin = {
    name: 'parts',
    resolveId: (id) => (id === entry || texts.some((text) => text?.id === id) ? id : null),
    load(id) {
      if (id === entry)
        return [pageSource, ...imports].map((from) => `import ${JSON.stringify(from)}`).join('\n')
      return texts.find((text) => text?.id === id)?.text ?? null
    },
  }
  return (await bundleScript(entry, { plugins: [parts, fromFiles(site, base)] })).code
}
