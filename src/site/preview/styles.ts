import tokens from '../../styles/tokens.css?raw'

const [, light = ''] = /:root \{([^}]*)\}/.exec(tokens) ?? []
const values = new Map(
  [...light.matchAll(/--([a-z]+): ([^;]+);/g)].map(([, name = '', value = '']) => [name, value]),
)

/** Styles with the light scheme's values in place of the tokens' names. Throws where there is no such token. */
const withTokens = (text: string): string =>
  text.replace(/var\(--([a-z]+)\)/g, (_, name: string) => {
    const value = values.get(name)
    if (value === undefined) throw new Error(`tokens.css has no --${name}, which a preview picture needs`)
    return value
  })

/** The styles of a preview picture: its two grounds and the three kinds of text. */
export const previewStyles = withTokens(`
.table { fill: var(--shade); }
.ground { fill: var(--paper); }
.site { fill: var(--soft); font-family: var(--sans); font-weight: 600; }
.title { fill: var(--ink); font-family: var(--serif); font-weight: 600; }
.shows { fill: var(--ink); font-family: var(--sans); font-weight: 500; }`)
