/** Photos a signed text names. A text somebody damaged names what is left of them. */
export function photosNamed(content: string): readonly string[] {
  return [...content.matchAll(/"sha256":"([0-9a-f]{64})"/g)].map(([, sha256 = ""]) => sha256);
}
