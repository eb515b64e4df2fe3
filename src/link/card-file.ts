import { type CardFile, rowText } from './card-text.ts'
import { oneLine } from './troubles.ts'

/** A field of a card's file: on one line, and never empty. */
const field = (text: string, usual: string): string => oneLine(text, 80).trim() || usual

/** Writes a card's file so that `readCardFile` gives it back. */
export const writeCardFile = ({ title, about, rows }: CardFile): string =>
  [
    `title: ${field(title, 'Own card')}`,
    `about: ${field(about, 'A card of its own.')}`,
    '',
    ...rows.map(rowText),
    '',
  ].join('\n')
