import type { ReactNode } from "react";
import { smallPicture, pictureAt } from "@/lib/atlas";
import { imperfections, type ImperfectionId, type TellApart } from "@/lib/trade";
import { CloseUp } from "./close-up";
import styles from "./tell-apart-card.module.css";

/**
 * Two look-alikes side by side: what to do, and what is seen if it is the one or the other. `act` puts something under
 * each, such as a button that settles it.
 */
export function TellApartCard({
  id,
  apart,
  act,
  small = false,
}: {
  id: ImperfectionId;
  apart: TellApart;
  act: (id: ImperfectionId) => ReactNode;
  small?: boolean;
}) {
  const side = (one: ImperfectionId, seen: string) => (
    <div className={styles.side}>
      <CloseUp picture={small ? smallPicture(one) : pictureAt(one, 2)} />
      <h4>{imperfections[one].name}</h4>
      <p>{seen}</p>
      {act(one)}
    </div>
  );
  return (
    <article className={styles.card} data-testid="tell-apart">
      <p className={styles.test}>{apart.test}</p>
      <div className={styles.pair}>
        {side(id, apart.ifThis)}
        {side(apart.other, apart.ifOther)}
      </div>
    </article>
  );
}
