import AxeBuilder from '@axe-core/playwright'
import type { Page } from './page.ts'

type Rules = NonNullable<Parameters<AxeBuilder['options']>[0]['runOnly']>

/** Every rule of WCAG 2.0, 2.1 and 2.2, levels A and AA, and what is good practice besides. */
const tags = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice']

const axeOn = (page: Page, without: readonly string[], runOnly: Rules): AxeBuilder =>
  without
    .reduce((some, part) => some.exclude(part), new AxeBuilder({ page }))
    .options({ runOnly, resultTypes: ['violations'] })
    .setLegacyMode()

/** What axe finds on a page as it stands, each with its rule and the element. */
const findings = async (axe: AxeBuilder): Promise<string[]> => {
  const { violations } = await axe.analyze()
  return violations.flatMap(({ id, nodes }) => nodes.map(({ html }) => `${id}: ${html.slice(0, 200)}`))
}

/** What axe finds on a page in the light scheme, apart from the parts left out. */
export const axeFindsLight = async (page: Page, without: readonly string[] = []): Promise<string[]> =>
  findings(axeOn(page, without, { type: 'tag', values: tags }))

/**
 * What axe finds on a page in both colour schemes. In the dark one only colours can differ. A drawing takes axe long: it
 * is left out where it was looked at already.
 */
export const axeFinds = async (page: Page, without: readonly string[] = []): Promise<string[]> => {
  await page.emulateMedia({ colorScheme: 'light' })
  const light = await axeFindsLight(page, without)
  await page.emulateMedia({ colorScheme: 'dark' })
  const dark = await findings(axeOn(page, without, { type: 'rule', values: ['color-contrast'] }))
  await page.emulateMedia({ colorScheme: 'light' })
  return [...light, ...dark.map((finding) => `dark: ${finding}`)]
}
