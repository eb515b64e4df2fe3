import { rest } from '../../browser/yield-to-browser.ts'
import { gather } from './gather.ts'

/** Fetches what nobody has scrolled to yet, a little at a time, for readers who print by the browser's own command. */
export const fetchRest = async (): Promise<void> => {
  await rest()
  await gather()
  for (const image of document.images) {
    await rest()
    image.loading = 'eager'
  }
}

/** Prints the page once all of it has arrived; a picture that can't be fetched is left out. */
export const printWhole = async (): Promise<void> => {
  await gather()
  for (const image of document.images) image.loading = 'eager'
  await Promise.allSettled([...document.images].map((image) => image.decode()))
  print()
}
