/** Whether a Host header names this machine itself. A foreign name can be made to point at 127.0.0.1; it is refused. */
export function isLoopbackHost(host: string): boolean {
  return /^(127\.0\.0\.1|localhost|\[::1\])(:\d+)?$/.test(host);
}
