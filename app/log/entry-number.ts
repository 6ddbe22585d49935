/** The most a number of the log can be in the database. */
const MOST = 2_147_483_647;

/** The number of an entry as an address has it; null: it is none. */
export function entryNumber(text: unknown): number | null {
  const asked = typeof text === "string" && /^\d{1,10}$/.test(text) ? Number(text) : 0;
  return asked > 0 && asked <= MOST ? asked : null;
}
