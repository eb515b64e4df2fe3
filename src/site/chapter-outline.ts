import { SKIP, visit } from 'unist-util-visit'
import { type FactName, facts, inWords } from '../words/facts.ts'
import type { SceneAttributes } from '../words/figures/scene-step.ts'
import { type Component, componentOf, type MdxNode, parseMdx } from './mdx.ts'

/** A step of a chapter as its file has it. */
interface StepOutline {
  readonly id: string
  readonly title: string
  /** The figure that it is shown in. */
  readonly figure: string
  /** How it shows the machine in three dimensions, where that is its figure. */
  readonly scene: SceneAttributes
  /** The state of the machine, as a link's text. */
  readonly state: string
  /** Its text as it reads: numbers put in, on one line, without what only the teacher reads. */
  readonly words: string
  /** The questions before an answer, in their order. */
  readonly predictions: readonly Component[]
  /** The notes to the teacher, each as it reads, on one line. */
  readonly notes: readonly string[]
}

/** What a chapter or the guide has, found once for all that read it. */
export interface Outline {
  readonly steps: readonly StepOutline[]
  /** All components, in the order in which they begin. */
  readonly components: readonly Component[]
  /** The whole text as it reads, on one line, without what only the teacher reads. */
  readonly words: string
  /** How long it takes to read, in whole minutes and at least one; trying things out takes as long as one likes. */
  readonly minutes: number
}

/** A number of the model as a text names it. Throws where there is no fact of that name. */
const numberText = ({ attributes }: Component): string => {
  const name = attributes.get('of') ?? ''
  if (!Object.hasOwn(facts, name)) throw new Error(`there is no fact “${name}”`)
  const value = facts[name as FactName]
  return attributes.has('words') ? inWords(Number(value)) : value
}

/** Nodes that run on within a line of text; anything else is apart from what is beside it. */
const runsOn = new Set(['text', 'emphasis', 'strong', 'link', 'inlineCode', 'mdxJsxTextElement'])

/** A node's text as it reads, on one line. Notes inside it are left out; a note itself may be read. */
const wordsOf = (node: MdxNode): string => {
  const parts: string[] = []
  visit(node, (each) => {
    const component = componentOf(each)
    if (component?.name === 'Notes' && each !== node) return SKIP
    if (!runsOn.has(each.type)) parts.push(' ')
    if (component?.name === 'N') parts.push(numberText(component))
    if (each.type === 'text' || each.type === 'inlineCode') parts.push(each.value)
    return undefined
  })
  return parts.join('').replace(/\s+/g, ' ').trim()
}

/** The components inside a node, each with its own node, in the order in which they begin. */
const componentsIn = (root: MdxNode): { node: MdxNode; component: Component }[] => {
  const found: { node: MdxNode; component: Component }[] = []
  visit(root, (node) => {
    const component = componentOf(node)
    if (component && node !== root) found.push({ node, component })
  })
  return found
}

/** An attribute of a step. Throws where it is missing: the check of chapters names it with its line. */
const required = ({ attributes }: Component, name: string): string => {
  const value = attributes.get(name)
  if (value === undefined) throw new Error(`a step lacks its “${name}”`)
  return value
}

const stepOf = (node: MdxNode, component: Component): StepOutline => {
  const inside = componentsIn(node)
  return {
    id: required(component, 'id'),
    title: required(component, 'title'),
    figure: required(component, 'figure'),
    scene: {
      view: component.attributes.get('view'),
      layers: component.attributes.get('layers'),
      subject: component.attributes.get('subject'),
      also: component.attributes.get('also'),
      hand: component.attributes.get('hand'),
    },
    state: required(component, 'state'),
    words: wordsOf(node),
    predictions: inside.flatMap((each) => (each.component.name === 'Predict' ? [each.component] : [])),
    notes: inside.flatMap((each) => (each.component.name === 'Notes' ? [wordsOf(each.node)] : [])),
  }
}

/** Words read in a minute, an ordinary pace for plain prose. */
const wordsPerMinute = 200

const minutesToRead = (text: string): number => {
  const words = text.match(/[\p{L}\p{N}’'-]+/gu) ?? []
  return Math.max(1, Math.round(words.length / wordsPerMinute))
}

const read = (text: string): Outline => {
  const tree = parseMdx(text)
  const all = componentsIn(tree)
  const words = wordsOf(tree)
  return {
    steps: all.flatMap(({ node, component }) => (component.name === 'Step' ? [stepOf(node, component)] : [])),
    components: all.map(({ component }) => component),
    words,
    minutes: minutesToRead(words),
  }
}

/** A component with a text of its own, as it reads. */
export interface Passage {
  readonly attributes: Component['attributes']
  readonly words: string
}

/** The components of a name in a text in MDX, each with its own text as it reads, on one line. */
export const passagesOf = (text: string, name: string): Passage[] =>
  componentsIn(parseMdx(text)).flatMap(({ node, component }) =>
    component.name === name ? [{ attributes: component.attributes, words: wordsOf(node) }] : [],
  )

const outlines = new Map<string, Outline>()

/** The outline of a text in MDX, with or without its front matter; each text is read once. */
export const outlineOf = (text: string): Outline => {
  const outline = outlines.get(text) ?? read(text)
  outlines.set(text, outline)
  return outline
}
