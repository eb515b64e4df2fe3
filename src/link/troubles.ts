/** A part of a link that could not be read (left out) or was changed. */
export interface Trouble {
  readonly kind: 'left out' | 'changed'
  /** What is wrong and what is done about it, in one plain sentence. */
  readonly sentence: string
  /** What is wrong alone, for who refuses such a link. */
  readonly problem: string
}

/** How many more troubles there are of a kind of which one is said, as a sentence; empty for none. */
export const andMore = (count: number): string => (count > 0 ? `And ${count} more of this kind.` : '')

/**
 * Collects what there is to say while a link is read. Of all troubles that are about the same, only the first is said,
 * and how many more there are: a link with hundreds of them must not fill the page.
 */
export class Troubles {
  private readonly found = new Map<string, { readonly first: Trouble; count: number }>()

  private add(about: string, first: Trouble): void {
    const same = this.found.get(about)
    if (same) same.count++
    else this.found.set(about, { first, count: 1 })
  }

  /**
   * `about` is the same word for all troubles of a kind. `problem` is a sentence; `remedy` says what is done, in the place
   * of the sentence's full stop.
   */
  leftOut(about: string, problem: string, remedy = '.'): void {
    this.add(about, { kind: 'left out', problem, sentence: problem.slice(0, -1) + remedy })
  }

  /** `about` is the same word for all troubles of a kind. */
  changed(about: string, sentence: string): void {
    this.add(about, { kind: 'changed', problem: sentence, sentence })
  }

  /** One trouble a kind, in the order in which the kinds came. */
  get all(): readonly Trouble[] {
    return [...this.found.values()].map(({ first, count }) =>
      count === 1 ? first : { ...first, sentence: `${first.sentence} ${andMore(count - 1)}` },
    )
  }
}

/** A stranger's text on one line, without control characters, and cut after `most` characters. */
export const oneLine = (text: string, most: number): string => {
  const plain = Array.from(text.replace(/[\p{Cc}\p{Cf}\p{Cs}\p{Zl}\p{Zp}]/gu, '·'))
  return plain.length > most ? `${plain.slice(0, most).join('')}…` : plain.join('')
}

/** A stranger's text as it may appear in a sentence: short, and in quotation marks. */
export const quote = (text: string): string => `“${oneLine(text, 40)}”`
