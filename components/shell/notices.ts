import { keptHere } from "./kept-here";

/** Whether this device tells of what came, and to whom: kept here, off until somebody switches it on. */
const kept = keptHere("toeline-notices");

/** Id of the person who is told on this device; empty: nobody is. */
export const toldHere = (): string => kept.read() ?? "";
export const tellHere = kept.write;
export const onTold = kept.listen;

/** One thing that came, as the API says it. */
export interface Came {
  readonly kind: "handed-in" | "returned";
  readonly handInId: string;
  readonly exercise: string;
}

/** What a notice says, and where it leads. */
export const noticeOf = ({ kind, handInId, exercise }: Came) => ({
  title: kind === "returned" ? "Feedback came back" : "Handed in",
  body: exercise,
  // A window that says the same again takes the place of the first.
  tag: `toeline-${kind}-${handInId}`,
  href: `/feedback/${handInId}`,
});

/** Shows it: by the page, or by its worker where the browser (on phones) leaves that to the worker. */
export async function showNotice(came: Came): Promise<void> {
  const { title, href, ...rest } = noticeOf(came);
  const options = { ...rest, icon: "/icons/192.png", data: href };
  try {
    const shown = new Notification(title, options);
    shown.onclick = () => {
      window.focus();
      window.location.assign(href);
    };
  } catch {
    const worker = await navigator.serviceWorker?.getRegistration();
    await worker?.showNotification(title, options);
  }
}
