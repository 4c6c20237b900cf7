/** Tells that a side's time is over, for eyes, ears and hands; each where the device has it. */
export function alarm(): void {
  navigator.vibrate?.([200, 100, 200]);
  beep();
}

const TONE_HZ = 880;
const BEEPS = 3;
const BEEP_S = 0.14;
const APART_S = 0.24;

function beep(): void {
  try {
    const sound = new AudioContext();
    for (let i = 0; i < BEEPS; i++) {
      const tone = sound.createOscillator();
      tone.frequency.value = TONE_HZ;
      tone.connect(sound.destination);
      tone.start(sound.currentTime + i * APART_S);
      tone.stop(sound.currentTime + i * APART_S + BEEP_S);
    }
    setTimeout(() => void sound.close(), 1000 * (BEEPS + 1) * APART_S);
  } catch (error) {
    // A device without sound still flashes.
    if (!(error instanceof DOMException || error instanceof ReferenceError)) throw error;
  }
}
