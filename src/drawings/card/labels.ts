import { dimensions } from '../../mechanism/dimensions.ts'
import { stepsAtTurn } from '../../mechanism/turn.ts'
import { rowsBetween, turnWords } from '../../words/figures/card.ts'
import { counted } from '../../words/lists.ts'
import { type Balloon, drawBalloons } from '../shared/balloons.ts'
import { drawTexts, type Label } from '../shared/labels.ts'
import { dimensionLine } from '../shared/paths.ts'
import { drawShape, type Group } from '../shared/svg.ts'
import { columnX, rowY } from './layout.ts'
import { seenRow } from './sheet.ts'
import { type CardView, phases, type Side } from './view.ts'

/** Words broken into lines of at most so many characters. */
const wrapped = (words: string, most: number): string[] => {
  const lines: string[] = []
  for (const word of words.split(' ')) {
    const last = lines.at(-1)
    if (last !== undefined && last.length + word.length < most) lines[lines.length - 1] = `${last} ${word}`
    else lines.push(word)
  }
  return lines
}

/** Whether this side's pawl is the one that acts at the turn shown. */
const isShown = (view: CardView, side: Side): boolean => view.side === side && view.steps > 0

const actsWhen = (view: CardView, side: Side): string => {
  if (!isShown(view, side)) return `acts at ${side} turns`
  return view.isPast ? 'has stepped the card' : 'acts at the next turn'
}

/** What the pawl of a side does at its turns, in a few words. */
const pawlState = (view: CardView, side: Side): { text: string; short: string; look: string } => {
  const { condition } = view.frame
  if (condition.pawlDead[side]) return { text: 'dead: steps nothing', short: 'dead', look: 'bad' }
  if (condition.cardLocked) return { text: 'held by the lock', short: 'locked', look: 'bad' }
  if (condition.pawlDouble) return { text: 'steps two rows', short: 'two rows', look: 'bad' }
  return { text: actsWhen(view, side), short: '', look: '' }
}

const pawlLabels = (view: CardView): Label[] =>
  (['left', 'right'] as const).flatMap((side): Label[] => {
    const { layout } = view
    const end = side === 'left' ? layout.leftEnd : layout.rightEnd
    const state = pawlState(view, side)
    const name = `${side} pawl`
    const look = isShown(view, side) ? 'strong' : ''
    if (layout.shape === 'narrow') {
      const isBad = state.look === 'bad'
      return [
        {
          text: isBad ? `${name}: ${state.short}` : name,
          x: side === 'left' ? 22 : layout.width - 22,
          y: end.y + 54,
          look: `${isBad ? 'bad' : look}${side === 'left' ? '' : ' end'}`,
        },
      ]
    }
    const x = side === 'left' ? 92 : 906
    const y = side === 'left' ? 178 : 386
    const align = side === 'left' ? '' : ' end'
    return [
      { text: name, x, y, look: `${look}${align}` },
      { text: state.text, x, y: y + 15, look: `${state.look}${align}` },
    ]
  })

const rowLabels = (view: CardView): Label[] => {
  const { layout, frame } = view
  const { row } = frame.pass
  const seen = seenRow(view)
  if (row === null || seen === null)
    return [
      { text: 'no card in the reader', x: columnX(layout, 12.5), y: layout.slot - 20, look: 'strong middle' },
    ]
  if (layout.shape === 'narrow')
    return [
      {
        text: `row ${row} is read, row ${seen} is what you see`,
        x: layout.width / 2,
        y: layout.bottom + 14,
        look: 'middle',
      },
    ]
  const x = columnX(layout, 0.5) - 58
  return [
    { text: `row ${seen}`, x, y: rowY(layout, rowsBetween) - 1, look: 'strong end' },
    { text: 'the row you see', x, y: rowY(layout, rowsBetween) + 13, look: 'end' },
    { text: `row ${row}`, x, y: layout.reading - 1, look: 'strong end' },
    { text: 'the row being read', x, y: layout.reading + 13, look: 'end' },
    { text: counted(rowsBetween, 'row'), x: x - 8, y: rowY(layout, rowsBetween / 2) - 3, look: 'end' },
    { text: 'in our drawing', x: x - 8, y: rowY(layout, rowsBetween / 2) + 11, look: 'end' },
  ]
}

const viewLabels = (view: CardView): Label[] => {
  const { layout, frame } = view
  if (layout.shape === 'narrow') return []
  const { condition, pass } = frame
  const count = condition.card?.length ?? 0
  const middle = columnX(layout, 12.5)
  const face = condition.cardReversed ? 'the card lies the wrong way round' : 'from the front, drawn flat'
  return [
    { text: 'left end', x: layout.leftEnd.x, y: 44, look: 'middle' },
    { text: face, x: middle, y: 80, look: condition.cardReversed ? 'bad middle' : 'middle' },
    { text: 'right end, in section', x: layout.width - 4, y: 16, look: 'end' },
    {
      text: pass.row === null ? '' : `a loop of ${counted(count, 'row')}`,
      x: layout.width - 4,
      y: 33,
      look: 'strong end',
    },
    { text: 'needles, from above', x: layout.width / 2 - 15, y: 444 },
    { text: condition.cardLocked ? 'locked' : '', x: 838, y: 212, look: 'bad' },
  ]
}

const phaseLabels = (view: CardView): Label[] => {
  const { layout } = view
  const steps = phases.map((phase, n): Label => {
    const look = view.phase === phase ? 'now middle' : 'middle'
    const text = `${n + 1} ${phase}`
    return layout.shape === 'wide'
      ? { text, x: columnX(layout, 12.5) + (n - 1) * 110 + 40, y: 392, look }
      : { text, x: layout.width / 2, y: 172 + n * 18, look }
  })
  const lead = { text: 'at each turn mark:', x: columnX(layout, 12.5) - 190, y: 392, look: 'middle' }
  return layout.shape === 'wide' ? [lead, ...steps] : steps
}

/** What this turn comes to, under the bed. */
const turnLabels = (view: CardView): Label[] => {
  const { layout, frame } = view
  const turn = view.isPast ? frame.pass.pass : frame.pass.pass + 1
  const isBad = frame.pass.row !== null && stepsAtTurn(frame.condition, turn) !== 1
  const lines = wrapped(turnWords(frame), layout.shape === 'wide' ? 120 : 58)
  return lines.map((text, n) => ({
    text,
    x: layout.shape === 'wide' ? layout.width / 2 : 4,
    y: layout.height - 8 - (lines.length - 1 - n) * 15,
    look: `${isBad ? 'bad' : 'strong'}${layout.shape === 'wide' ? ' middle' : ''}`,
  }))
}

/** Names, states and numbers, the rows between, and the balloons. */
export const drawLabels = (root: Group, view: CardView): void => {
  const { layout, frame } = view
  const isWide = layout.shape === 'wide'
  const hasCard = frame.pass.row !== null
  drawTexts(root, 'words', [
    ...viewLabels(view),
    ...rowLabels(view),
    ...pawlLabels(view),
    ...phaseLabels(view),
    ...turnLabels(view),
  ])
  const x = columnX(layout, 0.5) - 58
  drawShape(root, 'path', 'dimension', {
    d: isWide && hasCard ? dimensionLine(x + 4, rowY(layout, rowsBetween), x + 4, layout.reading) : '',
  })
  const right = columnX(layout, dimensions.columns + 0.5)
  const end = layout.rightEnd
  const onCard: Balloon = {
    number: 1,
    x: right + 44,
    y: layout.top - 20,
    to: [right + 15, layout.top + 8],
  }
  drawBalloons(
    root,
    isWide
      ? [
          ...(hasCard ? [onCard] : []),
          { number: 3, x: end.x - 80, y: end.y + 8, to: [end.x - 8, end.y + 33] },
          { number: 2, x: end.x - 80, y: end.y + 66, to: [end.x - 5, end.y + 60] },
          { number: 9, x: layout.width / 2 - 30, y: 440, to: [layout.width / 2 - 60, layout.bedTop + 10] },
        ]
      : [],
  )
}
