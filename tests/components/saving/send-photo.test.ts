import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { sendPhoto } from "@/components/saving/send-photo";
import { MAX_PHOTO_BYTES } from "@/lib/base";

/** The browser's request, as far as it is used; the test says how it ends. */
class FakeRequest {
  static made: FakeRequest[] = [];
  upload: { onprogress?: (event: unknown) => void } = {};
  onload?: () => void;
  onerror?: () => void;
  onabort?: () => void;
  status = 0;
  response: unknown = null;
  opened = "";
  headers: Record<string, string> = {};
  sent: unknown = null;
  constructor() {
    FakeRequest.made.push(this);
  }
  open(method: string, to: string) {
    this.opened = `${method} ${to}`;
  }
  setRequestHeader(name: string, value: string) {
    this.headers[name] = value;
  }
  send(body: unknown) {
    this.sent = body;
  }
  end(status: number, response: unknown) {
    this.status = status;
    this.response = response;
    this.onload?.();
  }
}

const photoOf = (size: number) => ({ size }) as File;
const shares: number[] = [];
const send = (photo: File) =>
  sendPhoto({
    to: "/api/place",
    photo,
    headers: { "hand-in-form": "form" },
    read: ({ address }) => (typeof address === "string" ? { address } : null),
    words: { brokeOff: "Broke off.", refused: "Refused." },
    onProgress: (share) => shares.push(share),
  });
const request = () => FakeRequest.made.at(-1)!;

beforeEach(() => {
  FakeRequest.made = [];
  shares.length = 0;
  vi.stubGlobal("XMLHttpRequest", FakeRequest);
});
afterEach(() => vi.unstubAllGlobals());

describe("sending a photo", () => {
  it("sends the bytes as they are and reads the answer", async () => {
    const photo = photoOf(3);
    const answer = send(photo);
    request().upload.onprogress?.({ lengthComputable: true, loaded: 1, total: 4 });
    request().end(201, { address: "/hand-in/x" });
    expect(await answer).toEqual({ ok: true, value: { address: "/hand-in/x" } });
    expect(request().opened).toBe("POST /api/place");
    expect(request().headers).toEqual({
      "content-type": "application/octet-stream",
      "hand-in-form": "form",
    });
    expect(request().sent).toBe(photo);
    expect(shares).toEqual([0.25]);
  });

  it.each([
    [0, "photo-empty"],
    [MAX_PHOTO_BYTES + 1, "photo-too-large"],
  ])("refuses %i bytes before anything goes out", async (size, code) => {
    expect(await send(photoOf(size))).toMatchObject({ ok: false, issues: [{ code }] });
    expect(FakeRequest.made).toEqual([]);
  });

  it("sends one of exactly the limit, and never says that too large a photo is as large as the limit", async () => {
    void send(photoOf(MAX_PHOTO_BYTES));
    expect(FakeRequest.made).toHaveLength(1);
    const answer = await send(photoOf(MAX_PHOTO_BYTES + 1));
    expect(answer).toMatchObject({
      issues: [{ message: expect.stringContaining("has 41 MB; up to 40 MB") }],
    });
  });

  it("hands on every line of a refusal", async () => {
    const issues = [
      { code: "a", message: "One." },
      { code: "b", message: "Two." },
    ];
    const answer = send(photoOf(3));
    request().end(422, { issues });
    expect(await answer).toEqual({ ok: false, issues });
  });

  it.each([
    ["a body that is no JSON", 404, null],
    ["issues without words", 404, { issues: [{ code: "gone" }] }],
    ["a success that brings nothing", 201, {}],
  ])("has a sentence for %s", async (_, status, body) => {
    const answer = send(photoOf(3));
    request().end(status, body);
    expect(await answer).toMatchObject({ ok: false, issues: [{ message: "Refused." }] });
  });

  it("takes what stands between it and the server for nobody: the photo goes out again later", async () => {
    const answer = send(photoOf(3));
    request().end(502, null);
    expect(await answer).toMatchObject({
      ok: false,
      issues: [{ code: "unreachable", message: "Broke off." }],
    });
  });

  it.each(["onerror", "onabort"] as const)("answers when the connection is cut (%s)", async (how) => {
    const answer = send(photoOf(3));
    request()[how]?.();
    expect(await answer).toMatchObject({ ok: false, issues: [{ message: "Broke off." }] });
  });
});
