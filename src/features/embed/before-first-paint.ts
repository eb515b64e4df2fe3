/**
 * Runs in an embedded figure’s page before it is drawn: where its address chooses the colours, each rule that asks which
 * the reader prefers is made to hold, or not to. Else the page’s colours follow the page round it, as browsers do it.
 * Where the address asks for another picture than the one built into the page, that waits out of sight.
 */
import { namesState } from '../../browser/names-state.ts'
import { themeOf } from '../../browser/embed-theme.ts'

const asked = '(prefers-color-scheme: dark)'

const choose = (rules: CSSRuleList, isDark: boolean): void => {
  for (const rule of rules)
    if (rule instanceof CSSMediaRule && rule.media.mediaText === asked)
      rule.media.mediaText = isDark ? 'all' : 'not all'
}

const theme = themeOf(location.search)
if (theme !== null)
  try {
    for (const { cssRules } of document.styleSheets) choose(cssRules, theme === 'dark')
    document.documentElement.style.colorScheme = theme
  } catch {
    // From files, browsers keep a page's styles from its scripts.
    document.documentElement.dataset.colours = 'kept'
  }

const isAsked = [...new URLSearchParams(location.search).keys()].some((key) => key !== 'theme')
if (isAsked || namesState()) document.documentElement.dataset.asked = ''
