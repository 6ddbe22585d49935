"use client";

import { useTransition } from "react";
import { Button, Panel } from "@/components/ui";
import type { ShopCounts } from "@/lib/diagnose";

/** How many of this shop's own cases weigh on the causes, and the way to start counting afresh. */
export function ShopPanel({
  shop,
}: {
  shop: { readonly counts: ShopCounts; readonly onReset: () => Promise<void> };
}) {
  const [pending, start] = useTransition();
  const total = Object.values(shop.counts).reduce((sum, count) => sum + count, 0);
  if (total === 0) return null;
  return (
    <Panel tone="purple" title="This shop's own cases">
      <p>
        {total === 1 ? "One cure confirmed here weighs" : `${total} cures confirmed here weigh`} on how common
        each cause is taken to be, beside the published lists.
      </p>
      <Button disabled={pending} onClick={() => start(() => shop.onReset())}>
        Start counting afresh
      </Button>
    </Panel>
  );
}
