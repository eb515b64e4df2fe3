import { load, change, type Section as Stored } from '../../browser/storage.ts'
import type { Prices } from '../../find/decide.ts'
import { partIds } from '../../find/repairs.ts'

const isPrice = (value: unknown): value is number =>
  typeof value === 'number' && Number.isFinite(value) && value >= 0

/** What work and parts cost, as this browser keeps it; null where no price was ever written. */
const stored: Stored<Prices | null> = {
  read: ({ prices }) => {
    if (typeof prices !== 'object' || prices === null) return null
    const fields = prices as Readonly<Record<string, unknown>>
    const parts = Object.fromEntries(
      partIds.flatMap((part) => {
        const price = fields[part]
        return isPrice(price) ? [[part, price] as const] : []
      }),
    )
    return { hour: isPrice(fields['hour']) ? fields['hour'] : 0, parts }
  },
  write: (prices) => ({ prices: prices && { hour: prices.hour, ...prices.parts } }),
}

export const loadPrices = (): Prices | null => load(stored)

/** Keeps prices; false where the browser keeps nothing. */
export const keepPrices = (prices: Prices | null): boolean => change(stored, () => prices)

/** A price as it is typed, with a point or a comma; null where it is none, and 0 where nothing is written. */
export const readPrice = (text: string): number | null => {
  const plain = text.trim().replace(',', '.')
  if (plain === '') return 0
  return /^\d{1,7}(\.\d{1,2})?$/.test(plain) ? Number(plain) : null
}
