import { readdirSync, readFileSync, statSync } from 'node:fs'
import { join } from 'node:path'
import { type Zippable, zipSync } from 'fflate'
import { folder, readme, startPage } from './front.ts'
import {
  fontsOf,
  gathered,
  packedPage,
  pageFonts,
  readPage,
  scriptsOf,
  type Site,
  siteAddress,
  type SitePage,
  withoutFonts,
} from './html.ts'
import { packedScript } from './scripts.ts'

/** Needed only with a server, by other sites, or put into other files of the pack. */
const leftOut =
  /^(previews|icons)\/|^(sw\.js|picture\.png|404\.html)$|\.webmanifest$|^_headers$|^_astro\/.*\.(js|woff2)$/

/** The earliest time that an archive can name, so that the same site makes the same archive. */
const stamp = new Date(1980, 0, 1)

const bytesOf = (text: string): Uint8Array => new TextEncoder().encode(text)

/** All files of a folder, by names that are the same on every system. */
const namesIn = (site: string): string[] =>
  readdirSync(site, { recursive: true, encoding: 'utf8' })
    .filter((name) => statSync(join(site, name)).isFile())
    .map((name) => name.replaceAll('\\', '/'))
    .sort()

/** The fonts' rules as one style with the fonts in it: browsers differ in what a page from files may fetch. */
const fontStyle = (rules: Iterable<string>, site: string, base: string): string =>
  [...new Set(rules)]
    .map((rule) =>
      rule.replace(/url\(["']?(\/[^"')]+)["']?\)/g, (_, address: string) => {
        const font = readFileSync(join(site, address.slice(base.length)))
        return `url(data:font/woff2;base64,${font.toString('base64')})`
      }),
    )
    .join('\n')

/** Where the site lies and what it is called, as its own pages say. */
const readSite = (site: string, names: readonly string[]): Site => {
  const { scope } = JSON.parse(readFileSync(join(site, 'site.webmanifest'), 'utf8')) as { scope: string }
  const home = readPage('index.html', readFileSync(join(site, 'index.html'), 'utf8'))
  const all = new Set(names)
  return {
    base: scope,
    address: siteAddress(home),
    has: (name) => all.has(name),
  }
}

/**
 * A built site as an archive that opens by a double click, without a server.
 * @param site folder of the built site
 * @param version what the archive calls itself
 */
export const pack = async (site: string, version: string): Promise<Uint8Array> => {
  const names = namesIn(site)
  const about = readSite(site, names)
  const readFrom = (name: string): SitePage => readPage(name, readFileSync(join(site, name), 'utf8'))
  const files = new Map<string, Uint8Array>()
  const fonts: string[] = []
  const scripts = new Map<string, string>()
  for (const name of names.filter((name) => !leftOut.test(name))) {
    const bytes = readFileSync(join(site, name))
    if (name.endsWith('.css')) {
      fonts.push(...fontsOf(bytes.toString()))
      files.set(name, bytesOf(withoutFonts(bytes.toString())))
    } else if (name.endsWith('.html')) {
      const page = gathered(readFrom(name), about.base, readFrom)
      fonts.push(...pageFonts(page))
      const parts = scriptsOf(page)
      const key = JSON.stringify(parts)
      const script = scripts.get(key) ?? `scripts/${scripts.size + 1}.js`
      if (!scripts.has(key)) files.set(script, bytesOf(await packedScript(parts, site, about.base)))
      scripts.set(key, script)
      files.set(name, bytesOf(packedPage(page, script, about)))
    } else files.set(name, bytes)
  }
  files.set('fonts.css', bytesOf(fontStyle(fonts, site, about.base)))
  const entries: Zippable = {
    'START-HERE.html': bytesOf(startPage),
    'READ-ME.txt': bytesOf(readme(version, about.address)),
    ...Object.fromEntries([...files].map(([name, bytes]) => [`${folder}/${name}`, bytes])),
  }
  return zipSync(entries, { level: 9, mtime: stamp })
}
