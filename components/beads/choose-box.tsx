"use client";

import { alsoChoose, choosingOff, isChosen, MOST_CHOSEN, type Chosen, type ChosenBead } from "./chosen";
import styles from "./choose.module.css";
import { useChosen } from "./use-chosen";

/** Chooses one bead for what is done with several. */
export function ChooseBox({ id, number }: ChosenBead) {
  const [chosen, choose] = useChosen();
  const on = isChosen(chosen, id);
  return (
    <label className={styles.box} data-on={on}>
      <input
        type="checkbox"
        checked={on}
        disabled={!on && chosen.length >= MOST_CHOSEN}
        onChange={({ target: { checked } }) =>
          choose((before) => (checked ? alsoChoose(before, [{ id, number }]) : choosingOff(before, [{ id }])))
        }
      />
      <span className="visually-hidden">Choose bead {number}</span>
    </label>
  );
}

/** Chooses every bead of this page, or takes all of them off again. */
export function ChoosePage({ beads }: { beads: Chosen }) {
  const [chosen, choose] = useChosen();
  const on = beads.length > 0 && beads.every(({ id }) => isChosen(chosen, id));
  return (
    <label className={styles.page}>
      <input
        type="checkbox"
        checked={on}
        onChange={({ target: { checked } }) =>
          choose((before) => (checked ? alsoChoose(before, beads) : choosingOff(before, beads)))
        }
      />
      <span>
        Choose all<span className="visually-hidden"> on this page</span>
      </span>
    </label>
  );
}
