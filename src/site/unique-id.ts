const counts = new WeakMap<Request, number>()

/** A number that is unique on its page, the same in every build: the page's elements count themselves. */
export const uniqueOnPage = (request: Request): number => {
  const count = (counts.get(request) ?? 0) + 1
  counts.set(request, count)
  return count
}
