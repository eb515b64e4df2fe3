import { cams, dimensions } from '../mechanism/dimensions.ts'
import {
  earlyWindow,
  ghostSpeed,
  lateWindow,
  missedSpeed,
  releaseTime,
  slackWindow,
} from '../mechanism/closed-forms.ts'
import { fullShift, neededPush } from '../mechanism/rocker.ts'
import { sweepAngle } from '../mechanism/sweep.ts'
import { floatLimit } from '../mechanism/fabric.ts'
import { holeClearance } from '../mechanism/pin.ts'
import { at } from '../mechanism/lookup.ts'
import { millimetres, withUnit } from './lists.ts'

const d = dimensions
const plain = (value: number, decimals = 0): string => value.toFixed(decimals)
const times = (value: number): string => withUnit(plain(value, value < 10 ? 1 : 0), 'ms')
const speeds = (value: number): string => withUnit(plain(value), 'mm/s')

/**
 * The numbers that texts may name, from the model. Lengths in mm with their unit, times in ms, speeds in mm/s; counts
 * and needles without one.
 */
export const facts = {
  needles: plain(d.needles),
  columns: plain(d.columns),
  strips: plain(d.strips),
  columnsPerStrip: plain(d.columns / d.strips),
  catchesPerStrip: plain(d.needles / d.strips),
  otherCatches: plain(d.needles / d.strips - 1),
  pitch: millimetres(d.pitch),
  bedLength: millimetres((d.needles - 1) * d.pitch),
  eightNeedles: millimetres(d.strips * d.pitch),
  cardWidth: millimetres(d.columns * d.pitch),
  hole: millimetres(d.hole),
  pin: millimetres(d.pin),
  clearance: millimetres(holeClearance(d)),
  pinHigh: millimetres(d.pinHigh),
  pinLow: millimetres(d.pinLow),
  sweepEdge: millimetres(d.sweepEdge),
  overlapHigh: millimetres(d.pinHigh - d.sweepEdge),
  clearLow: millimetres(d.sweepEdge - d.pinLow),
  fullBite: millimetres(d.fullBite),
  leastOverlap: millimetres((d.fullBite * neededPush(d)) / d.sweepThrow),
  sweepThrow: millimetres(d.sweepThrow),
  sweepFlat: plain(d.sweepFlat, 1),
  sweepRamp: plain(d.sweepRamp, 1),
  sweepAngle: `${plain(sweepAngle(d), 1)}°`,
  lost: millimetres(d.lost),
  neededPush: millimetres(neededPush(d)),
  fullShift: millimetres(fullShift(d)),
  reach: millimetres(d.reach),
  letGo: millimetres(d.letGo),
  heldToSpare: millimetres(fullShift(d) - d.letGo),
  shiftToSpare: millimetres(fullShift(d) - d.reach),
  preload: millimetres(d.preload),
  stripReturn: times(d.stripReturn),
  stripReturnThick: times(d.stripReturnThick),
  releaseTime: times(releaseTime(d.stripReturn)),
  releaseTimeThick: times(releaseTime(d.stripReturnThick)),
  ghostSpeedThick: speeds(ghostSpeed(d.stripReturnThick)),
  presser: millimetres(d.presserRight),
  catchDepth: millimetres(d.catchDepth),
  dipToSpare: millimetres(d.presserRight - d.catchDepth),
  gate1: millimetres(d.gate1),
  gate2: millimetres(d.gate2),
  heldBelowGate1: millimetres(d.catchDepth - d.gate1),
  heldAboveGate2: millimetres(d.gate2 - d.catchDepth),
  plainTravel: millimetres(cams.plainTravel),
  selectedTravel: millimetres(cams.selectedTravel),
  buttReturn: times(d.buttReturn),
  buttReturnStiff: times(d.buttReturnStiff),
  gateLag: plain(d.gateLag, 1),
  gateLagTime: times((1000 * d.gateLag * d.pitch) / d.speed),
  missedSpeedSound: speeds(missedSpeed(d.buttReturn)),
  missedSpeedStiff: speeds(missedSpeed(d.buttReturnStiff)),
  speed: speeds(d.speed),
  turnMark: plain(d.turnMark),
  lateWindow: plain(lateWindow, 2),
  earlyWindow: plain(earlyWindow(d.speed), 2),
  floatLimit: plain(floatLimit),
  lateWindowLength: millimetres(lateWindow * d.pitch),
  slackWindow: plain(slackWindow, 2),
} as const

export type FactName = keyof typeof facts

const units = [
  'nought one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen seventeen',
  'eighteen nineteen',
]
  .join(' ')
  .split(' ')
const tens = ' ten twenty thirty forty fifty sixty seventy eighty ninety'.split(' ')

/** A whole number from 0 to 999 in words: twenty-four, two hundred. Throws a RangeError for others. */
export const inWords = (value: number): string => {
  if (value < 20) return at(units, value)
  if (value >= 100) {
    const rest = value % 100
    return `${at(units, Math.floor(value / 100))} hundred${rest === 0 ? '' : ` and ${inWords(rest)}`}`
  }
  const rest = value % 10
  return `${at(tens, Math.floor(value / 10))}${rest === 0 ? '' : `-${at(units, rest)}`}`
}
