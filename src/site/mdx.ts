import remarkMdx from 'remark-mdx'
import remarkParse from 'remark-parse'
import { unified } from 'unified'

const parser = unified().use(remarkParse).use(remarkMdx).freeze()

/** The syntax tree of a text in MDX. */
export type MdxTree = ReturnType<typeof parser.parse>

/** A node of such a tree, at whatever depth. */
export type MdxNode = MdxTree | MdxTree['children'][number]

/** Blanks out a stretch of text so that what follows keeps its line and column. */
export const blanked = (text: string): string => text.replace(/[^\n]/g, ' ')

const trees = new Map<string, MdxTree>()

/**
 * The syntax tree of a chapter's file, or of its body; each text is parsed once. Front matter is no part of it, and
 * positions are those of the text as it is. Throws a message with its position where the text is not MDX.
 */
export const parseMdx = (text: string): MdxTree => {
  const tree = trees.get(text) ?? parser.parse(text.replace(/^---\n[\s\S]*?\n---\n/, blanked))
  trees.set(text, tree)
  return tree
}

/** A component in a text. */
export interface Component {
  readonly name: string
  /** Its attributes in their order: a string as it reads, `{…}` as the source text inside; empty for one without a value. */
  readonly attributes: ReadonlyMap<string, string>
}

/** The component that a node is; null for any other node. Plain HTML elements are not components. */
export const componentOf = (node: MdxNode): Component | null => {
  if (node.type !== 'mdxJsxFlowElement' && node.type !== 'mdxJsxTextElement') return null
  if (node.name === null || !/^[A-Z]/.test(node.name)) return null
  const attributes = node.attributes.flatMap((attribute) => {
    if (attribute.type !== 'mdxJsxAttribute') return []
    const { name, value } = attribute
    return [[name, typeof value === 'string' ? value : (value?.value ?? '')] as const]
  })
  return { name: node.name, attributes: new Map(attributes) }
}
