/** Why a text is no JSON: the parser's message; null where it is. */
const complaint = (text: string): string | null => {
  try {
    JSON.parse(text)
    return null
  } catch (error) {
    return error instanceof Error ? error.message : ''
  }
}

/** Whether a text that is no JSON may become some if more follows. */
const mayGoOn = (text: string): boolean => {
  const message = complaint(text)
  if (message === null || /^Un(expected end|terminated string)/.test(message)) return true
  const place = /position (\d+)/.exec(message)
  return place !== null && Number(place[1]) >= text.trimEnd().length
}

/**
 * The line, from 1, at which a text that is no JSON first goes wrong; the last one where only its end is missing.
 * The parser does not always say where, so the lines are halved until the first bad one is found.
 */
export const badLine = (text: string): number => {
  const lines = text.split(/\r\n|[\n\r]/)
  let good = 0
  let bad = lines.length
  while (bad - good > 1) {
    const middle = Math.floor((good + bad) / 2)
    if (mayGoOn(lines.slice(0, middle).join('\n'))) good = middle
    else bad = middle
  }
  return bad
}
