/** Beside a verdict that rests on figures from memory, an older edition or a cut text. */
export const CHECK_YOUR_COPY =
  "Check your copy: some of the figures it rests on are from memory or an older edition.";
