import type { Card } from '@/mechanism/card.ts'
import type { Noted } from '@/find/view.ts'

/** A stream of numbers in [0, 1) from a whole seed (mulberry32, public domain). */
export const numbers = (seed: number): (() => number) => {
  let state = seed >>> 0
  return () => {
    state = (state + 0x6d2b79f5) >>> 0
    let t = Math.imul(state ^ (state >>> 15), state | 1)
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61)
    return ((t ^ (t >>> 14)) >>> 0) / 0x100000000
  }
}

/** A card of `rows` rows from a seed. */
export const randomCard = (rows: number, seed: number): Card => {
  const next = numbers(seed)
  return Array.from({ length: rows }, () => Math.floor(next() * 0x1000000))
}

/** The first passes of a card, as a person would note them. */
export const firstPasses = (rows: number, count: number, speed: number): Noted[] =>
  Array.from({ length: count }, (_, n) => ({
    row: (n % rows) + 1,
    way: n % 2 === 0 ? 1 : -1,
    speed,
  }))
