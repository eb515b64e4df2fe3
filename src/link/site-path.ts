/** The site's own path, without a stroke at its end: every address within the site begins with it. */
export const base = import.meta.env.BASE_URL.replace(/\/$/, '')
