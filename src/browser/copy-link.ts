import { isOnlyHere, onlyHere, shareable } from './share.ts'

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
  const shared = shareable(link)
  const whole = (words: string): string => (isOnlyHere(shared) ? `${words} ${onlyHere}` : words)
  field.value = shared
  const byHand = (): void => {
    field.hidden = false
    field.select()
    say(whole('The browser does not let this page copy. Here is the link to copy by hand.'))
  }
  // Without https there is no clipboard at all, whatever the types say.
  try {
    navigator.clipboard.writeText(shared).then(() => {
      field.hidden = true
      say(whole(done))
    }, byHand)
  } catch {
    byHand()
  }
}
