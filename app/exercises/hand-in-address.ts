import { headers } from "next/headers";

/** Where this installation is reached as the visitor reached it, and whether a phone could. */
export async function handInAddress(code: string): Promise<{ address: string; onlyHere: boolean }> {
  const asked = await headers();
  const host = asked.get("host") ?? "localhost";
  const scheme = asked.get("x-forwarded-proto")?.split(",")[0]?.trim() || "http";
  return {
    address: `${scheme}://${host}/hand-in/${code}`,
    onlyHere: /^(127\.|localhost|\[::1\])/.test(host),
  };
}
