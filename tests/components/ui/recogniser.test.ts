import { expect, it } from "vitest";
import { recogniserOf, wordsOf } from "@/components/ui/recogniser";

const heard = (transcript: string, isFinal: boolean) => ({
  resultIndex: 1,
  results: [
    Object.assign([{ transcript: "before" }], { isFinal: true }),
    Object.assign([{ transcript }], { isFinal }),
  ],
});

it("takes only what is settled, and the newest of it", () => {
  expect(wordsOf(heard(" sounded like frying ", true))).toBe("sounded like frying");
  expect(wordsOf(heard("sounded like fly", false))).toBe("");
  expect(wordsOf({ resultIndex: 0, results: [] })).toBe("");
});

it("is offered where the browser can listen, under either name, and nowhere else", () => {
  class Ear {}
  expect(recogniserOf({ webkitSpeechRecognition: Ear })).toBe(Ear);
  expect(recogniserOf({ SpeechRecognition: Ear })).toBe(Ear);
  expect(recogniserOf({})).toBeNull();
});
