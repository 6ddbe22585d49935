import { createServer } from "node:http";
import { once } from "node:events";
import type { AddressInfo } from "node:net";
import { afterEach, describe, expect, it } from "vitest";
import { addressOf, tellOwnAddress } from "@/lib/account";

const from = (value?: string) =>
  addressOf(new Headers(value === undefined ? {} : { "x-forwarded-for": value }));

describe("where a request comes from", () => {
  it("is the last entry, because only that one was written by our own side", () => {
    expect(from("1.2.3.4, 10.0.0.9")).toBe("10.0.0.9");
    expect(from("::ffff:10.0.0.9")).toBe("10.0.0.9");
    expect(from()).toBe("unknown");
  });

  it("is of IPv6 the half that a line is given, however it is written (RFC 4291, 2.2)", () => {
    const half = "2001:db8:0:1::/64";
    expect(from("2001:db8:0:1:aaaa:bbbb:cccc:dddd")).toBe(half);
    expect(from("2001:DB8::1:0:0:0:7")).toBe(half);
    expect(from("2001:db8:0:1::")).toBe(half);
    expect(from("2001:db8:0:2::")).not.toBe(half);
    expect(from("::1")).toBe("0:0:0:0::/64");
  });
});

describe("a server that tells its own address", () => {
  const before = process.env["TOELINE_ORIGIN"];
  afterEach(() => {
    if (before === undefined) delete process.env["TOELINE_ORIGIN"];
    else process.env["TOELINE_ORIGIN"] = before;
  });

  it("believes nobody who says another, unless a proxy was said to stand in front", async () => {
    tellOwnAddress();
    const server = createServer((request, response) => response.end(request.headers["x-forwarded-for"]));
    server.listen(0, "127.0.0.1");
    await once(server, "listening");
    const ask = async () => {
      const url = `http://127.0.0.1:${(server.address() as AddressInfo).port}`;
      return (await fetch(url, { headers: { "x-forwarded-for": "6.6.6.6" } })).text();
    };
    delete process.env["TOELINE_ORIGIN"];
    expect(await ask()).toBe("127.0.0.1");
    process.env["TOELINE_ORIGIN"] = "https://shop.example";
    expect(await ask()).toBe("6.6.6.6");
    server.close();
  });
});
