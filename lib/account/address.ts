import { isIPv6 } from "node:net";

/**
 * From where a request came, as far as throttles go: the server writes the socket's address into this header itself
 * (`own-address`), or the proxy that was said to stand in front adds the last entry. Of an IPv6 address the first half,
 * because one line gets the other half to use as it likes. Without a header: one name for all.
 */
export function addressOf(headers: Headers): string {
  const last = headers.get("x-forwarded-for")?.split(",").at(-1)?.trim() ?? "";
  const plain = last.replace(/^::ffff:(?=\d+\.)/i, "");
  return isIPv6(plain) ? firstHalf(plain) : plain || "unknown";
}

function firstHalf(address: string): string {
  const [front = "", back] = address.split("%")[0]!.split("::");
  const left = front.split(":").filter(Boolean);
  const right = (back ?? "").split(":").filter(Boolean);
  const middle = back === undefined ? 0 : 8 - left.length - right.length;
  const all = [...left, ...Array.from({ length: middle }, () => "0"), ...right];
  return `${all
    .slice(0, 4)
    .map((group) => parseInt(group, 16).toString(16))
    .join(":")}::/64`;
}
