import { NextResponse, type NextRequest } from "next/server";
import { isOwnWrite, pagePolicy } from "@/app/_door/page-policy";

/** Before every page: who may post to it, and what it may load. Next puts the nonce on its own scripts. */
export function proxy(request: NextRequest): NextResponse {
  if (!isOwnWrite(request.method, request.headers))
    return new NextResponse("This address answers only pages it served itself.", { status: 403 });
  const nonce = Buffer.from(crypto.getRandomValues(new Uint8Array(18))).toString("base64");
  const policy = pagePolicy(nonce, process.env.NODE_ENV === "development");
  const headers = new Headers(request.headers);
  headers.set("x-nonce", nonce);
  headers.set("content-security-policy", policy);
  const answer = NextResponse.next({ request: { headers } });
  answer.headers.set("content-security-policy", policy);
  return answer;
}

/** Not what is served as it lies, nor the doors for machines and photos: a proxy would hold their bodies in memory. */
export const config = { matcher: ["/((?!api/|_next/|.*\\.pdf$).*)"] };
