/** What points where, as far as clearing the demo must know it. Subjects are "bead:ID" and so on. */
export interface ShopRows {
  /** What the demo made, by the log. */
  readonly demo: ReadonlySet<string>;
  /** Of these, what somebody worked on since. */
  readonly touched: ReadonlySet<string>;
  /** Every row with what it cannot do without: a hand-in its bead, a weld's bead its person. */
  readonly needs: ReadonlyMap<string, readonly string[]>;
  /** Signed texts, each with the inspection it belongs to. */
  readonly signed: readonly { readonly inspection: string; readonly content: string }[];
}

export interface ClearPlan {
  /** Subjects that go. */
  readonly goes: ReadonlySet<string>;
  /** Of the demo, what stays: somebody worked on it, or something that stays needs it. */
  readonly stays: ReadonlySet<string>;
}

/**
 * What of the demo goes. Nothing that anybody touched goes, nothing a signed record names, and nothing that something
 * else still needs.
 */
export function planClearing({ demo, touched, needs, signed }: ShopRows): ClearPlan {
  const named = (subject: string) => {
    const id = `"${subject.slice(subject.indexOf(":") + 1)}"`;
    return signed.some(({ inspection, content }) => inspection === subject || content.includes(id));
  };
  const stays = new Set([...demo].filter((subject) => touched.has(subject) || named(subject)));
  const open = [...needs.keys()].filter((subject) => !demo.has(subject) || stays.has(subject));
  for (let subject = open.pop(); subject !== undefined; subject = open.pop()) {
    for (const needed of needs.get(subject) ?? []) {
      if (!demo.has(needed) || stays.has(needed)) continue;
      stays.add(needed);
      open.push(needed);
    }
  }
  return { goes: new Set([...demo].filter((subject) => !stays.has(subject))), stays };
}
