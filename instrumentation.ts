/** Runs once in the server before its first request. */
export async function register(): Promise<void> {
  if (process.env["NEXT_RUNTIME"] !== "nodejs") return;
  const { tellOwnAddress } = await import("@/lib/account");
  tellOwnAddress();
}
