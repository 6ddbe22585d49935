import { connect, type Socket } from "node:net";
import { afterAll, beforeAll, expect, it } from "vitest";
import { startServer, type TestServer } from "./support/server";

let server: TestServer;
beforeAll(async () => {
  server = await startServer();
});
afterAll(() => server?.stop());

const SLOW = 300;
/** How often each sends one more letter, ms. */
const LETTER_MS = 1_000;
/** Seconds of it. */
const LAST_S = 65;

/** Somebody who never comes to the end of what they send: of the head of a request, or of its body. */
function slowSender(port: number, part: "head" | "body"): Socket {
  const socket = connect(port, "127.0.0.1");
  socket.on("error", () => undefined);
  const host = `host: 127.0.0.1:${port}\r\n`;
  const json = "content-type: application/json\r\ncontent-length: 100000\r\n\r\n";
  socket.write(`POST /api/diagnose HTTP/1.1\r\n${host}${part === "body" ? json : "x-slow: "}`);
  const timer = setInterval(() => socket.writable && socket.write("x"), LETTER_MS);
  socket.on("close", () => clearInterval(timer));
  return socket;
}

it("three hundred who never finish what they send keep nobody else from an answer", async () => {
  const port = Number(new URL(server.url).port);
  const senders = Array.from({ length: SLOW }, (_, i) => slowSender(port, i % 2 === 0 ? "head" : "body"));
  try {
    for (let second = 0; second < LAST_S; second += 5) {
      const answers = await Promise.all(
        ["/api/health", "/", "/trends"].map((path) => fetch(server.url + path)),
      );
      expect(answers.map(({ status }) => status)).toEqual([200, 200, 200]);
      await Promise.all(answers.map((answer) => answer.arrayBuffer()));
      await new Promise((resolve) => setTimeout(resolve, 5_000));
    }
    // Most still hold their place: it was not that they were turned away at once.
    expect(senders.filter((socket) => socket.connecting || socket.writable).length).toBeGreaterThan(SLOW / 4);
  } finally {
    for (const socket of senders) socket.destroy();
  }
});
