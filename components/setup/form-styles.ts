import fields from "./fields.module.css";
import findings from "./findings.module.css";
import saved from "./saved-setups.module.css";

/** For a page that shows the form before its code is here: whoever names them has the style sheets at once. */
export const formStyles = [fields, findings, saved] as const;
