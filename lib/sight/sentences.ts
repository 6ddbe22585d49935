import type { SeenScale } from "./seen-scale";
import type { Division } from "./tick-pattern";

const lines: Readonly<Record<Division["id"], string>> = {
  mm: "millimetre lines",
  "half-mm": "half-millimetre lines",
  "inch-16": "sixteenths of an inch",
  "inch-32": "thirty-seconds of an inch",
};

/** What was seen, in a sentence that says what to look at before it is accepted. */
export function seenSentence(seen: SeenScale): string {
  switch (seen.kind) {
    case "strip":
      return "The printed strip was found on this photo.";
    case "card":
      return "A bank-size card was found on this photo. Look whether the lines lie on its edges.";
    case "rule":
      return `A rule was found on this photo and read by its ${lines[seen.division]}. Look whether that is what it is divided in.`;
    case "tilted-rule":
      return "A rule was found on this photo, but the camera looks at it from the side, so its lines give no safe scale. Take the photo from straight above the rule, or lay a card or the printed strip beside the weld.";
    case "disc":
      return "A round disc was found on this photo. Its size cannot be seen: you say how wide it is.";
  }
}
