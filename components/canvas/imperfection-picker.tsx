"use client";
import { X } from "lucide-react";
import { Dialog } from "radix-ui";
import { useRef } from "react";
import styles from "./imperfection-picker.module.css";
import { PickerBody } from "./picker-body";
import type { ImperfectionPickerProps } from "./types";
import { usePickerPlace } from "./use-picker-place";

/** The vocabulary of what can be seen on a chipped bead, with a picture of each: beside the spot that is being named. */
export function ImperfectionPicker(props: ImperfectionPickerProps) {
  const { open, onOpenChange, title = "What is it?" } = props;
  const sheet = useRef<HTMLDivElement>(null);
  const place = usePickerPlace(props.spot ?? null);
  return (
    <Dialog.Root open={open} onOpenChange={onOpenChange}>
      <Dialog.Portal>
        {/* Sees what is pressed beside the picker, and hides nothing: the spot is what is being judged. */}
        <Dialog.Overlay className={styles.beside} />
        <Dialog.Content
          ref={sheet}
          className={styles.sheet}
          data-place={place.kind}
          style={place.kind === "side" ? { left: place.left, width: place.width } : { top: place.top }}
          aria-describedby={undefined}
          onOpenAutoFocus={(event) => {
            event.preventDefault();
            // A finger wants the list; only hands on a keyboard want the search, without a screen keyboard over it.
            const typing = window.matchMedia("(hover: hover)").matches;
            (typing ? sheet.current?.querySelector("input") : sheet.current)?.focus();
          }}
          onCloseAutoFocus={(event) => {
            if (!props.onClosed) return;
            event.preventDefault();
            props.onClosed();
          }}
        >
          <header className={styles.head}>
            <Dialog.Title className={styles.title}>{title}</Dialog.Title>
            <Dialog.Close className={styles.close} aria-label="Close without naming">
              <X aria-hidden="true" />
            </Dialog.Close>
          </header>
          <PickerBody {...props} />
        </Dialog.Content>
      </Dialog.Portal>
    </Dialog.Root>
  );
}
