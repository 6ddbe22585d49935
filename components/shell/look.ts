export const lookChoices = ["auto", "light", "dark"] as const;
/** Which look somebody wants on this device; auto follows the device. */
export type LookChoice = (typeof lookChoices)[number];

const KEY = "toeline-look";
const DARK = "(prefers-color-scheme: dark)";
/** Said on the window when the choice changes here; other windows hear of it by the storage itself. */
const CHANGED = "toeline-look";

/** Runs before anything is painted, so that no page flashes in the other look. As text, because it stands in the page itself. */
export const lookScript = `(()=>{
let choice;
try{choice=localStorage.getItem("${KEY}")}catch{}
document.documentElement.dataset.look=
choice==="light"||choice==="dark"?choice:matchMedia("${DARK}").matches?"dark":"light"
})()`;

/** Where the browser keeps nothing, a choice holds for this page. */
let unkept: LookChoice = "auto";

/** What was chosen on this device; auto where nothing was. */
export function lookChoice(): LookChoice {
  try {
    return lookChoices.find((one) => one === localStorage.getItem(KEY)) ?? "auto";
  } catch {
    return unkept;
  }
}

/** Keeps the choice on this device; whoever listens (`onLook`) shows it. */
export function chooseLook(choice: LookChoice): void {
  try {
    localStorage.setItem(KEY, choice);
  } catch {
    unkept = choice;
  }
  dispatchEvent(new Event(CHANGED));
}

/** The same as the script, for whatever comes after the first painting. */
export function showLook(): void {
  const choice = lookChoice();
  const dark = choice === "auto" ? matchMedia(DARK).matches : choice === "dark";
  document.documentElement.dataset["look"] = dark ? "dark" : "light";
}

/** Tells of each change: the choice, here or in another window, and the device's own. */
export function onLook(hear: () => void): () => void {
  const device = matchMedia(DARK);
  for (const event of [CHANGED, "storage"]) addEventListener(event, hear);
  device.addEventListener("change", hear);
  return () => {
    for (const event of [CHANGED, "storage"]) removeEventListener(event, hear);
    device.removeEventListener("change", hear);
  };
}
