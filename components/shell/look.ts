export const lookChoices = ["auto", "light", "dark"] as const;
/** Which look somebody wants on this device; auto follows the device. */
export type LookChoice = (typeof lookChoices)[number];

const KEY = "toeline-look";
/** Said on the window when the choice changes here; other windows hear of it by the storage itself. */
const CHANGED = "toeline-look";

/**
 * Runs before anything is painted, so that no page flashes in the other look, and from then on follows the device and the
 * choice. As text, because it must stand in the page itself.
 */
export const lookScript = `(()=>{
const root=document.documentElement,dark=matchMedia("(prefers-color-scheme: dark)");
const set=(event)=>{
let choice=event&&event.detail;
try{choice=choice||localStorage.getItem("${KEY}")}catch{}
root.dataset.look=choice==="light"||choice==="dark"?choice:dark.matches?"dark":"light"};
set();
dark.addEventListener("change",()=>set());
addEventListener("storage",()=>set());
addEventListener("${CHANGED}",set);
})()`;

/** What was chosen on this device; auto where nothing was, or where the browser keeps nothing. */
export function lookChoice(): LookChoice {
  try {
    return lookChoices.find((one) => one === localStorage.getItem(KEY)) ?? "auto";
  } catch {
    return "auto";
  }
}

/** Keeps the choice on this device and shows it at once; where the browser keeps nothing it holds for this page. */
export function chooseLook(choice: LookChoice): void {
  try {
    localStorage.setItem(KEY, choice);
  } catch {
    // A browser that keeps nothing still shows it.
  }
  dispatchEvent(new CustomEvent(CHANGED, { detail: choice }));
}

/** Tells of each change, here or in another window. */
export function onLook(hear: () => void): () => void {
  for (const event of [CHANGED, "storage"]) addEventListener(event, hear);
  return () => {
    for (const event of [CHANGED, "storage"]) removeEventListener(event, hear);
  };
}
