import AxeBuilder from '@axe-core/playwright'
import axe from 'axe-core'
import type { Page } from './page.ts'

type Rules = NonNullable<Parameters<AxeBuilder['options']>[0]['runOnly']>

/** Every rule of WCAG 2.0, 2.1 and 2.2, levels A and AA, and what is good practice besides. */
const tags = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice']

/** The checker's own script, once into each document: the builder would bring it twice for each look. */
const bring = async (page: Page): Promise<void> => {
  for (const frame of page.frames())
    if (await frame.evaluate(() => !('axe' in window))) await frame.evaluate(axe.source)
}

/** What axe finds on a page as it is, or in a part of it, each with its rule and the element. */
const findings = async (
  page: Page,
  runOnly: Rules,
  without: readonly string[],
  within: readonly string[] = [],
): Promise<string[]> => {
  await bring(page)
  const whole = new AxeBuilder({ page, axeSource: 'void 0' }).setLegacyMode()
  whole.options({ runOnly, resultTypes: ['violations'] })
  for (const part of without) whole.exclude(part)
  for (const part of within) whole.include(part)
  const { violations } = await whole.analyze()
  return violations.flatMap(({ id, nodes }) => nodes.map(({ html }) => `${id}: ${html.slice(0, 200)}`))
}

/** What axe finds on a page in the light scheme, or in some parts of it, apart from the parts left out. */
export const axeFindsLight = (
  page: Page,
  without: readonly string[] = [],
  within: readonly string[] = [],
): Promise<string[]> => findings(page, { type: 'tag', values: tags }, without, within)

/**
 * What axe finds on a page in both colour schemes. In the dark one only colours can differ. A drawing takes axe long: it
 * is left out where it was looked at already.
 */
export const axeFinds = async (page: Page, without: readonly string[] = []): Promise<string[]> => {
  await page.emulateMedia({ colorScheme: 'light' })
  const light = await axeFindsLight(page, without)
  await page.emulateMedia({ colorScheme: 'dark' })
  const dark = await findings(page, { type: 'rule', values: ['color-contrast'] }, without)
  await page.emulateMedia({ colorScheme: 'light' })
  return [...light, ...dark.map((finding) => `dark: ${finding}`)]
}
