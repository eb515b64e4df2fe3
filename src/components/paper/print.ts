import { rest } from '../machine/breathe.ts'

/** Fetches the pictures that nobody has come to yet, by and by, for whoever prints by the browser's own command. */
export const fetchRest = async (): Promise<void> => {
  for (const image of document.images) {
    await rest()
    image.loading = 'eager'
  }
}

/** Prints the page once its pictures have arrived; one that can't be had is left out. */
export const printWhole = async (): Promise<void> => {
  for (const image of document.images) image.loading = 'eager'
  await Promise.allSettled([...document.images].map((image) => image.decode()))
  print()
}
