import { createScanner, findNodeAtLocation, type Node, type ParseError, parseTree } from 'jsonc-parser'
import { quote } from '../link/troubles.ts'

/** Why a file can't be read, in one sentence for its writer. */
export class BadFile extends Error {}

/** A value's way through a document: the names and numbers (from 0) that lead to it. */
export type Path = readonly (string | number)[]

/** A JSON document, and where in its text its values are. */
export interface JsonDocument {
  readonly value: unknown
  /** The line, from 1, on which the value of a path begins; that of the nearest value around it where it is missing. */
  readonly lineOf: (path: Path) => number
}

/** Deeper than anything that a file here needs; reading much deeper would overflow the stack. */
const deepest = 100

// The scanner's kinds of token are ambient constants, which Node can't import.
const openers: readonly number[] = [1, 3]
const closers: readonly number[] = [2, 4]
const endOfFile: number = 17

/** The line, from 1, of an offset in a text. */
const lineAt = (text: string, offset: number): number => text.slice(0, offset).split(/\r\n|[\n\r]/).length

/** Where the first bracket that is nested too deeply is; null where there is none. */
const tooDeepAt = (text: string): number | null => {
  const scanner = createScanner(text, true)
  let depth = 0
  for (let token: number = scanner.scan(); token !== endOfFile; token = scanner.scan()) {
    if (openers.includes(token)) depth++
    if (closers.includes(token)) depth--
    if (depth > deepest) return scanner.getTokenOffset()
  }
  return null
}

/** The first name, in the text's order, that one object has twice; null where there is none. */
const repeatedName = ({ type, children = [] }: Node): Node | null => {
  const names = new Set<unknown>()
  for (const child of children) {
    const name = type === 'object' ? child.children?.[0] : undefined
    if (name && names.has(name.value)) return name
    names.add(name?.value)
    const within = repeatedName(child)
    if (within) return within
  }
  return null
}

/**
 * Parses strict JSON: no comments, no trailing commas, no name twice in one object.
 * Throws a `BadFile` that names the line of what is wrong first.
 */
export const parseJson = (text: string): JsonDocument => {
  if (text.trim() === '') throw new BadFile('The file is empty.')
  const deep = tooDeepAt(text)
  if (deep !== null)
    throw new BadFile(`Line ${lineAt(text, deep)}: lists and objects are more than ${deepest} deep.`)
  const errors: ParseError[] = []
  const root = parseTree(text, errors, { disallowComments: true, allowTrailingComma: false })
  if (!root || errors.length > 0) {
    const offset = errors.reduce((least, error) => Math.min(least, error.offset), text.length)
    throw new BadFile(`Line ${lineAt(text, offset)} is not JSON as it should be.`)
  }
  const twice = repeatedName(root)
  if (twice)
    throw new BadFile(`Line ${lineAt(text, twice.offset)}: ${quote(String(twice.value))} is there twice.`)
  const lineOf = (path: Path): number => {
    const node = findNodeAtLocation(root, [...path])
    return node ? lineAt(text, node.offset) : lineOf(path.slice(0, -1))
  }
  return { value: JSON.parse(text), lineOf }
}
