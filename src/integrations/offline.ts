import { createHash } from 'node:crypto'
import { readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import type { AstroIntegration } from 'astro'
import { getManifest } from 'workbox-build'
import { bundleScript } from '../site/bundle-script.ts'
import { checkLicences } from './licences.ts'
import type { SiteFile } from '../workers/offline-messages.ts'

const workerSource = fileURLToPath(new URL('../workers/offline.ts', import.meta.url))

/** Pages that one visit keeps, beside all scripts, styles, fonts and icons: those that links to states and cases open. */
const shellPages = ['./', 'case/', 'find/', 'workbench/', 'search/', 'offline/']

const isShell = (url: string): boolean => shellPages.includes(url) || /^(_astro|icons)\/|^[^/]+$/.test(url)

/** More than any file of the site has: Workbox leaves larger ones out with a warning. */
const mostBytes = 16 * 1024 * 1024

/** All files of a built site that belong on a reader's device, in an order of their own. Preview pictures are for other sites. */
const filesIn = async (folder: string): Promise<SiteFile[]> => {
  const { manifestEntries, warnings } = await getManifest({
    globDirectory: folder,
    globPatterns: ['**/*.{html,js,css,woff2,svg,json,webmanifest}', 'icons/*.png'],
    // A figure in another's page is no page of a reader's device.
    globIgnores: ['sw.js', 'embed/**'],
    maximumFileSizeToCacheInBytes: mostBytes,
  })
  if (warnings.length > 0) throw new Error(warnings.join('\n'))
  return manifestEntries
    .map(({ url: name }) => {
      const text = readFileSync(join(folder, name))
      const url = name.replace(/(^|\/)index\.html$/, '$1') || './'
      const integrity = `sha256-${createHash('sha256').update(text).digest('base64')}`
      return { url, integrity, bytes: text.length, shell: isShell(url) }
    })
    .sort((a, b) => (a.url < b.url ? -1 : 1))
}

/** Makes the built site's service worker: our own on Workbox's parts, with the list of the files put in. */
export const offline = (): AstroIntegration => ({
  name: 'offline',
  hooks: {
    'astro:build:done': async ({ dir }) => {
      const folder = fileURLToPath(dir)
      const worker = await bundleScript(workerSource, {
        define: {
          builtFiles: JSON.stringify(await filesIn(folder)),
          'process.env.NODE_ENV': '"production"',
        },
      })
      checkLicences([worker])
      writeFileSync(join(folder, 'sw.js'), worker.code)
    },
  },
})
