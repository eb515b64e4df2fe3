const escapes: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' }

/** Words as text or an attribute of XML or HTML, without the characters that it may not have (XML 1.0, section 2.2). */
export const escaped = (words: string): string =>
  words
    .replace(/[^\P{Cc}\n\t]|\p{Cs}|[\ufffe\uffff]/gu, '')
    .replace(/[&<>"]/g, (character) => escapes[character] ?? character)

/** An element as XML; its attributes are escaped here, its inside is XML already. */
export const tag = (
  name: string,
  attributes: Readonly<Record<string, string | number>>,
  inside = '',
): string => {
  const written = Object.entries(attributes)
    .map(([attribute, value]) => ` ${attribute}="${escaped(String(value))}"`)
    .join('')
  return inside === '' ? `<${name}${written}/>` : `<${name}${written}>${inside}</${name}>`
}
