/** The most characters of a worksheet's name. */
export const mostCharacters = 40

/** The worksheet that is shown where none is named. */
export const usualName = '1'

/** A worksheet's name in its one form, or a sentence that says why a text is none. */
export type NameReading = { readonly name: string } | { readonly name: null; readonly reason: string }

/** Reads a worksheet's name. Any text up to the limit is a name; capitals and spaces around it don't count. */
export const readName = (text: string): NameReading => {
  const name = text
    .toLowerCase()
    .normalize('NFC')
    .replace(/[\s\p{Cc}\p{Cf}\p{Cs}]+/gu, ' ')
    .trim()
  if (name === '') return { name: null, reason: 'A worksheet needs a name: a number, a word, or several.' }
  const { length } = Array.from(name)
  return length <= mostCharacters
    ? { name }
    : {
        name: null,
        reason: `A worksheet’s name may have ${mostCharacters} characters, and this one has ${length}.`,
      }
}

/** The name after this one, for a class in which each has a sheet of her own: 7 and 8, tuesday and tuesday 2. */
export const nextName = (name: string): string => {
  const [, before = '', digits] = /^(.*?)(\d{1,6})?$/.exec(name) ?? []
  const next = digits === undefined ? `${name} 2` : `${before}${Number(digits) + 1}`
  return Array.from(next).length <= mostCharacters ? next : usualName
}
