/**
 * Copies a link and says so with `done`; where the browser does not let the page, the link stands in its field to be
 * copied by hand.
 */
export const copyLink = (
  field: HTMLInputElement,
  link: string,
  done: string,
  say: (words: string) => void,
): void => {
  field.value = link
  const byHand = (): void => {
    field.hidden = false
    field.select()
    say('The browser does not let this page copy. Here is the link to copy by hand.')
  }
  // Without https there is no clipboard at all, whatever the types say.
  try {
    navigator.clipboard.writeText(link).then(() => {
      field.hidden = true
      say(done)
    }, byHand)
  } catch {
    byHand()
  }
}
