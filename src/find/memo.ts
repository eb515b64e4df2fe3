/**
 * What was computed before, by a key that says all that it depends on. It holds `most` entries that were asked for lately and
 * at most as many of before, so that it never grows further. A query whose notes differ by one needle then costs little.
 */
export class Memo<Value> {
  private lately = new Map<string, Value>()
  private before = new Map<string, Value>()
  private readonly most: number

  constructor(most: number) {
    this.most = most
  }

  /** How many entries it holds. */
  get size(): number {
    return this.lately.size + this.before.size
  }

  /** The value of a key where it is known. */
  get(key: string): Value | undefined {
    const found = this.lately.get(key)
    if (found !== undefined) return found
    const earlier = this.before.get(key)
    if (earlier !== undefined) {
      this.before.delete(key)
      this.keep(key, earlier)
    }
    return earlier
  }

  /** The value of a key; `make` computes it where it is not known. */
  of(key: string, make: () => Value): Value {
    const found = this.get(key)
    if (found !== undefined) return found
    const made = make()
    this.keep(key, made)
    return made
  }

  private keep(key: string, value: Value): void {
    if (this.lately.size >= this.most) {
      this.before = this.lately
      this.lately = new Map<string, Value>()
    }
    this.lately.set(key, value)
  }
}

/** A short name for each text of a kind: the same for the same text for as long as it is remembered. */
export const shortNames = (most: number): ((text: string) => string) => {
  const names = new Memo<string>(most)
  let count = 0
  return (text) => names.of(text, () => String(count++))
}
