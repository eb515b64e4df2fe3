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
