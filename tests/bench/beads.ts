import type { BeadContent } from "@/lib/assess";
import { newMark, type Drawing, type Mark } from "@/lib/marks";

/** Marks in rows over the middle of the photo, of every shape; the first is a ring alone, to be dragged. */
export function manyMarks(count: number): readonly Mark[] {
  return Array.from({ length: count }, (_, i) => {
    const x = 900 + (i % 25) * 250;
    const y = 900 + Math.floor(i / 25) * 210;
    const id = `m${i}`;
    if (i % 3 === 0) return newMark(id, "surface-porosity", { kind: "point", at: { x, y }, radius: 40 });
    if (i % 3 === 1) {
      const points = [0, 60, 120].map((dx, k) => ({ x: x + dx, y: y + (k % 2) * 30 }));
      return newMark(id, "undercut", { kind: "line", points });
    }
    const points = Array.from({ length: 12 }, (_, k) => ({
      x: x + 70 * Math.cos((k * Math.PI) / 6),
      y: y + 50 * Math.sin((k * Math.PI) / 6),
    }));
    return newMark(id, "spatter", { kind: "outline", points });
  });
}

async function json<T>(url: string, init: RequestInit): Promise<T> {
  const answer = await fetch(url, init);
  if (!answer.ok) throw new Error(`${url}: ${answer.status} ${await answer.text()}`);
  return (await answer.json()) as T;
}

/** A bead with one photo and this drawing. */
export async function beadWith(
  url: string,
  jpeg: Buffer,
  drawing: Drawing,
): Promise<{ id: string; sha256: string }> {
  const head = { origin: url, "content-type": "application/json" };
  const { id } = await json<{ id: string }>(`${url}/api/beads`, {
    method: "POST",
    headers: head,
    body: "{}",
  });
  const { photo } = await json<{ photo: { id: string; sha256: string } }>(`${url}/api/beads/${id}/photos`, {
    method: "POST",
    headers: { origin: url, "content-type": "image/jpeg" },
    body: new Uint8Array(jpeg),
  });
  const bead = await json<{ revision: number; content: BeadContent }>(`${url}/api/beads/${id}`, {});
  const content = { ...bead.content, photos: [{ id: photo.id, role: "face", drawing }] };
  const body = JSON.stringify({ basedOn: bead.revision, content });
  await json(`${url}/api/beads/${id}`, { method: "PUT", headers: head, body });
  return { id, sha256: photo.sha256 };
}
