import { readdirSync, readFileSync } from 'node:fs'

const folder = new URL('../../content/chapters/', import.meta.url)

/** How many steps a chapter has, as it is written. */
export const stepCount = (slug: string): number => {
  const file = readdirSync(folder).find((name) => name.endsWith(`-${slug}.mdx`)) ?? ''
  return readFileSync(new URL(file, folder), 'utf8').match(/^<Step /gm)?.length ?? 0
}

/** How a class view says which of a chapter's steps it shows; the chapter's last without a number. */
export const stepPlace = (slug: string, step = stepCount(slug)): RegExp =>
  new RegExp(`^Step ${step} of ${stepCount(slug)}`)
