import { parseHTML } from 'linkedom'
import type { PluginConfig } from 'svgo'

const without = (parent: { children: unknown[] }, child: unknown): void => {
  parent.children = parent.children.filter((each) => each !== child)
}

/** What draws nothing: lines without a course, and groups of nothing. */
const empty: PluginConfig = {
  name: 'empty',
  fn: () => ({
    element: {
      exit: (node, parent) => {
        const isEmpty =
          node.name === 'g' ? node.children.length === 0 : node.name === 'path' && !node.attributes.d
        if (isEmpty) without(parent, node)
      },
    },
  }),
}

const namesIn = (css: string, pattern: RegExp): ReadonlySet<string> =>
  new Set(Array.from(css.matchAll(pattern), ([, name = '']) => name))

/** Classes and data that no style asks for, and scripts never will where the picture is on its own. */
const unasked = (css: string): PluginConfig => {
  const classes = namesIn(css, /\.(-?[_a-zA-Z][\w-]*)/g)
  const data = namesIn(css, /\[(data-[\w-]+)/g)
  return {
    name: 'unasked',
    fn: () => ({
      element: {
        enter: (node) => {
          const { class: names, ...others } = node.attributes
          const kept = names?.split(' ').filter((name) => classes.has(name)) ?? []
          node.attributes = Object.fromEntries([
            ...Object.entries(others).filter(([name]) => !name.startsWith('data-') || data.has(name)),
            ...(kept.length > 0 ? [['class', kept.join(' ')] as const] : []),
          ])
        },
      },
    }),
  }
}

/** What a drawing needn't have in a picture on its own with these styles; shapes of one look become one where none is over another. */
export const forItself = (css: string): PluginConfig[] => [
  unasked(css),
  empty,
  { name: 'mergePaths', params: { floatPrecision: 2, noSpaceAfterFlags: true } },
]

/** The selectors of a rule, parted at the commas that are in no brackets. */
const selectorsOf = (list: string): string[] => list.match(/(?:[^,()]|\((?:[^()]|\([^()]*\))*\))+/g) ?? []

/** Styles as svgo writes them, less the selectors that concern nothing in the picture; what begins with an @ is kept. */
export const withoutIdleRules = (css: string, picture: string): string => {
  const { document } = parseHTML(picture)
  return css.replace(/(?<=^|[{}])([^{}@]+)(\{[^{}]*\})/g, (_, list: string, body: string) => {
    const kept = selectorsOf(list).filter((selector) => document.querySelector(selector) !== null)
    return kept.length > 0 ? kept.join() + body : ''
  })
}
