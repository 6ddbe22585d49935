/** Whether the accounts library said an ordinary no (wrong passphrase, unknown token), as HTTP counts it: 4xx. */
export function isRefusal(error: unknown): boolean {
  if (typeof error !== "object" || error === null) return false;
  const status = (error as { statusCode?: unknown }).statusCode;
  return typeof status === "number" && status >= 400 && status < 500;
}
