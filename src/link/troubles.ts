/** One plain sentence about a part of a link that could not be read (left out) or was changed. */
export interface Trouble {
  readonly kind: 'left out' | 'changed'
  readonly sentence: string
}

/** Collects what there is to say while a link is read. */
export class Troubles {
  readonly all: Trouble[] = []

  leftOut(sentence: string): void {
    this.all.push({ kind: 'left out', sentence })
  }

  changed(sentence: string): void {
    this.all.push({ kind: 'changed', sentence })
  }
}

/** A stranger's text on one line, without control characters, and cut after `most` characters. */
export const oneLine = (text: string, most: number): string => {
  const plain = Array.from(text.replace(/[\p{Cc}\p{Cf}\p{Cs}\p{Zl}\p{Zp}]/gu, '·'))
  return plain.length > most ? `${plain.slice(0, most).join('')}…` : plain.join('')
}

/** A stranger's text as it may appear in a sentence: short, and in quotation marks. */
export const quote = (text: string): string => `“${oneLine(text, 40)}”`
