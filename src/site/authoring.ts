/** What chapters may refer to. */
export interface Known {
  readonly terms: ReadonlySet<string>
  readonly cautions: ReadonlySet<string>
  readonly sources: ReadonlySet<string>
  readonly figures: ReadonlySet<string>
  readonly facts: ReadonlySet<string>
  /** What is wrong with a state's text; null where it reads. */
  readonly stateTrouble: (text: string) => string | null
}

/** A mistake in a chapter's file, with the line it stands on, from 1. */
export interface Mistake {
  readonly line: number
  readonly message: string
}

interface Tag {
  readonly name: string
  readonly attributes: ReadonlyMap<string, string>
  readonly index: number
}

const components = ['Step', 'Predict', 'Term', 'N', 'Go', 'Caution', 'Source', 'Notes'] as const
const predictions = ['needle', 'pattern', 'count', 'row', 'choice']

/** An opening tag; attributes hold no `>` outside quotation marks and braces. */
const tagPattern = /<([A-Z]\w*)((?:\s+[a-z]\w*(?:=(?:"[^"]*"|\{[^}]*\}))?)*)\s*\/?>/g

const tagsOf = (text: string): Tag[] =>
  [...text.matchAll(tagPattern)].map((match) => ({
    name: match[1] ?? '',
    attributes: new Map(
      [...(match[2] ?? '').matchAll(/([a-z]\w*)(?:=(?:"([^"]*)"|\{([^}]*)\}))?/g)].map((pair) => [
        pair[1] ?? '',
        pair[2] ?? pair[3] ?? '',
      ]),
    ),
    index: match.index,
  }))

/** What stands wrong in a tag: an unknown name, or an attribute that refers to nothing. */
const tagTroubles = (tag: Tag, known: Known, names: readonly string[]): string[] => {
  const troubles: string[] = []
  const refer = (attribute: string, those: ReadonlySet<string>, what: string): void => {
    const value = tag.attributes.get(attribute)
    if (value === undefined) troubles.push(`<${tag.name}> needs “${attribute}”`)
    else if (!those.has(value))
      troubles.push(`there is no ${what} “${value}”; there are ${[...those].sort().join(', ')}`)
  }
  if (!names.includes(tag.name)) return [`there is no <${tag.name}>; there are ${names.join(', ')}`]
  if (tag.name === 'Term') refer('id', known.terms, 'term')
  if (tag.name === 'Caution') refer('of', known.cautions, 'caution')
  if (tag.name === 'Source') refer('id', known.sources, 'source')
  if (tag.name === 'N') refer('of', known.facts, 'fact')
  if (tag.name === 'Predict') refer('of', new Set(predictions), 'kind of prediction')
  if (tag.name === 'Step') {
    refer('figure', known.figures, 'figure')
    for (const name of ['id', 'title', 'state'])
      if (!tag.attributes.has(name)) troubles.push(`<Step> needs “${name}”`)
  }
  if (tag.name === 'Go' && tag.attributes.has('figure')) refer('figure', known.figures, 'figure')
  const state = tag.attributes.get('state')
  const trouble = state === undefined ? null : known.stateTrouble(state)
  if (trouble !== null) troubles.push(`the state “${state ?? ''}”: ${trouble}`)
  return troubles
}

/** Part names in which a digit may stand: R11, strip 3, columns 3, 11 and 19. Every other number is the model's. */
const partNames =
  /\b[LR]\d{1,3}\b|\b(?:strips?|columns?|rows?|pass(?:es)?|pins?|rockers?|needles?|chapters?|figures?)\s+\d+(?:(?:,\s*|\s+(?:and|or|to)\s+)\d+)*/gi

/** Blanks out a stretch of text, so that what follows keeps its line. */
const blank = (text: string): string => text.replace(/[^\n]/g, ' ')

/**
 * Reads a chapter's file for references to what is not there and for numbers typed by hand; `also` are components that a
 * file may use beside a chapter's.
 */
export const mistakesIn = (text: string, known: Known, also: readonly string[] = []): Mistake[] => {
  const names = [...components, ...also]
  const lineOf = (index: number): number => text.slice(0, index).split('\n').length
  const mistakes = tagsOf(text).flatMap((tag) =>
    tagTroubles(tag, known, names).map((message) => ({ line: lineOf(tag.index), message })),
  )
  const prose = text
    .replace(/^---\n[\s\S]*?\n---\n/, blank)
    .replace(tagPattern, blank)
    .replace(/^\s*\d+\. /gm, blank)
    .replace(/\{[^}]*\}/g, blank)
    .replace(partNames, blank)
  for (const match of prose.matchAll(/\d+/g))
    mistakes.push({
      line: lineOf(match.index),
      message: `the number ${match[0]} is typed by hand; use <N of="…" />`,
    })
  return mistakes.sort((a, b) => a.line - b.line)
}
