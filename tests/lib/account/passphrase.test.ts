import { describe, expect, it } from "vitest";
import { passphraseIssues } from "@/lib/account/passphrase";
import { processorMs } from "../../setup/processor-time";

const codes = (passphrase: string, words?: string[]) =>
  passphraseIssues(passphrase, words).map(({ code }) => code);

describe("a passphrase", () => {
  // From the commonest of published lists of leaked passwords, and what people make of them.
  it.each([
    "password123",
    "Password123!",
    "1234567890",
    "qwertyuiop",
    "iloveyou12",
    "letmein123",
    "P@ssw0rd2024",
    "aaaaaaaaaaaa",
    "abcabcabcabc",
    "toeline2026",
    "qwerty123456",
    "zaq12wsxcde",
  ])("that is guessed first is refused: %s", (one) => expect(codes(one)).toEqual(["passphrase-common"]));

  it.each([
    "a bead of slag and rain",
    "slag-then-bead",
    "correct horse battery staple",
    "gk7#vw2!mq",
    "drei Raupen im Regen",
  ])("that nobody guesses soon is taken: %s", (one) => expect(codes(one)).toEqual([]));

  it("that is short says so, and one made of its owner's own name is refused", () => {
    expect(codes("gk7#vw2")).toEqual(["passphrase-short"]);
    expect(codes("vesna.ling1", ["vesna.ling"])).toEqual(["passphrase-common"]);
  });

  it("of any length is judged in no time", async () => {
    expect(await processorMs(() => codes("a1b2 c3d4 ".repeat(2000)))).toBeLessThan(5000);
  });
});
