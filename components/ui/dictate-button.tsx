"use client";

import { Mic, MicOff } from "lucide-react";
import { useEffect, useRef, useState, useSyncExternalStore } from "react";
import { Button } from "./button";
import { recogniserOf, wordsOf, type Recogniser } from "./recogniser";

const never = () => () => undefined;

/**
 * Takes down what is said, where this browser can listen; elsewhere nothing is offered, and the keyboard of a phone has its
 * own microphone. Some browsers send the sound to their maker to be understood, so that is said before anybody speaks.
 */
export function DictateButton({ onText }: { onText: (said: string) => void }) {
  const { offered, listening, refused, begin, end } = useDictation(onText);
  if (!offered) return null;
  return (
    <>
      <Button aria-pressed={listening} onClick={listening ? end : begin}>
        {listening ? <MicOff aria-hidden="true" size={20} /> : <Mic aria-hidden="true" size={20} />}
        {listening ? "Stop listening" : "Say it"}
      </Button>
      <p role="status">
        {listening && "Listening. Your browser may send the sound to its maker to understand it."}
        {refused && "Nothing was understood. Allow the microphone, or type it."}
      </p>
    </>
  );
}

function useDictation(onText: (said: string) => void) {
  const make = useSyncExternalStore(
    never,
    () => recogniserOf(globalThis),
    () => null,
  );
  const [listening, setListening] = useState(false);
  const [refused, setRefused] = useState(false);
  const running = useRef<Recogniser | null>(null);
  // While somebody speaks the words before change.
  const tell = useRef(onText);
  useEffect(() => {
    tell.current = onText;
  });
  useEffect(() => () => running.current?.abort(), []);

  const begin = () => {
    if (make === null) return;
    const ear = new make();
    ear.lang = navigator.language;
    ear.continuous = true;
    ear.onresult = (heard) => tell.current(wordsOf(heard));
    ear.onerror = () => setRefused(true);
    ear.onend = () => setListening(false);
    running.current = ear;
    setRefused(false);
    setListening(true);
    ear.start();
  };
  return { offered: make !== null, listening, refused, begin, end: () => running.current?.stop() };
}
