/** A value's way through a document: the names and numbers that lead to it. */
export type Path = readonly (string | number)[]

/** Where the values of a JSON document stand in its text. */
export interface Places {
  /** The line, from 1, on which the value of a path begins; that of the nearest value around it where there is none. */
  readonly lineOf: (path: Path) => number
  /** A name that one object has twice, and the line of the second; null where each stands once. */
  readonly twice: { readonly name: string; readonly line: number } | null
}

/** An object or a list that is being read: its own path, and the name or the number of what comes next. */
interface Open {
  readonly path: Path
  readonly isList: boolean
  readonly names: Set<string>
  next: string | number | null
}

/** Values deeper than this are no part of a file that anybody would write here. */
const deepest = 8

const words = /"(?:[^"\\]|\\.)*"|[[\]{}:,]|[^\s[\]{}:,"]+/gs

/** Finds the places of values in a text that is JSON. */
export const placesIn = (text: string): Places => {
  const lines = new Map<string, number>()
  const open: Open[] = []
  let twice: Places['twice'] = null
  let line = 1
  let from = 0
  const lineAt = (offset: number): number => {
    line += text.slice(from, offset).split(/\r\n|[\n\r]/).length - 1
    from = offset
    return line
  }
  for (const { 0: word, index } of text.matchAll(words)) {
    const top = open.at(-1)
    if (word === ':') continue
    if (word === '}' || word === ']') open.pop()
    else if (word === ',') {
      if (top) top.next = typeof top.next === 'number' ? top.next + 1 : null
    } else if (top && !top.isList && top.next === null) {
      const name = String(JSON.parse(word))
      if (top.names.has(name)) twice ??= { name, line: lineAt(index) }
      top.names.add(name)
      top.next = name
    } else {
      const path = top ? [...top.path, top.next ?? 0].slice(0, deepest) : []
      const key = JSON.stringify(path)
      if (!lines.has(key)) lines.set(key, lineAt(index))
      if (word === '{' || word === '[')
        open.push({ path, isList: word === '[', names: new Set(), next: word === '[' ? 0 : null })
    }
  }
  const lineOf = (path: Path): number =>
    lines.get(JSON.stringify(path)) ?? (path.length === 0 ? 1 : lineOf(path.slice(0, -1)))
  return { lineOf, twice }
}
