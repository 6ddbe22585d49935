/**
 * What a person does on a page before its code is here: the browser takes it, and React knows nothing of it. It is kept from
 * the first moment on and told to React as soon as somebody listens, so that no word is lost and no press made in vain.
 */
interface Early {
  /** Of each field, button and form the last that was done to it, in the order in which it was done: a press may undo what was typed. */
  readonly done: Map<Element, Done>;
  /** The page itself is here; what lies in `[data-coming]` is not yet. */
  here: boolean;
}

type Done =
  /** Typed in, chosen or ticked, with what stands there. */
  | { readonly typed: string | boolean }
  /** A button, with what it said then. */
  | { readonly said: string; readonly event: Event }
  /** A form that nobody was there to take, and by which button. */
  | { readonly by: HTMLElement | null };

/** What lies in such an element has no code yet. */
export const COMING = "data-coming";

/**
 * Stands in the head of every page, before all other scripts. Only what a person did counts: a browser that fills in again
 * what stood there before a reload sends no such event. A form with an address works without code and is left alone.
 */
export const earlyScript = `(()=>{
const e=globalThis.__early={done:new Map,here:false};
const note=(one,act)=>{e.done.delete(one);e.done.set(one,act)};
const on=(name,keep)=>addEventListener(name,(v)=>{
const t=v.target;
v.isTrusted&&t instanceof Element&&(!e.here||t.closest("[${COMING}]"))&&keep(t,v)
},true);
on("input",(t)=>note(t,{typed:t.type==="checkbox"||t.type==="radio"?t.checked:t.value}));
on("click",(t,event)=>{
const b=t.closest("button");
if(b&&b.type==="button")note(b,{said:b.textContent,event})
});
on("submit",(t,v)=>{
if(t.getAttribute("action")===null&&t.getAttribute("method")===null){
v.preventDefault();note(t,{by:v.submitter})}
})
})()`;

/** Tells React what was done within `root` while it was not listening there. Call it once React listens. */
export function takeUp(root: Element): void {
  const early = (globalThis as { __early?: Early }).__early;
  if (!early) return;
  if (root === document.documentElement) early.here = true;
  else root.removeAttribute(COMING);
  const isHere = (one: Element): boolean => root.contains(one) && one.closest(`[${COMING}]`) === null;
  const told = taken(early.done, isHere).filter(([, act]) => !("event" in act && isUnderWay(act.event)));
  inTurn(
    told.map(
      ([one, act]) =>
        () =>
          tell(one, act),
    ),
  );
}

function tell(one: Element, act: Done): void {
  if ("typed" in act) tellTyped(one, act.typed);
  else if ("said" in act) pressAgain(one as HTMLButtonElement, act.said);
  else sendAgain(one as HTMLFormElement, act.by);
}

/** Each by itself, so that it knows what came of the one before. */
function inTurn([first, ...rest]: readonly (() => void)[]): void {
  if (!first) return;
  setTimeout(() => {
    first();
    inTurn(rest);
  });
}

/** Takes out of the map what is asked for. */
function taken<K extends Element, V>(from: Map<K, V>, wanted: (one: K) => boolean): [K, V][] {
  const found = [...from].filter(([one]) => wanted(one));
  for (const [one] of found) from.delete(one);
  return found;
}

/** React itself takes a press that is still under way. A turn later every event has ended: ask before. */
const isUnderWay = (event: Event): boolean => event.eventPhase !== Event.NONE;

/** A press does what the button said when it was pressed, or nothing. */
function pressAgain(button: HTMLButtonElement, said: string): void {
  if (button.isConnected && button.textContent === said) button.click();
}

function sendAgain(form: HTMLFormElement, by: HTMLElement | null): void {
  if (form.isConnected) form.requestSubmit(by?.isConnected ? by : null);
}

/**
 * React compares a field with what it last knew of it, and takes what stood there when it came for its own: so the field is
 * set back through React's eyes first, and then to what was typed behind its back.
 */
function tellTyped(field: Element, at: string | boolean): void {
  if (field instanceof HTMLSelectElement) {
    field.value = String(at);
    field.dispatchEvent(new Event("change", { bubbles: true }));
  } else if (field instanceof HTMLTextAreaElement) tellText(field, HTMLTextAreaElement.prototype, String(at));
  else if (!(field instanceof HTMLInputElement)) return;
  else if (field.type === "file") field.dispatchEvent(new Event("change", { bubbles: true }));
  else if (typeof at === "boolean") {
    field.checked = !at;
    field.click();
  } else tellText(field, HTMLInputElement.prototype, at);
}

function tellText<T extends HTMLInputElement | HTMLTextAreaElement>(field: T, kind: T, text: string): void {
  const caret = document.activeElement === field ? field.selectionStart : null;
  field.value = field.defaultValue;
  Object.getOwnPropertyDescriptor(kind, "value")?.set?.call(field, text);
  field.dispatchEvent(new Event("input", { bubbles: true }));
  if (caret !== null) field.setSelectionRange(caret, caret);
}
