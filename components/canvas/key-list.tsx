"use client";

import { Dialog } from "radix-ui";
import { Button, DialogBox } from "@/components/ui";
import { keysAnywhere, keysOnPhoto, type KeyRow } from "./key-rows";
import styles from "./key-list.module.css";
import type { Tool } from "./types";

export interface KeyListProps {
  readonly open: boolean;
  readonly offered: readonly Tool[];
  readonly onOpen: (open: boolean) => void;
}

/** Every key that marking listens to. Over the page, because it is looked at and closed again. */
export function KeyList({ open, offered, onOpen }: KeyListProps) {
  return (
    <DialogBox open={open} onOpen={onOpen}>
      <Dialog.Title>Keys</Dialog.Title>
      <h3>Wherever no field has the focus</h3>
      <Rows rows={keysAnywhere(offered)} />
      <h3>On the photo</h3>
      <Rows rows={keysOnPhoto} />
      <Dialog.Close asChild>
        <Button tone="main" className={styles.close}>
          Close
        </Button>
      </Dialog.Close>
    </DialogBox>
  );
}

function Rows({ rows }: { rows: readonly KeyRow[] }) {
  return (
    <dl className={styles.rows}>
      {rows.map(({ shown, does }) => (
        <div key={shown}>
          <dt>
            <kbd>{shown}</kbd>
          </dt>
          <dd>{does}</dd>
        </div>
      ))}
    </dl>
  );
}
