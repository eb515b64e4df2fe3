import {
  BufferTarget,
  EncodedPacket,
  EncodedVideoPacketSource,
  Mp4OutputFormat,
  Output,
  WebMOutputFormat,
} from 'mediabunny'
import { type Film, paintFilm } from './film.ts'
import { frameCount } from './stretch.ts'
import type { Watch } from './watch.ts'

/** A way to write a video: its file's ending, and its codec by the name that files and the one that encoders have. */
interface VideoKind {
  readonly ending: 'mp4' | 'webm'
  readonly codec: 'avc' | 'vp9' | 'vp8'
  readonly config: string
}

/** The kinds of video, those first that most messengers show (codec strings: RFC 6381, WebCodecs registry). */
const kinds: readonly VideoKind[] = [
  { ending: 'mp4', codec: 'avc', config: 'avc1.4d0028' },
  { ending: 'mp4', codec: 'avc', config: 'avc1.420028' },
  { ending: 'webm', codec: 'vp9', config: 'vp09.00.40.08' },
  { ending: 'webm', codec: 'vp8', config: 'vp8' },
]

/** Pictures a second. */
const rate = 25

/** Bits a second: 15 s of it are three quarters of what a message takes. */
const bitrate = 3_200_000

/** How many pictures may wait for the encoder, and how long it is left alone with them, in ms. */
const mostWaiting = 8
const pause = 8

const configOf = ({ config }: VideoKind, width: number, height: number): VideoEncoderConfig => ({
  codec: config,
  width,
  height,
  bitrate,
  framerate: rate,
})

/** The first kind of video that this browser encodes; null where it encodes none. */
export const videoKind = async (): Promise<VideoKind | null> => {
  if (!('VideoEncoder' in globalThis)) return null
  // WebKitGTK (2.50.6) ends a page that asks for an encoder before anything else of its media.
  document.createElement('video').canPlayType('video/webm')
  for (const kind of kinds) {
    const answer = await VideoEncoder.isConfigSupported(configOf(kind, 1280, 960)).catch(() => null)
    if (answer?.supported) return kind
  }
  return null
}

/** A film as a video of this width in pixels. Throws an AbortError where it is given up, and where it cannot be encoded. */
export const videoOf = async (
  film: Film,
  kind: VideoKind,
  width: number,
  { signal, progress }: Watch,
): Promise<Blob> => {
  const target = new BufferTarget()
  const format = kind.ending === 'mp4' ? new Mp4OutputFormat() : new WebMOutputFormat()
  const output = new Output({ format, target })
  const source = new EncodedVideoPacketSource(kind.codec)
  output.addVideoTrack(source, { frameRate: rate })
  output.setMetadataTags({ title: film.title, description: film.description })
  await output.start()
  let written = Promise.resolve()
  const trouble: Error[] = []
  const encoder = new VideoEncoder({
    output: (chunk, meta) => {
      written = written.then(() => source.add(EncodedPacket.fromEncodedChunk(chunk), meta))
    },
    error: (error) => trouble.push(error),
  })
  const count = frameCount(film.stretch, rate)
  try {
    await paintFilm(film, width, { rate, signal }, async ({ canvas }, n) => {
      if (n === 0) encoder.configure(configOf(kind, canvas.width, canvas.height))
      const time = 1_000_000 / rate
      const picture = new VideoFrame(canvas, { timestamp: n * time, duration: time })
      encoder.encode(picture, { keyFrame: n % (4 * rate) === 0 })
      picture.close()
      while (encoder.encodeQueueSize > mostWaiting && trouble.length === 0)
        await new Promise((done) => setTimeout(done, pause))
      if (trouble[0]) throw trouble[0]
      progress((n + 1) / count)
    })
    await encoder.flush()
    await written
  } finally {
    if (encoder.state !== 'closed') encoder.close()
  }
  source.close()
  await output.finalize()
  if (!target.buffer) throw new Error('the video was not written')
  return new Blob([target.buffer], { type: kind.ending === 'mp4' ? 'video/mp4' : 'video/webm' })
}
