/** A stranger's text on one line, without control characters, and cut after `most` characters. */
export const oneLine = (text: string, most: number): string => {
  const plain = Array.from(text.replace(/[\p{Cc}\p{Cf}\p{Cs}\p{Zl}\p{Zp}]/gu, '·'))
  return plain.length > most ? `${plain.slice(0, most).join('')}…` : plain.join('')
}

/** A stranger's text as it may stand in a sentence: short, and in quotation marks. */
export const quote = (text: string): string => `“${oneLine(text, 40)}”`
