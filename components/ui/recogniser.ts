/** As much of the browser's speech recognition as is used here (Web Speech API). */
export interface Recogniser {
  lang: string;
  continuous: boolean;
  onresult: ((heard: Heard) => void) | null;
  onerror: (() => void) | null;
  onend: (() => void) | null;
  start(): void;
  stop(): void;
  abort(): void;
}
interface Heard {
  readonly resultIndex: number;
  readonly results: ArrayLike<ArrayLike<{ readonly transcript: string }> & { readonly isFinal: boolean }>;
}

type Makes = new () => Recogniser;

/** What listens in this browser, under either of its names; null: nothing does. */
export function recogniserOf(browser: object): Makes | null {
  const { SpeechRecognition, webkitSpeechRecognition } = browser as {
    readonly SpeechRecognition?: Makes;
    readonly webkitSpeechRecognition?: Makes;
  };
  return SpeechRecognition ?? webkitSpeechRecognition ?? null;
}

/** What was understood last, once it is settled; until then nothing. */
export function wordsOf({ results, resultIndex }: Heard): string {
  const said = results[resultIndex];
  return said?.isFinal ? (said[0]?.transcript.trim() ?? "") : "";
}
