import { describe, expect, it } from "vitest";
import { nodeKeys } from "@/lib/keys";
import { signerOf } from "@/lib/keys/key-pair";

const base64url = (hex: string): string => Buffer.from(hex, "hex").toString("base64url");
/** What stands before the 32 bytes of a private key in PKCS #8 (RFC 8410, 7). */
const PKCS8_HEAD = "302e020100300506032b657004220420";

/** RFC 8032, 7.1, tests 1 and 2: those whose message is a text. */
const published = [
  {
    secret: "9d61b19deffd5a60ba844af492ec2cc44449c5697b326919703bac031cae7f60",
    publicKey: "d75a980182b10ab7d54bfed3c964073a0ee172f3daa62325af021a68f707511a",
    text: "",
    signature:
      "e5564300c360ac729086e2cc806e828a84877f1eb8e5d974d873e065224901555fb8821590a33bacc61e39701cf9b46bd25bf5f0595bbe24655141438e7a100b",
  },
  {
    secret: "4ccd089b28ff96da9db6c346ec114e0f5b8a319f35aba624da8cf6ed4fb8a6fb",
    publicKey: "3d4017c3e843895a92b70aa74d1b7ebc9c982ccf2ec4968cc0cd55f12af4660c",
    text: "r",
    signature:
      "92a009a9f0d4cab8720e820b5f642540a2b27b5416503f8fb3762223ebdb69da085ac1e43e15996e458f3613d0f11d8c387b2eaeb4302aeeb00d291612bb0c00",
  },
];

describe("the arithmetic of keys", () => {
  it.each(published)("verifies the published signature of “$text”", ({ publicKey, text, signature }) => {
    expect(nodeKeys.verifies(base64url(publicKey), text, base64url(signature))).toBe(true);
    expect(nodeKeys.verifies(base64url(publicKey), `${text} `, base64url(signature))).toBe(false);
  });

  it.each(published)("knows the public key of a private part", ({ secret, publicKey }) => {
    expect(signerOf(Buffer.from(PKCS8_HEAD + secret, "hex")).publicKey).toBe(base64url(publicKey));
  });

  it("refuses every single changed bit of a signature, and every other writing of the same bytes", () => {
    const [{ publicKey, text, signature } = published[0]!] = published;
    const key = base64url(publicKey);
    for (let bit = 0; bit < 512; bit += 1) {
      const bytes = Buffer.from(signature, "hex");
      bytes[bit >> 3]! ^= 1 << (bit & 7);
      expect(nodeKeys.verifies(key, text, bytes.toString("base64url")), String(bit)).toBe(false);
    }
    for (const other of [`${base64url(signature)}=`, base64url(signature).slice(0, -1), "", "x"])
      expect(nodeKeys.verifies(key, text, other)).toBe(false);
    expect(nodeKeys.idOf(`${key}=`)).toBeNull();
    expect(nodeKeys.idOf(key.slice(1))).toBeNull();
  });
});
