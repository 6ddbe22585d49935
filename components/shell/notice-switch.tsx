"use client";

import { useState, useSyncExternalStore } from "react";
import styles from "./switch.module.css";
import { onTold, tellHere, toldHere } from "./notices";

type Permission = NotificationPermission | "none";
const never = () => () => undefined;
const permissionNow = (): Permission =>
  typeof Notification === "undefined" ? "none" : Notification.permission;

const words: Readonly<Record<Permission, string>> = {
  none: "This browser shows no notices here: they need an address with https, or this machine itself.",
  denied: "This browser was told to show none of ours. Its own settings of this page allow them again.",
  default: "Your browser asks first.",
  granted:
    "Shown while a page of Toeline is open here, and by nothing else. They name the exercise, no person.",
};

/** Switches notices on this device on and off for one person. */
export function NoticeSwitch({ personId }: { personId: string }) {
  const told = useSyncExternalStore(onTold, toldHere, () => "");
  const first = useSyncExternalStore(never, permissionNow, () => "default" as const);
  const [asked, setAsked] = useState<Permission | null>(null);
  const permission = asked ?? first;
  const isOn = told === personId && permission === "granted";
  const change = async (on: boolean) => {
    if (!on) return tellHere("");
    const answer = await Notification.requestPermission();
    setAsked(answer);
    if (answer === "granted") tellHere(personId);
  };
  const cannot = permission === "none" || permission === "denied";
  return (
    <>
      <div className={`${styles.switch} ${styles.onPage}`} role="group" aria-label="Notices on this device">
        {[false, true].map((on) => (
          <button
            key={String(on)}
            type="button"
            aria-pressed={on === isOn}
            disabled={on && cannot}
            onClick={() => void change(on)}
          >
            {on ? "On" : "Off"}
          </button>
        ))}
      </div>
      <p>{words[permission]}</p>
    </>
  );
}
