import { quote, type Troubles } from './troubles.ts'

const keys = ['v', 'card', 'pass', 'at', 'break', 'speed', 'wear', 'seed', 'needles', 'note'] as const
export type Key = (typeof keys)[number]

/** How many unknown names are said one by one. */
const mostNamed = 3

/** What a link gives for each key, unread: the last value of each, and every fault in turn. */
export interface Pairs {
  readonly values: ReadonlyMap<Key, string>
  readonly breaks: readonly string[]
}

/** Takes a link's text apart (with or without its `#`). */
export const pairsOf = (text: string, troubles: Troubles): Pairs => {
  const values = new Map<Key, string>()
  const breaks: string[] = []
  const repeated = new Set<Key>()
  const strange = new Set<string>()
  for (const [name, value] of new URLSearchParams(text.replace(/^[#?]/, ''))) {
    const key = keys.find((known) => known === name)
    if (!key) strange.add(name)
    else if (key === 'break') breaks.push(value)
    else {
      if ((values.get(key) ?? value) !== value) repeated.add(key)
      values.set(key, value)
    }
  }
  for (const key of repeated)
    troubles.changed(`The link gives “${key}” more than once; the last, ${quote(values.get(key)!)}, stands.`)
  for (const name of [...strange].slice(0, mostNamed))
    troubles.leftOut(`This site doesn't know ${quote(name)}, so it is left out.`)
  const more = strange.size - mostNamed
  if (more > 0) {
    const which = more === 1 ? '1 more name' : `${more} more names`
    troubles.leftOut(`${which} that this site does not know ${more === 1 ? 'is' : 'are'} left out.`)
  }
  return { values, breaks }
}
