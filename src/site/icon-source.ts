import { readFileSync } from 'node:fs'
import { root } from 'astro:config/server'

/** The site's icon. */
export const iconSource = readFileSync(new URL('public/icon.svg', root), 'utf8').trim()

/** Its address for a page that has it in itself: to fetch it would hold up what is read. */
export const iconAddress = `data:image/svg+xml,${encodeURIComponent(iconSource)}`
