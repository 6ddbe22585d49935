"use client";

import { useEffect, useRef, useState } from "react";
import { Button } from "@/components/ui";
import type { RunSheetDocument } from "@/lib/report";
import styles from "./run-sheet.module.css";

/** The pace, large, and a tick for it: one each 25 mm, and three softer ones between, so that the ear can keep it. */
export function Metronome({ pace }: { pace: RunSheetDocument["pace"] }) {
  const [running, setRunning] = useState(false);
  const beat = useTicks(running, pace.secondsExactly / 4);
  return (
    <div className={styles.metronome}>
      <p className={styles.each}>{pace.length}</p>
      <p className={styles.seconds}>{pace.seconds}</p>
      <div className={styles.beats} aria-hidden="true">
        {[0, 1, 2, 3].map((i) => (
          <span key={i} data-on={running && beat % 4 === i} />
        ))}
      </div>
      <Button
        size="large"
        tone={running ? "plain" : "main"}
        aria-pressed={running}
        onClick={() => setRunning(!running)}
      >
        {running ? "Stop the tick" : "Tick this pace"}
      </Button>
    </div>
  );
}

/** Counts beats while running, with a sound for each. The sound needs the tap that started it. */
function useTicks(running: boolean, secondsEach: number): number {
  const [beat, setBeat] = useState(0);
  const sound = useRef<AudioContext | null>(null);
  useEffect(() => {
    if (!running) return;
    sound.current ??= "AudioContext" in window ? new AudioContext() : null;
    let count = 0;
    const tick = () => {
      setBeat(count);
      if (sound.current) click(sound.current, count % 4 === 0);
      count += 1;
    };
    tick();
    const timer = setInterval(tick, secondsEach * 1000);
    return () => clearInterval(timer);
  }, [running, secondsEach]);
  useEffect(() => () => void sound.current?.close(), []);
  return beat;
}

function click(context: AudioContext, strong: boolean): void {
  const tone = context.createOscillator();
  const loudness = context.createGain();
  tone.frequency.value = strong ? 1320 : 880;
  loudness.gain.setValueAtTime(strong ? 0.5 : 0.15, context.currentTime);
  loudness.gain.exponentialRampToValueAtTime(0.001, context.currentTime + 0.07);
  tone.connect(loudness).connect(context.destination);
  tone.start();
  tone.stop(context.currentTime + 0.08);
}
