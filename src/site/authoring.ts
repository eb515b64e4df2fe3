import { visit } from 'unist-util-visit'
import { readSceneStep } from '../words/figures/scene-step.ts'
import { blanked, type Component, componentOf, type MdxTree, parseMdx } from './mdx.ts'

/** What chapters may refer to. */
export interface Known {
  readonly terms: ReadonlySet<string>
  readonly cautions: ReadonlySet<string>
  readonly sources: ReadonlySet<string>
  readonly truths: ReadonlySet<string>
  readonly figures: ReadonlySet<string>
  readonly facts: ReadonlySet<string>
  /** What is wrong with a state's text; null where it is sound. */
  readonly stateTrouble: (text: string) => string | null
}

/** A mistake in a chapter's file, with its line, from 1. */
export interface Mistake {
  readonly line: number
  readonly message: string
}

/** The components that every chapter may use. */
const chapterComponents = [
  'Step',
  'Predict',
  'Term',
  'N',
  'Go',
  'Caution',
  'Source',
  'Ours',
  'Notes',
] as const
const predictions: ReadonlySet<string> = new Set(['needle', 'pattern', 'count', 'row', 'choice'])

/** An attribute that must name one of a closed list. */
interface Reference {
  readonly component: string
  readonly attribute: string
  readonly among: ReadonlySet<string>
  /** What the list has, for the message. */
  readonly what: string
  /** Whether the attribute may be left out. */
  readonly isOptional?: boolean
}

const referencesTo = (known: Known): readonly Reference[] => [
  { component: 'Term', attribute: 'id', among: known.terms, what: 'term' },
  { component: 'Caution', attribute: 'of', among: known.cautions, what: 'caution' },
  { component: 'Source', attribute: 'id', among: known.sources, what: 'source' },
  { component: 'Ours', attribute: 'id', among: known.truths, what: 'truth' },
  { component: 'N', attribute: 'of', among: known.facts, what: 'fact' },
  { component: 'Predict', attribute: 'of', among: predictions, what: 'kind of prediction' },
  { component: 'Step', attribute: 'figure', among: known.figures, what: 'figure' },
  { component: 'Go', attribute: 'figure', among: known.figures, what: 'figure', isOptional: true },
]

/** What is wrong with a reference; null where it names something that there is. */
const referenceTrouble = (
  { name, attributes }: Component,
  { attribute, among, what, isOptional = false }: Reference,
): string | null => {
  const value = attributes.get(attribute)
  if (value === undefined) return isOptional ? null : `<${name}> needs “${attribute}”`
  if (among.has(value)) return null
  return `there is no ${what} “${value}”; there are ${[...among].sort().join(', ')}`
}

/** What is wrong with how a step shows the machine in three dimensions; null where nothing is. */
const sceneTrouble = (attributes: Component['attributes']): string | null => {
  const [view, layers, subject, also, hand] = ['view', 'layers', 'subject', 'also', 'hand'].map((name) =>
    attributes.get(name),
  )
  const isScene = attributes.get('figure') === 'scene'
  if (!isScene) return view === undefined && layers === undefined ? null : 'only the figure “scene” has views'
  if (view === undefined || subject === undefined)
    return 'a step of the figure “scene” needs “view” and “subject”'
  try {
    readSceneStep({ view, layers, subject, also, hand })
    return null
  } catch (error) {
    if (error instanceof RangeError) return error.message
    throw error
  }
}

/** What is wrong with a component: an unknown name, an attribute that is missing, or one that refers to nothing. */
const componentTroubles = (component: Component, known: Known, names: readonly string[]): string[] => {
  const { name, attributes } = component
  if (!names.includes(name)) return [`there is no <${name}>; there are ${names.join(', ')}`]
  const troubles = referencesTo(known)
    .filter((reference) => reference.component === name)
    .flatMap((reference) => referenceTrouble(component, reference) ?? [])
  if (name === 'Step')
    for (const attribute of ['id', 'title', 'state'])
      if (!attributes.has(attribute)) troubles.push(`<Step> needs “${attribute}”`)
  const shown = name === 'Step' ? sceneTrouble(attributes) : null
  if (shown !== null) troubles.push(shown)
  const state = attributes.get('state')
  const trouble = state === undefined ? null : known.stateTrouble(state)
  if (trouble !== null) troubles.push(`the state “${state ?? ''}”: ${trouble}`)
  return troubles
}

/** Names of parts, in which a digit may be: R11, strip 3, columns 3, 11 and 19. Every other number is the model's. */
const partNames =
  /\b[LR]\d{1,3}\b|\b(?:strips?|columns?|rows?|pass(?:es)?|pins?|rockers?|needles?|chapters?|figures?)\s+\d+(?:(?:,\s*|\s+(?:and|or|to)\s+)\d+)*/gi

/** A text with everything but its words blanked out: components, attributes, list numbers and front matter. */
const wordsInPlace = (text: string, tree: MdxTree): string => {
  let end = 0
  const parts: string[] = []
  visit(tree, 'text', ({ position }) => {
    const [from, to] = [position?.start.offset ?? end, position?.end.offset ?? end]
    parts.push(blanked(text.slice(end, from)), text.slice(from, to))
    end = to
  })
  return parts.join('')
}

/** Numbers typed by hand, where the model has them. */
const typedNumbers = (text: string, tree: MdxTree): Mistake[] => {
  const words = wordsInPlace(text, tree).replace(partNames, blanked)
  return [...words.matchAll(/\d+/g)].map((match) => ({
    line: words.slice(0, match.index).split('\n').length,
    message: `the number ${match[0]} is typed by hand; use <N of="…" />`,
  }))
}

/** What a parser says where a text is no MDX, with its line. */
const asMistake = (error: unknown): Mistake => {
  if (!(error instanceof Error)) throw error
  const line = 'line' in error && typeof error.line === 'number' ? error.line : 1
  return { line, message: error.message }
}

/**
 * Reads a chapter's file for references to what is not there and for numbers typed by hand. `also` are components that a
 * file may use beside a chapter's. A text that is not MDX at all is one mistake.
 */
export const mistakesIn = (text: string, known: Known, also: readonly string[] = []): Mistake[] => {
  const mistakes: Mistake[] = []
  let tree: MdxTree
  try {
    tree = parseMdx(text)
  } catch (error) {
    return [asMistake(error)]
  }
  const names = [...chapterComponents, ...also]
  visit(tree, (node) => {
    const component = componentOf(node)
    if (!component) return
    const line = node.position?.start.line ?? 1
    for (const message of componentTroubles(component, known, names)) mistakes.push({ line, message })
  })
  mistakes.push(...typedNumbers(text, tree))
  return mistakes.sort((a, b) => a.line - b.line)
}
