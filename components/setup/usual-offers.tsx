"use client";

import { Plus } from "lucide-react";
import { answerWord, electrodeOf, usualForClass, type Usual } from "@/lib/setup";
import styles from "./fields.module.css";
import { useForm } from "./form-context";

/** What the class settles by itself, offered as taps. Nothing is filled in until it is tapped. */
export function UsualOffers() {
  const { setup, set } = useForm();
  const offers = usualForClass(setup);
  if (offers.length === 0) return null;
  const take = (taken: readonly Usual[]) =>
    set(Object.fromEntries(taken.map(({ field, value }) => [field, value])));
  return (
    <div className={styles.offers} role="group" aria-label="Usual for this class">
      <p>
        Usual for <strong>{electrodeOf(setup)?.id}</strong>. Tap what was so on this bead:
      </p>
      <div className={styles.offerRow}>
        {offers.map((offer) => (
          <button key={offer.field} type="button" onClick={() => take([offer])}>
            <Plus size={18} aria-hidden="true" />
            {answerWord(offer.field, offer.value)}
          </button>
        ))}
        {offers.length > 1 && (
          <button type="button" className={styles.all} onClick={() => take(offers)}>
            All of these
          </button>
        )}
      </div>
    </div>
  );
}
