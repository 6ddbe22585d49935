"use client";

import { Dialog } from "radix-ui";
import type { ReactNode } from "react";
import styles from "./dialog-box.module.css";

/** A box over the page, which waits for an answer or is looked at and closed again. What is in it begins with its title. */
export function DialogBox({
  open,
  onOpen,
  children,
}: {
  open: boolean;
  onOpen: (open: boolean) => void;
  children: ReactNode;
}) {
  return (
    <Dialog.Root open={open} onOpenChange={onOpen}>
      <Dialog.Portal>
        <Dialog.Overlay className={styles.veil} />
        <Dialog.Content className={styles.box} aria-describedby={undefined}>
          {children}
        </Dialog.Content>
      </Dialog.Portal>
    </Dialog.Root>
  );
}
