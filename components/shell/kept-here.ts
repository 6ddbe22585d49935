/** One thing that somebody chose on this device; where the browser keeps nothing it holds for this page. */
export interface KeptHere {
  /** null: nothing was chosen. */
  read(): string | null;
  /** Keeps it; whoever listens hears of it. */
  write(value: string): void;
  /** Tells of each change, here or in another window. Returns how to stop. */
  listen(hear: () => void): () => void;
}

export function keptHere(key: string): KeptHere {
  let unkept: string | null = null;
  // Other windows hear of it by the storage itself.
  const events = [key, "storage"];
  return {
    read() {
      try {
        return localStorage.getItem(key);
      } catch {
        return unkept;
      }
    },
    write(value) {
      try {
        localStorage.setItem(key, value);
      } catch {
        unkept = value;
      }
      dispatchEvent(new Event(key));
    },
    listen(hear) {
      for (const event of events) addEventListener(event, hear);
      return () => {
        for (const event of events) removeEventListener(event, hear);
      };
    },
  };
}
