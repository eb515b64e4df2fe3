import { parseHTML } from 'linkedom'
import { expect, test } from 'vitest'
import { notesText, slideNumber, stepsIn } from '@/features/slides/steps.ts'

const { document } = parseHTML(`<article>
  <section class="step" data-figure="scene" data-view="front" data-subject="pin.5" data-state="at=R5">
    <h2>Two   heights</h2><p>A <span popover="auto">What it is</span><button>pin</button> rises.</p><noscript><p>Still</p></noscript>
    <form><p>Which?</p></form><aside class="speaker-notes"><p>Ask and wait.</p></aside>
  </section>
  <section class="step" data-figure="chain" data-state="at=R6"><h2>On</h2><p>It goes
    on.</p></section></article>`)

test('a step has its title, what it shows, what the chapter says, and what its notes say', () => {
  const [first, second] = stepsIn(document)
  expect(first).toMatchObject({
    title: 'Two heights',
    figure: 'scene',
    state: 'at=R5',
    scene: { view: 'front', subject: 'pin.5' },
    text: ['A pin rises.'],
    notes: ['Ask and wait.'],
  })
  expect(second).toMatchObject({ title: 'On', figure: 'chain', text: ['It goes on.'], notes: [] })
})

test('the notes are a plain text with the slides’ numbers', () => {
  expect(notesText('Pins', stepsIn(document))).toBe(
    'Pins\n\n\n01  Two heights\n\nA pin rises.\n\nFor the teacher:\n\nAsk and wait.\n\n\n02  On\n\nIt goes on.\n\n\n',
  )
})

test('numbers keep slides in order by their names', () => {
  expect([0, 8, 9, 30].map(slideNumber)).toEqual(['01', '09', '10', '31'])
})
