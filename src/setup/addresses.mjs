import { Stop } from './say.mjs'

const host = 'https://example.org'

/** @param {string} site @returns {string | null} what is wrong with SITE; null for nothing */
function siteTrouble(site) {
  const url = URL.canParse(site) ? new URL(site) : null
  if (!url || !/^https?:\/\//i.test(site.trim()) || url.username !== '' || url.password !== '')
    return `SITE is “${site}”, but it must be the whole address of a site, such as ${host}.`
  if (url.pathname !== '/')
    return `SITE is “${site}”, but a path does not belong to it. Give the path as BASE: BASE=${url.pathname.replace(/\/*$/, '/')} SITE=${url.origin}`
  if (url.search !== '' || url.hash !== '')
    return `SITE is “${site}”, but it must end with the host, such as ${host}.`
  return null
}

/** @param {string} base @returns {string | null} what is wrong with BASE; null for nothing */
function baseTrouble(base) {
  const names = base.split('/').filter((name) => name !== '')
  const isPath = !base.includes('//') && names.every((name) => /^[\w.~-]+$/.test(name) && !/^\.+$/.test(name))
  return isPath
    ? null
    : `BASE is “${base}”, but it must be a path of plain letters, digits and “-”, “_”, “.” or “~”, such as /machines/.`
}

/** @param {string} port @returns {string | null} what is wrong with PORT; null for nothing */
const portTrouble = (port) =>
  /^[1-9]\d{0,4}$/.test(port) && Number(port) <= 65535
    ? null
    : `PORT is “${port}”, but it must be a whole number from 1 to 65535.`

/**
 * Throws a Stop that says what is wrong with the addresses that the surroundings give, before anything is built with them:
 * SITE, the site's own address without a path; BASE, its path; PORT, where it is served.
 * @param {NodeJS.ProcessEnv} env
 */
export function checkAddresses(env) {
  for (const [name, troubleOf] of /** @type {const} */ ([
    ['SITE', siteTrouble],
    ['BASE', baseTrouble],
    ['PORT', portTrouble],
  ])) {
    const value = env[name] ?? ''
    const trouble = value === '' ? null : troubleOf(value)
    if (trouble !== null) throw new Stop(trouble)
  }
}

/** @param {NodeJS.ProcessEnv} env @returns {string} the site's path, with a stroke at both ends */
export const basePath = (env) => `/${env['BASE'] ?? ''}/`.replace(/\/+/g, '/')

/** Networks of a machine with itself: of its containers, virtual machines and tunnels. */
const virtual =
  /^(docker|br-|veth|virbr|vmnet|vboxnet|vEthernet|lxc|lxd|podman|cni|tun|tap|utun|wg|zt|tailscale)/i

/**
 * The addresses at which others on the same network reach this machine, the likeliest first: of IPv4, which phones can
 * be given by hand, without those that every machine has for itself.
 * @param {NodeJS.Dict<import('node:os').NetworkInterfaceInfo[]>} interfaces as `networkInterfaces` gives them
 * @returns {string[]}
 */
export function networkAddresses(interfaces) {
  const found = Object.entries(interfaces).flatMap(([name, infos = []]) =>
    infos
      .filter(
        ({ family, internal, address }) => family === 'IPv4' && !internal && !address.startsWith('169.254.'),
      )
      .map(({ address }) => ({ address, isVirtual: virtual.test(name) })),
  )
  return [...found.filter(({ isVirtual }) => !isVirtual), ...found.filter(({ isVirtual }) => isVirtual)].map(
    ({ address }) => address,
  )
}
