import { keptHere } from "./kept-here";

export const lookChoices = ["auto", "light", "dark"] as const;
/** Which look somebody wants on this device; auto follows the device. */
export type LookChoice = (typeof lookChoices)[number];

const KEY = "toeline-look";
const DARK = "(prefers-color-scheme: dark)";
const kept = keptHere(KEY);

/** Runs before anything is painted, so that no page flashes in the other look. As text, because it stands in the page itself. */
export const lookScript = `(()=>{
let choice;
try{choice=localStorage.getItem("${KEY}")}catch{}
document.documentElement.dataset.look=
choice==="light"||choice==="dark"?choice:matchMedia("${DARK}").matches?"dark":"light"
})()`;

/** What was chosen on this device; auto where nothing was. */
export const lookChoice = (): LookChoice => lookChoices.find((one) => one === kept.read()) ?? "auto";

/** Keeps the choice on this device; whoever listens (`onLook`) shows it. */
export const chooseLook = (choice: LookChoice): void => kept.write(choice);

/** The same as the script, for whatever comes after the first painting. */
export function showLook(): void {
  const choice = lookChoice();
  const dark = choice === "auto" ? matchMedia(DARK).matches : choice === "dark";
  document.documentElement.dataset["look"] = dark ? "dark" : "light";
}

/** Tells of each change: the choice, here or in another window, and the device's own. */
export function onLook(hear: () => void): () => void {
  const device = matchMedia(DARK);
  const deaf = kept.listen(hear);
  device.addEventListener("change", hear);
  return () => {
    deaf();
    device.removeEventListener("change", hear);
  };
}
