import { expect, it } from "vitest";
import { settingsOnChoice } from "@/components/bead/settings-on-choice";
import { listCriteria } from "@/lib/accept";
import { inch, metric } from "@/lib/units";

const set = (id: string) => listCriteria().find((one) => one.id === id);

it("writes down the units of whoever chooses a code that states both", () => {
  expect(settingsOnChoice(set("aws-d1-1-static"), {}, inch)).toEqual({ units: "us" });
  expect(settingsOnChoice(set("aws-d1-1-static"), {}, metric)).toEqual({ units: "si" });
});

it("leaves alone what was decided before, and codes that state one system", () => {
  const kept = { units: "si", gauges: "guarded" };
  expect(settingsOnChoice(set("aws-d1-1-cyclic"), kept, inch)).toEqual(kept);
  expect(settingsOnChoice(set("iso-5817-c"), { gauges: "guarded" }, inch)).toEqual({ gauges: "guarded" });
  expect(settingsOnChoice(undefined, {}, inch)).toEqual({});
});
