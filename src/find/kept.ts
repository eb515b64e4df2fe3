/** What was made of some keys, and where what was made of these and further ones is. */
class Node<Value> {
  value: Value | undefined
  private readonly byObject = new WeakMap<object, Node<Value>>()
  private readonly byNumber = new Map<number, Node<Value>>()

  next(key: object | number): Node<Value> {
    const found = typeof key === 'number' ? this.byNumber.get(key) : this.byObject.get(key)
    if (found) return found
    const made = new Node<Value>()
    if (typeof key === 'number') this.byNumber.set(key, made)
    else this.byObject.set(key, made)
    return made
  }
}

/** A function of objects, and perhaps numbers, that keeps what it gave for as long as those objects are in use. */
export const keptFor = <Keys extends readonly [object, ...(object | number)[]], Value extends object>(
  make: (...keys: Keys) => Value,
): ((...keys: Keys) => Value) => {
  const root = new Node<Value>()
  return (...keys) => {
    let node = root
    for (const key of keys) node = node.next(key)
    return (node.value ??= make(...keys))
  }
}
