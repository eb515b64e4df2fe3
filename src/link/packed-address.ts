/**
 * An address of the site as a page opened from files needs it: relative, and with the name of the file that a server
 * would choose. What leads out of the site, or only within the page, stays as it is.
 * @param base the site's own path, with a stroke at its end
 * @param root the way from the page to the site's folder, such as `../`
 */
export const packedAddress = (address: string, base: string, root: string): string => {
  const path = address.split(/[?#]/)[0] ?? ''
  if (path === '' || /^([a-z][a-z0-9+.-]*:|\/\/)/i.test(path)) return address
  const rest = address.slice(path.length)
  const inside = `${path}/`.startsWith(base) ? root + path.slice(base.length) : path
  if (inside.endsWith('/')) return `${inside}index.html${rest}`
  const isFile = (inside.split('/').at(-1) ?? '').includes('.')
  return isFile ? inside + rest : `${inside}/index.html${rest}`
}
