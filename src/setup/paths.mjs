import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'

/** The project's own folder, whatever folder the command was given in. */
export const root = dirname(dirname(dirname(fileURLToPath(import.meta.url))))

export const modules = join(root, 'node_modules')
export const tools = join(root, '.tools')
export const results = join(root, '.results')
export const dist = join(root, 'dist')
export const release = join(root, 'release')

/** Sites that are being served, a folder each. */
export const served = join(tools, 'served')
