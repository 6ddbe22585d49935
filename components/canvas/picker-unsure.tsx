"use client";

import { ArrowLeft, ExternalLink } from "lucide-react";
import { useState } from "react";
import { atlasAddress, CloseUp, TellApartCard } from "@/components/atlas";
import { Button } from "@/components/ui";
import { smallPicture } from "@/lib/atlas";
import {
  appearances,
  imperfections,
  tellApart,
  type Appearance,
  type ImperfectionId,
  type Process,
} from "@/lib/trade";
import styles from "./imperfection-picker.module.css";
import type { Doubt } from "./picker-groups";
import unsure from "./picker-unsure.module.css";

interface UnsureProps {
  readonly doubt: Doubt;
  readonly process: Process | null;
  /** Another thing to look at; null: back to the list. */
  readonly onDoubt: (doubt: Doubt | null) => void;
  readonly onPick: (id: ImperfectionId) => void;
}

/** The way of somebody who is not sure: what do you see, what is it most like, and then look-alikes side by side. */
export function PickerUnsure({ doubt, process, onDoubt, onPick }: UnsureProps) {
  const [seen, setSeen] = useState<Appearance | null>(null);
  const back = () => {
    if (doubt !== "unsure" && seen !== null) return onDoubt("unsure");
    if (seen === null) return onDoubt(null);
    setSeen(null);
  };
  return (
    <div className={styles.list} key={`${doubt} ${seen?.id ?? ""}`}>
      <button type="button" className={unsure.back} onClick={back}>
        <ArrowLeft aria-hidden="true" size={20} /> Back
      </button>
      {doubt !== "unsure" ? (
        <Compare id={doubt} process={process} onPick={onPick} />
      ) : seen === null ? (
        <Tiles
          asked="What do you see?"
          tiles={appearances.map((one) => ({
            key: one.id,
            picture: one.kinds[0]!,
            words: one.name.charAt(0).toUpperCase() + one.name.slice(1),
            onPress: () => setSeen(one),
          }))}
        />
      ) : (
        <Tiles
          asked="Which is it most like?"
          tiles={seen.kinds.map((id) => ({
            key: id,
            picture: id,
            words: imperfections[id].name,
            onPress: () => onDoubt(id),
          }))}
        />
      )}
    </div>
  );
}

interface Tile {
  readonly key: string;
  readonly picture: ImperfectionId;
  readonly words: string;
  readonly onPress: () => void;
}

function Tiles({ asked, tiles }: { asked: string; tiles: readonly Tile[] }) {
  return (
    <section className={unsure.part} aria-label={asked}>
      <h3 className={unsure.asked}>{asked}</h3>
      <ul className={unsure.tiles}>
        {tiles.map(({ key, picture, words, onPress }) => (
          <li key={key}>
            <button type="button" className={unsure.tile} onClick={onPress}>
              <CloseUp picture={{ ...smallPicture(picture), alt: "" }} eager />
              <span>{words}</span>
            </button>
          </li>
        ))}
      </ul>
    </section>
  );
}

/** One kind beside each of its look-alikes, with a button under each that names the mark. */
function Compare({ id, process, onPick }: { id: ImperfectionId } & Pick<UnsureProps, "process" | "onPick">) {
  const { name, look, inspectorFirst } = imperfections[id];
  const act = (one: ImperfectionId) => (
    <Button onClick={() => onPick(one)} aria-label={`It is this: ${imperfections[one].name}`}>
      It is this
    </Button>
  );
  return (
    <section className={unsure.part} aria-label={`How to tell ${name}`}>
      <h3 className={unsure.asked}>{name}, or something like it?</h3>
      <p>{look}</p>
      {inspectorFirst && <p className={styles.warn}>Show it to an inspector before any repair.</p>}
      {tellApart(id).map((apart) => (
        <TellApartCard key={apart.other} {...{ id, apart, act }} small />
      ))}
      <a className={unsure.atlas} href={atlasAddress(id, process)} target="_blank" rel="noreferrer">
        All about it in the atlas <ExternalLink aria-hidden="true" size={18} />
      </a>
    </section>
  );
}
