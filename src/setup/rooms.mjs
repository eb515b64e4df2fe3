import { dirname, extname, join, relative, sep } from 'node:path'
import { root } from './paths.mjs'

const view = ['components', 'layouts', 'pages', 'styles']
const model = ['mechanism', 'find', 'link', 'words']
const site = [...model, 'drawings', 'lesson', 'commands', ...view, 'src', 'content']

/**
 * The house's import rule: for each folder of src, the other folders and the packages it may import.
 * 'src' stands for the files directly in src; true means any package.
 * @type {Record<string, { rooms: string[], packages: true | string[] }>}
 */
export const rooms = {
  mechanism: { rooms: [], packages: [] },
  find: { rooms: ['mechanism'], packages: [] },
  link: { rooms: ['mechanism'], packages: [] },
  words: { rooms: ['mechanism', 'find'], packages: [] },
  drawings: { rooms: ['mechanism', 'words'], packages: ['d3'] },
  lesson: { rooms: ['mechanism', 'words', 'link'], packages: [] },
  ...Object.fromEntries([...view, 'src'].map((name) => [name, { rooms: site, packages: true }])),
  commands: { rooms: model, packages: ['node:'] },
  setup: { rooms: [], packages: ['node:'] },
}

/** Node itself runs these, so their imports must be relative and name the file's extension. */
const runByNode = [...model, 'commands', 'setup']

/** @param {string} file @returns {string | undefined} the folder of src, 'src' itself, or 'content' */
function roomOf(file) {
  const [top, name, ...rest] = relative(root, file).split(sep)
  if (top === 'content') return top
  if (top !== 'src') return undefined
  return rest.length > 0 ? name : 'src'
}

/**
 * @param {string} importer path of a file
 * @param {string} source as written in its import
 * @returns {string | undefined} what is wrong with it
 */
export function complaint(importer, source) {
  const here = roomOf(importer)
  if (here === undefined || here === 'content') return undefined
  const allowed = rooms[here]
  if (!allowed) return `src/${here} has no line in the import rule, src/setup/rooms.mjs.`

  const aliased = source.startsWith('@/')
  if (!aliased && !source.startsWith('.')) {
    if (allowed.packages === true) return undefined
    const fits = allowed.packages.some(
      (name) => source === name || (name === 'node:' && source.startsWith(name)),
    )
    const list = allowed.packages.join(', ') || 'no package'
    return fits ? undefined : `src/${here} may import ${list}: ‘${source}’ is not for this room.`
  }
  const byNode = runByNode.includes(here)
  if (byNode && aliased) return `src/${here} is run by Node as it is: write ‘${source}’ as a relative path.`
  if (byNode && extname(source) === '')
    return `src/${here} is run by Node as it is: name the extension of ‘${source}’.`

  const there = roomOf(aliased ? join(root, 'src', source.slice(2)) : join(dirname(importer), source))
  if (there === here || (there !== undefined && allowed.rooms.includes(there))) return undefined
  const list = allowed.rooms.join(', ') || 'no other room'
  return `src/${here} may import ${list}: ‘${source}’ is in ${there ?? 'no room of src'}.`
}

/** @type {import('eslint').Rule.RuleModule} */
export const importRule = {
  meta: { type: 'problem', schema: [] },
  create(context) {
    /** @param {any} node */
    const look = (node) => {
      const source = node.source?.value
      if (typeof source !== 'string') return
      const message = complaint(context.physicalFilename, source)
      if (message) context.report({ node: node.source, message })
    }
    return {
      ImportDeclaration: look,
      ImportExpression: look,
      ExportNamedDeclaration: look,
      ExportAllDeclaration: look,
      TSImportType: look,
    }
  },
}
