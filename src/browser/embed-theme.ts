/** Colours that whoever embeds a figure chose for it. */
export type Theme = 'light' | 'dark'

/** The colours that a query asks for; null where it asks for none, or for some that there are not. */
export const themeOf = (query: string): Theme | null => {
  const theme = new URLSearchParams(query).get('theme')
  return theme === 'light' || theme === 'dark' ? theme : null
}
