import { expect, type Locator, type Page } from './page.ts'

/** Opens the page of jobs, at a job where the fragment names one. */
export const openJobs = async (page: Page, fragment = ''): Promise<void> => {
  await page.goto(`./job/${fragment}`)
  await expect(page.locator('.jobs[data-live]')).toBeVisible()
}

/** Opens the example job, at its intake. */
export const openExample = async (page: Page): Promise<void> => {
  await openJobs(page)
  await page.getByRole('button', { name: 'Look at an example' }).click()
  await expect(page.getByRole('heading', { level: 1 })).toHaveText(/^Example/)
}

/** Goes to a moment of the job on the page; gives its section. */
export const goTo = async (page: Page, moment: string): Promise<Locator> => {
  await page
    .getByRole('navigation', { name: 'This job' })
    .getByRole('link', { name: moment, exact: true })
    .click()
  const section = page.locator('.job-moment:visible')
  await expect(section.getByRole('heading', { level: 2 })).toHaveText(moment)
  return section
}

/** Waits until what was entered is kept. */
export const kept = (page: Page): Promise<void> =>
  expect(page.locator('.job-kept')).toContainText('Kept on this device')

/** Begins a job with this name. */
export const beginJob = async (page: Page, name: string): Promise<void> => {
  await openJobs(page)
  await page.getByRole('button', { name: 'New job' }).click()
  await page.getByLabel('The machine, in your words').fill(name)
  await kept(page)
}
