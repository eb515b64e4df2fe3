/**
 * Makes a memory of one thing for each slot: it is made again only where its key, all that it depends on, is another than
 * last time. So what has not moved is the very same object from pose to pose, and whatever is computed of it is known.
 */
export const createMemory = <Made>(): ((slot: string | number, key: string, make: () => Made) => Made) => {
  const known = new Map<string | number, { readonly key: string; readonly made: Made }>()
  return (slot, key, make) => {
    const last = known.get(slot)
    if (last?.key === key) return last.made
    const made = make()
    known.set(slot, { key, made })
    return made
  }
}
