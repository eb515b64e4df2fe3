import { randomId } from './random-id.ts'
import type { Shelf } from './shelf.ts'
import { allUnkept, forgetUnkept, type Unkept } from './unkept.ts'
import { jobName } from './words.ts'

/** Keeps one; gives a sentence where it had to become a copy. Pictures that were not kept in time are not in it. */
const keepOne = async ({ job, base }: Unkept, shelf: Shelf): Promise<string | null> => {
  const pictures = new Set((await shelf.photos(job.id)).map(({ id }) => id))
  const whole = { ...job, photos: job.photos.filter(({ id }) => pictures.has(id)) }
  const how = await shelf.keep(whole, base)
  if (how === 'full' || how === 'refused') return null
  if (how === 'kept' || (await shelf.get(job.id)) === null) {
    forgetUnkept(job.id)
    return null
  }
  const copy = { ...whole, id: randomId(), name: `${jobName(job)} (copy)`, photos: [] }
  // Where there is no room for it, the change stays noted until there is.
  if ((await shelf.keep(copy, null)) !== 'kept') return null
  forgetUnkept(job.id)
  return `“${jobName(job)}” was changed in another window meanwhile, so what you changed last is in “${copy.name}”.`
}

/** Keeps what a page before this one had no time to keep; gives what is to be said of it. */
export const keepUnkept = async (shelf: Shelf): Promise<readonly string[]> => {
  if (shelf.trouble) return []
  const said: string[] = []
  for (const unkept of allUnkept()) {
    const words = await keepOne(unkept, shelf)
    if (words !== null) said.push(words)
  }
  return said
}
