import type { Channel } from '@/features/class/shared/channel.ts'

type Hear = (event: MessageEvent<unknown>) => void

interface End {
  readonly name: string
  readonly waiting: unknown[]
  hear: Hear | null
}

/** Stands in for the browser's channels: what is said waits, for each who hears it, until it is delivered. */
export class Bus {
  readonly ends: End[] = []
  delivered = 0

  open = (name: string): Channel => {
    const end: End = { name, waiting: [], hear: null }
    this.ends.push(end)
    return {
      postMessage: (message: unknown) => {
        for (const other of this.ends)
          if (other !== end && other.name === name) other.waiting.push(structuredClone(message))
      },
      addEventListener: (_: string, hear: unknown) => {
        end.hear = hear as Hear
      },
      removeEventListener: () => {
        end.hear = null
      },
      close: () => {
        this.ends.splice(this.ends.indexOf(end), 1)
      },
    }
  }

  /** Delivers the oldest message that waits for the end of this number; false where none does. */
  deliver(which: number): boolean {
    const end = this.ends[which % Math.max(1, this.ends.length)]
    if (!end || end.waiting.length === 0) return false
    this.delivered += 1
    const data = end.waiting.shift()
    end.hear?.({ data } as MessageEvent<unknown>)
    return true
  }

  /** Delivers all, and all that is said because of it. Throws where that comes to no end. */
  settle(): void {
    for (let n = 0; this.ends.some((_, which) => this.deliver(which)); n += 1)
      if (n > 5000) throw new Error('the windows never come to rest')
  }
}
