import { rest } from '../../browser/yield-to-browser.ts'
import { gather } from './gather.ts'

/** Brings here what nobody has come to yet, by and by, for whoever prints by the browser's own command. */
export const fetchRest = async (): Promise<void> => {
  await rest()
  await gather()
  for (const image of document.images) {
    await rest()
    image.loading = 'eager'
  }
}

/** Prints the page once all of it has arrived; a picture that can't be had is left out. */
export const printWhole = async (): Promise<void> => {
  await gather()
  for (const image of document.images) image.loading = 'eager'
  await Promise.allSettled([...document.images].map((image) => image.decode()))
  print()
}
