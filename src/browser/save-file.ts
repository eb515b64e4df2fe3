import { element } from './dom.ts'

/** How long a file's address is kept for the browser to save it, in ms. */
const kept = 60_000

/** The most characters of a title that a file's name keeps. */
export const nameCharacters = 40

/** The first characters of a text, none of them parted from its marks. */
const firstCharacters = (text: string, most: number): string => {
  let length = 0
  let kept = ''
  for (const { segment } of new Intl.Segmenter().segment(text)) {
    length += Array.from(segment).length
    if (length > most) break
    kept += segment
  }
  return kept
}

/**
 * A title as the name of a file: in small letters, with all their marks, and a hyphen for what is between words; `usual`
 * where nothing of the title is left.
 */
export const fileName = (title: string, usual: string, ending: string): string => {
  const plain = title
    .normalize('NFC')
    .toLowerCase()
    .replace(/[^\p{L}\p{M}\p{N}]+/gu, '-')
    .replace(/^-+|-+$/g, '')
  return `${firstCharacters(plain, nameCharacters) || usual}.${ending}`
}

/** Hands a file to the browser to save. */
export const saveFile = (name: string, content: Blob): void => {
  const address = URL.createObjectURL(content)
  element('a', { href: address, download: name }).click()
  setTimeout(() => {
    URL.revokeObjectURL(address)
  }, kept)
}
