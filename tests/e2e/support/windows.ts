import type { BrowserContextOptions } from "playwright-core";
import { inDepth } from "../../setup/in-depth";
import { desktop, phone } from "./browser";

/** A screen, and how it is pressed there. */
type Window = readonly [name: "phone" | "desktop", device: BrowserContextOptions, press: "tap" | "click"];

const onPhone: Window = ["phone", phone, "tap"];
const onDesk: Window = ["desktop", desktop, "click"];

/** For what is done on every screen: the ordinary run takes the phone, the deep one both. */
export const windows: readonly Window[] = inDepth([onPhone], [onPhone, onDesk]);
