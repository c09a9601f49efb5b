/** A second of sound with a knock in it. */
export interface HeardSound {
  readonly samples: Float32Array
  readonly rateHz: number
}

/** Longest that the browser keeps: 0.7 s at 48,000 a second. */
const KEPT = 32_768
const LOOK_MS = 40
/** After a knock is heard its sound is let come in, less what may lie before it. */
const LISTEN_MS = 560
const PATIENCE_MS = 20_000
/** A knock is so many times as loud as what went before, and not a whisper. */
const LOUDER = 6
const LEAST = 0.01

/**
 * Asks for the microphone, waits for a knock and hands over its sound; the microphone is let go of
 * again. Nothing is kept or sent. Rejects with a sentence for the page.
 */
export async function listenForKnock(
  signal: AbortSignal,
  onReady: () => void,
): Promise<HeardSound> {
  const stream = await microphone()
  const context = new AudioContext()
  try {
    await context.resume()
    const analyser = context.createAnalyser()
    analyser.fftSize = KEPT
    context.createMediaStreamSource(stream).connect(analyser)
    const samples = new Float32Array(KEPT)
    const recent = Math.round((LOOK_MS / 1000) * context.sampleRate)
    onReady()
    let quiet = Infinity
    const until = performance.now() + PATIENCE_MS
    while (performance.now() < until) {
      await pause(LOOK_MS)
      if (signal.aborted) throw new Error('Stopped.')
      analyser.getFloatTimeDomainData(samples)
      const loud = samples
        .subarray(KEPT - recent)
        .reduce((most, one) => Math.max(most, Math.abs(one)), 0)
      if (loud > LEAST && loud > LOUDER * quiet) {
        await pause(LISTEN_MS)
        analyser.getFloatTimeDomainData(samples)
        return { samples, rateHz: context.sampleRate }
      }
      quiet = quiet === Infinity ? loud : Math.max(1e-5, 0.8 * quiet + 0.2 * loud)
    }
    throw new Error('No knock was heard in 20 s. Tap harder, or nearer to the microphone.')
  } finally {
    for (const track of stream.getTracks()) track.stop()
    await context.close()
  }
}

/** As it sounds: what browsers do for speech would bend a tone. */
async function microphone(): Promise<MediaStream> {
  const { mediaDevices } = navigator as { readonly mediaDevices?: MediaDevices }
  if (mediaDevices === undefined) {
    throw new Error(
      'This browser gives this page no microphone: it must come by https or localhost.',
    )
  }
  const plain = { echoCancellation: false, noiseSuppression: false, autoGainControl: false }
  return mediaDevices.getUserMedia({ audio: plain }).catch((error: unknown) => {
    const name = error instanceof DOMException ? error.name : ''
    if (name === 'NotAllowedError') {
      throw new Error('The microphone was not allowed. Allow it for this page, then try again.')
    }
    throw new Error('There is no microphone that could be heard.')
  })
}

function pause(ms: number): Promise<void> {
  return new Promise((go) => {
    setTimeout(go, ms)
  })
}
