import { needsCheck, type Source } from "@/lib/base";
import { fieldLabel } from "./field-access";
import type { SetupField } from "./fields";
import type { SetupCode, SetupFinding } from "./finding";

/** Writes a number of a field in the person's units, e.g. ("wireFeedMPerMin", 7.11) -> "280 in/min". */
export type ShowReading = (field: SetupField, siValue: number) => string;

interface Words {
  /** A name out of the finding's data. */
  readonly name: (key: string) => string;
  /** A number out of the finding's data, in the units of the field. */
  readonly number: (key: string, field?: SetupField) => string;
}

const reading = ({ name }: Words) => fieldLabel(name("field") as SetupField);
const span = ({ number }: Words) => spanText(number("low"), number("high"));

/** The one table from code to sentence: what is the matter, then what to do. */
const sentences: Readonly<Record<SetupCode, (words: Words) => string>> = {
  "process-against-class": ({ name }) =>
    `${name("electrode")} is a ${name("wanted")} electrode, but the process says ${name("recorded")}: put one of them right.`,
  "polarity-against-class": ({ name }) =>
    `${name("electrode")} runs on ${name("wanted")}, not ${name("recorded")}: power off and unplugged, change it at the lugs before the next bead.`,
  "polarity-unusual-for-process": ({ name }) =>
    `${name("recorded")} is not used for ${name("process")} on steel; ${name("wanted")} is. Power off and unplugged, read the lugs.`,
  "gas-missing": ({ name }) =>
    `${name("needs")} needs shielding gas and none is flowing: open the cylinder and read the flow with the purge on and no wire feeding.`,
  "gas-on-gasless": ({ name }) =>
    `${name("electrode")} makes its own shield; ${name("gas")} does not help it. Turn the gas off, or check which electrode is loaded.`,
  "gas-against-class": ({ name }) =>
    `${name("electrode")} is made for ${name("wanted")}, not ${name("recorded")}: change the gas or the wire.`,
  "gas-reactive-on-tungsten": ({ name }) =>
    `${name("gas")} burns a tungsten electrode: connect argon before striking an arc.`,
  "gas-cannot-spray": ({ name }) =>
    `${name("gas")} will not spray; spray needs about 80 % argon or more. Change the gas or run short-circuit.`,
  "flow-without-gas": ({ number }) =>
    `A flow of ${number("value")} is recorded but the gas says none: put one of them right.`,
  "position-against-class": ({ name }) =>
    `${name("electrode")} is for ${name("wanted")} only; ${name("recorded")} lets the pool run out. Turn the work or change the wire.`,
  "progression-against-class": ({ name }) =>
    `${name("electrode")} is classed for ${name("wanted")}, not ${name("recorded")}: change the direction of travel or the wire.`,
  "position-beyond-class-list": ({ name }) =>
    `${name("electrode")} is classed for ${name("wanted")}; the trade also runs it ${name("recorded")}. Ask the wire's data sheet first.`,
  "metal-against-class": ({ name }) =>
    `${name("electrode")} is a ${name("metal")} filler on ${name("base")}: check that the procedure asks for it.`,
  "single-pass-wire-in-passes": ({ name }) =>
    `${name("electrode")} is rated for a single pass and this is pass ${name("passes")}: a second pass over it may crack. Change to a multi-pass wire.`,
  "limited-pass-wire-in-passes": ({ name }) =>
    `${name("electrode")} is meant for a few passes on thin plate and this is pass ${name("passes")}: look up the limit on its data sheet.`,
  "push-on-slag": ({ name }) =>
    `${name("process")} leaves slag, and a pushed gun lets the slag run under the arc: drag it.`,
  "reading-below-window": (w) =>
    `${reading(w)} ${w.number("value")} is ${w.number("by")} below the starting window for this electrode (${span(w)}).`,
  "reading-above-window": (w) =>
    `${reading(w)} ${w.number("value")} is ${w.number("by")} above the starting window for this electrode (${span(w)}).`,
  "reading-low-for-feed": (w) =>
    `${reading(w)} ${w.number("value")} is ${w.number("by")} below what goes with this wire feed (${span(w)}).`,
  "reading-high-for-feed": (w) =>
    `${reading(w)} ${w.number("value")} is ${w.number("by")} above what goes with this wire feed (${span(w)}).`,
  "reading-beyond-data-sheet": (w) =>
    `${reading(w)} ${w.number("value")} is beyond the published data-sheet band (${span(w)}) but inside what the trade runs.`,
  "feed-beyond-input": ({ name, number }) =>
    `${name("inputPower")} input gives out at about ${number("cap")} with this wire; ${number("value")} needs a 230 V input.`,
  "plate-beyond-input": ({ name, number }) =>
    `${number("value", "thicknessMm")} plate wants more than a ${name("inputPower")} input gives: use 230 V or more passes.`,
  "travel-speed-disagrees": ({ number }) =>
    `Travel speed says ${number("value")}, but length and arc time give ${number("timed")}: check which one was measured.`,
  "current-disagrees": ({ number }) =>
    `Current ${number("value", "amps")} does not fit feed and tip to work, which give about ${number("computed", "amps")}: read the meter with the arc burning, and measure from tip to work.`,
  "current-below-plate": ({ number }) =>
    `About ${number("value", "amps")} is little for plate of this thickness (rule of thumb ${number("wanted", "amps")}): expect cold toes.`,
  "current-above-plate": ({ number }) =>
    `About ${number("value", "amps")} is much for plate of this thickness (rule of thumb ${number("wanted", "amps")}): expect burn-through.`,
  "transfer-beyond-plate": ({ number }) =>
    `Short-circuit transfer is cold for ${number("value")} plate (suited up to about ${number("limit")}): it may lie on without fusing. Use spray where the position allows it, or flux-cored wire.`,
  "spray-out-of-position": ({ name }) =>
    `A spray pool does not stay up in ${name("position")} position: run short-circuit or pulsed, or turn the work.`,
  "rod-against-plate": ({ number }) =>
    `The rod (${number("value")}) is thicker than the plate (${number("plate", "thicknessMm")}): it cannot be aimed into the corner. Take a thinner one.`,
  "gas-against-metal": ({ name }) =>
    `${name("recorded")} oxidises stainless solid wire; it is run on ${name("wanted")}. Change the gas, or use a flux-cored wire made for it.`,
  "work-angle-off": ({ number }) =>
    `A work angle of ${number("value")} leans to one plate; ${number("wanted")} bisects this joint.`,
  "gap-wide": ({ number }) =>
    `A gap of ${number("value")} is wide for this joint (up to about ${number("limit")}): close it, or back it.`,
  "root-tight": ({ number }) =>
    `A root opening of ${number("value")} is tight (at least about ${number("limit")}): the arc may not reach the edges.`,
  "plate-below-floor": ({ name, number }) =>
    `${number("value")} plate is thinner than ${name("electrode")} is used on (about ${number("limit")} and up): expect burn-through, use a smaller or short-circuit wire.`,
  "plate-above-cap": ({ name, number }) =>
    `${number("value")} plate is thicker than small ${name("electrode")} is meant for (about ${number("limit")}): it may not fuse. Use a larger or multi-pass wire.`,
  "gas-in-wind": () =>
    "Outdoors the wind takes shielding gas away, from a walking-pace breeze on: screen the joint, or use self-shielded wire.",
  "zinc-fume": () =>
    "Zinc boils off galvanised steel: porosity in the bead, and fume that causes metal fume fever. Grind it off well past the joint, ventilate at the arc, keep your head out of the plume.",
  "primer-or-paint": () =>
    "Primer burns to gas under the slag and its fume is harmful: strip it at the joint, ventilate at the arc.",
  "oil-or-paint": () =>
    "Oil and paint are the most common cause of porosity and their fume is harmful: wipe off the oil (never with chlorinated solvent) and grind to bright metal at least 25 mm each side. Never weld on solvent.",
  "wet-surface": () =>
    "Water gives porosity and cracking, and a wet workplace can carry the welding current through you: dry the plate, your gloves and the floor first.",
  "heavy-rust": () =>
    "Heavy rust carries water and oxygen into the pool: grind to bright metal at least 25 mm each side.",
  "scale-under-gas": () =>
    "A gas-shielded bead tolerates scale and rust poorly: grind to bright metal at least 25 mm each side.",
  "chromium-fume": () =>
    "Fume from stainless steel carries hexavalent chromium, which causes cancer: extract it at the arc, keep your head out of the plume, wear the respirator your shop prescribes.",
};

/** Two written readings as one span, the unit said once: "1.27 to 10.2 m/min"; one reading where both read alike. */
export function spanText(low: string, high: string): string {
  if (low === high) return low;
  const unit = /[^\d.]*$/.exec(high)?.[0] ?? "";
  return `${low.endsWith(unit) ? low.slice(0, low.length - unit.length) : low} to ${high}`;
}

/** The sentence for one finding, with its doubt when the number behind it was not read in a text. */
export function findingSentence(found: SetupFinding, show: ShowReading): string {
  const value = (key: string) => found.data[key];
  const words: Words = {
    name: (key) => readable(String(value(key) ?? "")),
    number: (key, field) => show(field ?? found.fields[0], Number(value(key))),
  };
  return sentences[found.code](words);
}

/** How far a source may be trusted, in the words of the trade; null when it was read in a text. */
export function sourceDoubt(source: Source): string | null {
  if (!needsCheck(source)) return null;
  switch (source.confidence) {
    case "common-practice":
      return "common practice, no published source";
    case "own-estimate":
      return "our own estimate";
    case "memory":
      return "from memory; check the wire's data sheet";
    default:
      return "read in part or in an older edition; check the wire's data sheet";
  }
}

export const findingDoubt = (found: SetupFinding): string | null => sourceDoubt(found.source);

/** Ids of the vocabularies as they stand in running text. */
const readable = (name: string) =>
  name
    .replace(
      /^(\d+)V(-3ph)?$/,
      (_, volts: string, phases?: string) => `${volts} V${phases ? " three-phase" : ""}`,
    )
    .replace(/^carbon-steel$/, "carbon steel")
    .replace(/^low-alloy$/, "low-alloy steel")
    .replaceAll(/vertical-(up|down)/g, "vertical $1");
