import card from "./mark-card.module.css";
import list from "./mark-list.module.css";

/** For a page that shows the marks before their code is here: whoever names them has the style sheets at once. */
export const markStyles = [card, list] as const;
