import type { Frame } from '../../mechanism/frame.ts'
import { type Column, measureOfColumn } from '../../mechanism/indices.ts'
import { at } from '../../mechanism/lookup.ts'
import { type PartKind, partOf } from '../../mechanism/part.ts'
import type { Run } from '../../mechanism/pass.ts'
import { holeClearance, holeNow, midHeight, misplacement } from '../../mechanism/pin.ts'
import { needleName, stripOfColumn } from '../../mechanism/bed.ts'
import { partOfFault } from '../../mechanism/fault.ts'
import { faultPhrase } from '../faults.ts'
import { millimetres } from '../lists.ts'
import { needleAtPin, sweepShown } from './sweep.ts'

/** Heights in mm of the high pin nearest to the sweep and of the low pin nearest to it; null where there is none. */
export const nearestHeights = (frame: Frame): { high: number | null; low: number | null } => {
  const middle = midHeight(frame.condition.dimensions)
  const sweep = sweepShown(frame)
  const byDistance = [...frame.pinHeights.keys()].sort(
    (a, b) => Math.abs(a + 1 - sweep.at) - Math.abs(b + 1 - sweep.at),
  )
  const heights = byDistance.map((index) => at(frame.pinHeights, index))
  return {
    high: heights.find((height) => height > middle) ?? null,
    low: heights.find((height) => height <= middle) ?? null,
  }
}

/** What is over a column's pin, in a few words. */
export const overPin = (
  frame: Frame,
  column: Column,
): 'no card' | 'no hole' | 'a hole' | 'hole out of place' => {
  const { condition, pass } = frame
  if (pass.row === null) return 'no card'
  if (!holeNow(condition, pass.row, column)) return 'no hole'
  return misplacement(condition, column) <= holeClearance(condition.dimensions)
    ? 'a hole'
    : 'hole out of place'
}

const overClause = (frame: Frame, column: Column): string => {
  switch (overPin(frame, column)) {
    case 'no card':
      return 'there is no card over it'
    case 'no hole':
      return 'the card has no hole over it'
    case 'a hole':
      return 'there is a hole over it'
    case 'hole out of place':
      return 'its hole lies too far from it and the card stops it'
  }
}

const pinSentence = (frame: Frame): string => {
  const { column, isClear } = sweepShown(frame)
  const height = measureOfColumn(frame.pinHeights, column)
  const lean = measureOfColumn(frame.pinLeans, column)
  const out = measureOfColumn(frame.rockerOuts, column)
  const { sweepEdge } = frame.condition
  const tip = `its tip stands ${millimetres(height)} high`
  const meets =
    height > sweepEdge
      ? `overlaps the sweep’s edge by ${millimetres(height - sweepEdge)}`
      : `is ${millimetres(sweepEdge - height)} clear of the sweep’s edge`
  const push =
    lean > 0
      ? ` The sweep pushes its front leg ${millimetres(lean)} to the left, and its rocker gives ${millimetres(out)} to strip ${stripOfColumn(column)}.`
      : ''
  if (isClear)
    return `The belt is not engaged: the sweep stands still, clear of all pins. At the pin of column ${column}, ${overClause(frame, column)}; ${tip}.`
  const needle = needleAtPin(frame)
  const at = needle === null ? '' : `, as the presser lets go of its needle ${needleName(needle)}`
  return `The pin of column ${column} is at the sweep${at}: ${overClause(frame, column)}; ${tip} and ${meets}.${push}`
}

const marginSentence = (frame: Frame): string => {
  const { high, low } = nearestHeights(frame)
  const { sweepEdge } = frame.condition
  const above =
    high === null
      ? 'No pin stands high.'
      : high > sweepEdge
        ? `A high pin overlaps the sweep by ${millimetres(high - sweepEdge)}; it needs ${millimetres(frame.condition.dimensions.fullBite)} for the full push.`
        : `A high pin misses the sweep by ${millimetres(sweepEdge - high)}.`
  const below =
    low === null ? 'No pin stands low.' : `A low pin clears it by ${millimetres(sweepEdge - low)}.`
  return `${above} ${below}`
}

const placeSentence = (frame: Frame): string => {
  if (frame.pass.row === null) return ''
  const off = misplacement(frame.condition, sweepShown(frame).column)
  if (off < 0.005) return ''
  return `The card lies ${millimetres(off)} out of place here; a pin still fits at ${millimetres(holeClearance(frame.condition.dimensions))}.`
}

/** Kinds of part whose faults this figure shows. */
const shown: readonly PartKind[] = ['card', 'pin', 'sweep', 'belt', 'rocker']

/** The pins' figure in words. */
export const describePins = (run: Run, frame: Frame): string => {
  const broken = run.scenario.faults
    .filter((fault) => shown.includes(partOf(partOfFault(fault)).kind))
    .map((fault) => `${faultPhrase(fault)}.`)
  return [...broken, pinSentence(frame), placeSentence(frame), marginSentence(frame)]
    .filter((sentence) => sentence !== '')
    .join(' ')
}
