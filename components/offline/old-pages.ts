/**
 * Whether a page may come out of this device's own store, and then be older than what was saved since: as long as that
 * may be, what was acknowledged is kept as well, until a page shows it.
 */
export function mayBringOldPages(): boolean {
  return Boolean(navigator.serviceWorker?.controller);
}
