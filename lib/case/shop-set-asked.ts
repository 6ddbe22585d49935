import { readShopSetId } from "@/lib/accept";

/**
 * The version ("KEY@VERSION") of the shop's own limits that a judge's case names without carrying it; null where it
 * names none. For whoever has such limits at hand and looks them up before the case is answered.
 */
export function shopSetAsked(json: unknown): string | null {
  if (typeof json !== "object" || json === null) return null;
  const { criteriaId, shop = null } = json as { readonly criteriaId?: unknown; readonly shop?: unknown };
  if (typeof criteriaId !== "string" || shop !== null) return null;
  return readShopSetId(criteriaId) === null ? null : criteriaId;
}
