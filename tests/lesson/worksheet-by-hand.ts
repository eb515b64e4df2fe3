import type { Body } from '@/lesson/question.ts'
import type { Task } from '@/lesson/worksheet.ts'
import { mainCardRows } from '@/lesson/setup.ts'
import { needleIndex } from '@/mechanism/bed.ts'
import { readFault } from '@/mechanism/read-fault.ts'
import { startRun } from '@/mechanism/pass.ts'
import { soundScenario } from '@/mechanism/scenario.ts'
import { library } from './made.ts'

// Tasks solved as a learner would, from their printed words and counting alone; only beds with a fault are compared
// with the whole model.

const rows = mainCardRows(library)
const text = (row: number): string => row.toString(2).padStart(24, '0')
const columnOf = (index: number): number => ((((index - 100) % 24) + 24) % 24) + 1

/** The numbers of a prompt that a pattern picks out. */
const numbers = (prompt: string, pattern: RegExp): number[] => {
  const found = pattern.exec(prompt)
  if (!found) throw new Error(`“${prompt}” lacks ${String(pattern)}`)
  return found.slice(1).map(Number)
}

const range = (prompt: string): number[] => {
  const [, from = '', to = ''] = /needles ([LR]\d+) to ([LR]\d+)/.exec(prompt) ?? []
  const [first, last] = [needleIndex(from) ?? 0, needleIndex(to) ?? 0]
  return Array.from({ length: last - first + 1 }, (_, n) => first + n)
}

const holeOf = (row: string, index: number): boolean => row[columnOf(index) - 1] === '1'

const rowIn = (body: Body): string => {
  const [picture] = body.pictures
  return picture?.kind === 'row' ? picture.holes.map((hole) => (hole ? '1' : '0')).join('') : ''
}

/** Rows read in six passes with a stepping fault, by its words. */
const rowsRead = (label: string): string => {
  const short = Number(/Turned short before pass (\d+)/.exec(label)?.[1] ?? 0)
  let row = 1
  const read = [row]
  for (let pass = 2; pass <= 6; pass++) {
    const isRight = pass % 2 === 0
    const isStuck =
      label === 'Card locked' || label === (isRight ? 'Right pawl dead' : 'Left pawl dead') || pass === short
    row += isStuck ? 0 : label === 'Pawls step two rows a turn' ? 2 : 1
    read.push(row)
  }
  return read.join(', ')
}

/** Whether a fault leaves every bed of a question as it is pictured. */
const leaves = (body: Body, id: string): boolean =>
  body.pictures.every((picture) => {
    if (picture.kind !== 'bed') return true
    const [pass = 1] = numbers(picture.title, /Pass (\d+)/)
    const speed = Number(/(\d+)\smm\/s/.exec(picture.title)?.[1] ?? 500)
    const reading = readFault(id)
    const faults = reading.kind === 'fault' ? [reading.fault] : []
    const run = startRun({ ...soundScenario(rows), speed, faults })
    const came = run.passOf(pass).came.slice(picture.first, picture.first + picture.came.length)
    return came.join() === picture.came.join()
  })

/** The answers that the words of a task come to: needles, a number, or the labels of all options that fit. */
export const byHand = ({ kind, question }: Task): number[] | number | string[] => {
  const { prompt } = question
  const all = range(prompt)
  const row = rowIn(question)
  switch (kind) {
    case 'needle': {
      const name = /needle ([LR]\d+)\?/.exec(prompt)?.[1] ?? ''
      const column = columnOf(needleIndex(name) ?? 0)
      return prompt.includes('Which strip') ? ((column - 1) % 8) + 1 : column
    }
    case 'loop':
      return ((numbers(prompt, /does pass (\d+) read/)[0]! - 1) % rows.length) + 1
    case 'hole':
      return all.filter((index) => columnOf(index) === numbers(prompt, /in column (\d+)/)[0])
    case 'row':
      return all.filter((index) => holeOf(text(rows[numbers(prompt, /card row (\d+)/)[0]! - 1]!), index))
    case 'short': {
      const turns = (/before pass(?:es)? ([\d and]+)\./.exec(prompt)?.[1] ?? '').match(/\d+/g) ?? []
      return ((numbers(prompt, /does pass (\d+) read/)[0]! - 1 - turns.length) % rows.length) + 1
    }
    case 'float':
      return Math.max(...(row + row).split('1').map(({ length }) => length))
    case 'late':
      return all.filter((index) =>
        holeOf(text(rows[(numbers(prompt, /in pass (\d+)/)[0]! - 2) % rows.length]!), index),
      )
    case 'wrong': {
      const never = /seized|stuck down/.test(prompt)
      const [part = 0] = numbers(prompt, /^(?:Strip|Pin) (\d+)/)
      const step = prompt.startsWith('Strip') ? 8 : 24
      return all.filter((index) => (columnOf(index) - part) % step === 0 && holeOf(row, index) === never)
    }
    case 'two': {
      const [strip = 0, rocker = 0] = numbers(prompt, /Strip (\d+) is seized and rocker (\d+)/)
      return all.filter(
        (index) => holeOf(row, index) && ((columnOf(index) - strip) % 8 === 0 || columnOf(index) === rocker),
      )
    }
    case 'stepping': {
      const seen = /read card rows ([\d, ]+)\./.exec(prompt)?.[1] ?? ''
      return 'options' in question
        ? question.options.map(({ label }) => label).filter((label) => rowsRead(label) === seen)
        : []
    }
    case 'part':
      return 'options' in question
        ? question.options.filter(({ id }) => leaves(question, id)).map(({ label }) => label)
        : []
  }
}
