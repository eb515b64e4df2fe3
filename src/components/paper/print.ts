/** Prints the page once its pictures have arrived; one that can't be had is left out. */
export const printWhole = async (): Promise<void> => {
  await Promise.allSettled([...document.images].map((image) => image.decode()))
  print()
}
