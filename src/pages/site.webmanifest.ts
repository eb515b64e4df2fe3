import { base } from '../link/site-path.ts'
import type { APIRoute } from 'astro'
import { iconKinds, iconSizes } from '../site/icon.ts'

const icons = iconKinds.flatMap((kind) =>
  iconSizes
    .filter((size) => size !== 180)
    .map((size) => ({
      src: `${base}/icons/${kind}-${size}.png`,
      sizes: `${size}x${size}`,
      type: 'image/png',
      purpose: kind === 'mask' ? 'maskable' : 'any',
    })),
)

/** What a device needs to know to install the site (W3C, Web Application Manifest). Colours as in tokens.css. */
const manifest = {
  id: `${base}/`,
  name: 'Every Eighth Needle',
  short_name: 'Eighth Needle',
  description: 'How a punched card selects needles in a knitting machine, drawn and explained',
  lang: 'en-GB',
  dir: 'ltr',
  start_url: `${base}/`,
  scope: `${base}/`,
  display: 'standalone',
  background_color: '#faf6ee',
  theme_color: '#faf6ee',
  icons: [{ src: `${base}/icon.svg`, sizes: 'any', type: 'image/svg+xml', purpose: 'any' }, ...icons],
}

export const GET: APIRoute = () =>
  new Response(JSON.stringify(manifest), { headers: { 'Content-Type': 'application/manifest+json' } })
