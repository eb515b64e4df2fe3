/**
 * What was computed before, by a key that says all that it depends on. It forgets everything when it holds `most` entries,
 * so that it never grows further. A query whose notes differ by one needle then costs little.
 */
export class Memo<Value> {
  private readonly known = new Map<string, Value>()
  private readonly most: number

  constructor(most: number) {
    this.most = most
  }

  /** The value of a key; `make` computes it where it is not known. */
  of(key: string, make: () => Value): Value {
    const found = this.known.get(key)
    if (found !== undefined) return found
    if (this.known.size >= this.most) this.known.clear()
    const made = make()
    this.known.set(key, made)
    return made
  }
}
