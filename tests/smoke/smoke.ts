import { readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { afterAll, afterEach, beforeAll, expect, test } from 'vitest'
import { outlineOf } from '@/site/chapter-outline.ts'
import { write } from '@/link/write.ts'
import { passEnds, wholeBed } from '@/mechanism/bed.ts'
import { describeFrame } from '@/words/frame-description.ts'
import { library, type Moment, momentOf } from '../browser/model.ts'
import type { OwnServer } from '../browser/own-server.ts'
import type { Browser, Key } from './browser.ts'
import { type Person, personAt } from './person.ts'
import { carriageHold, expectDrawn, outline } from './picture.ts'
import { serveWatched } from './site.ts'

const chapter = fileURLToPath(new URL('../../content/chapters/05-rockers-and-strips.mdx', import.meta.url))
const slider = '.carriage-slider'

/**
 * The few things without which the site is of no use, done as a person does them, in one browser.
 * @param openBrowser starts it
 */
export const smokeTests = (openBrowser: () => Promise<Browser>): void => {
  let site: OwnServer
  let browser: Browser
  let person: Person

  beforeAll(async () => {
    site = await serveWatched()
    browser = await openBrowser()
    person = personAt(browser, site.address)
  }, 60_000)
  afterEach(async () => {
    expect(await person.wrongs()).toEqual([])
  })
  afterAll(async () => {
    await browser.end()
    await site.end()
  })

  const addressed = async (): Promise<Moment> => momentOf(new URL(await person.address()).hash.slice(1))

  test('the home page loads with its drawing', async () => {
    await person.open('./')
    await person.reads('h1', /needle/)
    await person.reads('.chip', /^Strip 3 seized/)
    const { state } = momentOf('break=strip.3.seized')
    const at = Number(await person.read(slider))
    const link = write({ ...state, at }, library)
    await person.reads('.happening', describeFrame(momentOf(link).frame))
    await expectDrawn(browser, momentOf(link))
  })

  test('the carriage is dragged, and everything follows', async () => {
    await person.open('./#at=R20&break=strip.3.seized')
    await person.reads('.carriage-readout', 'R20, moving right')
    const { x, y, spacing } = await carriageHold(browser)
    await browser.press({ x, y }, { x: x + 6 * spacing, y })
    await person.reads('.carriage-readout', 'R26, moving right')
    await expect.poll(async () => (await addressed()).state.at).toBeCloseTo(momentOf('at=R26').state.at, 0)
    const moment = await addressed()
    await person.reads('.happening', describeFrame(moment.frame))
    await expectDrawn(browser, moment)
  })

  test('the slider answers the keys of a slider', async () => {
    await person.open('./#at=R20')
    await person.reads('.carriage-readout', 'R20, moving right')
    await person.tabTo(slider)
    let at = momentOf('at=R20').state.at
    for (const [key, by] of [
      ['ArrowRight', 0.25],
      ['ArrowUp', 0.25],
      ['ArrowUp', 0.25],
      ['ArrowLeft', -0.25],
      ['ArrowDown', -0.25],
      ['PageUp', 8],
      ['PageDown', -8],
    ] as const) {
      await browser.key(key)
      at += by
      await person.reads(slider, String(at))
    }
    await browser.key('Home')
    const { start, end } = passEnds(1, wholeBed)
    await expect.poll(async () => (await addressed()).state).toMatchObject({ pass: 1, at: start })
    await browser.key('End')
    await expect.poll(async () => (await addressed()).state).toMatchObject({ pass: 2, at: end, faults: [] })
  })

  test('a part is broken, and its link shows the same in a fresh window', async () => {
    await person.open('./#at=R20')
    await person.reads('.carriage-readout', 'R20, moving right')
    await person.click('.break')
    await person.click('[data-kind="strip.seized"]')
    await person.click('.breaker button', 'Break it')
    await person.reads('.chip', /^Strip \d seized/)
    await expect.poll(async () => (await addressed()).state.faults.length).toBe(1)
    const [chip, address, moment] = [await person.read('.chip'), await person.address(), await addressed()]
    expect(moment.frame.pass.departures.length).toBeGreaterThan(0)

    await person.open(address)
    await person.reads('.chip', chip)
    await person.reads('.carriage-readout', 'R20, moving right')
    await person.reads('.notice', '')
    await expectDrawn(browser, moment)
    expect((await addressed()).state).toEqual(moment.state)
  })

  test('a link that cannot be is named in a sentence', async () => {
    await person.open('./#at=R20&break=strip.99.seized&break=catch.R12.broken')
    await person.reads('.notice', /The fault “strip\.99\.seized” can't be read.*\.$/)
    await person.reads('.chip', /^Catch of R12 broken/)
  })

  test('a chapter opens, and the key for the next step changes its figure', async () => {
    const steps = outlineOf(readFileSync(chapter, 'utf8')).steps
    const first = steps.findIndex(({ id }) => id === 'a-seized-strip')
    const [before, after] = [steps[first]!, steps[first + 1]!]
    await person.open(`./chapters/rockers-and-strips/?step=${before.id}`)
    await person.reads('.step-name', `Step ${first + 1} of ${steps.length}: ${before.title}`)
    await expectDrawn(browser, momentOf(before.state))
    const old = await outline(browser)
    await browser.key('PageDown', 'Alt')
    await person.reads('.step-name', `Step ${first + 2} of ${steps.length}: ${after.title}`)
    await expect.poll(() => outline(browser)).not.toBe(old)
    await expectDrawn(browser, momentOf(after.state))
    await expect.poll(async () => (await addressed()).state).toEqual(momentOf(after.state).state)
  })

  test('a needle is tapped on the find page, and the worker answers with what is likely', async () => {
    await person.open('./find/')
    await person.reads('.answer h3', 'Nothing is wrong, as far as this shows')
    await person.click('[role="gridcell"]', 'R3,')
    await person.reads('.answer h3', /Needle R3 bent|Catch of R3 broken/)
    await person.click('button', 'Every eighth like it')
    await person.reads('.answer h3', 'Strip 3 seized')
  })

  /** Writes into the field that has the keyboard. */
  const type = async (text: readonly Key[]): Promise<void> => {
    for (const key of text) await browser.key(key)
  }

  test('the machine is turned in a hand, and its address says from where it is seen', async () => {
    await person.open('./parts/')
    const { x, y } = await browser.look(() => {
      const { left, top, width } = document.querySelector('.parts-stage')!.getBoundingClientRect()
      return { x: left + width / 2, y: top + 200 }
    })
    await browser.press({ x, y }, { x: x - 60, y: y + 20 })
    await expect.poll(() => person.address()).toMatch(/#view=-?\d+\.-?\d+\.\d+$/)
  })

  test('a job is kept, and is opened again', async () => {
    await person.open('./job/')
    await person.click('.job-new')
    await person.reads('.job-name', /\S/)
    await person.tabTo('.intake-name')
    await type(['1', '1'])
    await person.reads('.job-kept', /Kept on this device/)
    await person.click('.job-back')
    await person.click('.job-rows a', '11')
    await person.reads('.job-name', '11')
  })

  test('a measured value is judged, and goes into the address', async () => {
    await person.open('./measure/')
    await person.click('[aria-describedby="presserLeft-trouble"]')
    await type(['1', '.', '1', 'Tab'])
    await person.reads('.measure-verdict', /The least left is 0\.2/)
    await expect.poll(() => person.address()).toMatch(/#own=1_presserLeft-1\.1$/)
  })

  test('a figure is saved as a picture, and a film of it is begun', async () => {
    await person.open('./workbench/#at=R20&break=strip.3.seized')
    await person.click('.save-figure')
    await person.click('.save-now')
    await person.reads('.save-said', /^Saved as .+\.png, /)
    await person.click('.save-dialog label', 'Film')
    await person.click('.save-now')
    const drawn = (): Promise<number> =>
      browser.look(() => document.querySelector<HTMLProgressElement>('.save-foot progress')!.value)
    await expect.poll(drawn, { message: 'the film goes on', timeout: 30_000 }).toBeGreaterThan(0)
    await person.click('.save-cancel')
    await person.reads('.save-said', 'The film was given up; nothing is saved.')
  })
}
