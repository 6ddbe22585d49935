import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  editSection,
  emptyPhotoSection,
  PhotoSectionSchema,
  type PhotoSection,
  type SectionAction,
} from "@/lib/assess";
import { edgeRolesOf, sectionJoints } from "@/lib/section";
import { sectionEdgeRoles } from "@/lib/section/drawing";
import { imperfectionIds } from "@/lib/trade";
import { emptyFillet, meltedFillet } from "./section-bead";

const arbPoint = fc.record({
  x: fc.integer({ min: -10, max: 4000 }),
  y: fc.integer({ min: -10, max: 3000 }),
  grainPx: fc.constantFrom(0.5, 2),
});
/** Also too few points: what the schema refuses must not get in. */
const arbPath = fc.option(fc.array(arbPoint, { maxLength: 8 }), { nil: null });
const arbAction: fc.Arbitrary<SectionAction> = fc.oneof(
  fc.constantFrom(...sectionJoints).map((joint) => ({ type: "section.joint" as const, joint })),
  arbPath.map((points) => ({ type: "section.outline" as const, points })),
  fc
    .record({ role: fc.constantFrom(...sectionEdgeRoles), points: arbPath })
    .map((edge) => ({ type: "section.edge" as const, ...edge })),
  fc.option(arbPoint, { nil: null }).map((at) => ({ type: "section.root" as const, at })),
  fc
    .record({ side: fc.constantFrom(0 as const, 1 as const), at: fc.option(arbPoint, { nil: null }) })
    .map((toe) => ({ type: "section.toe" as const, ...toe })),
  fc
    .subarray([...imperfectionIds], { maxLength: 3 })
    .map((lookedFor) => ({ type: "section.lookedFor" as const, lookedFor })),
  fc.constantFrom(-1, 0, 4.2, null).map((mm) => ({ type: "section.throat" as const, mm })),
  fc
    .record({ field: fc.constantFrom("etchant", "specimen"), text: fc.constantFrom("", "  ", "nital 2 %") })
    .map((one) => ({ type: "section.report" as const, ...one })),
);

const after = (actions: readonly SectionAction[]): PhotoSection =>
  actions.reduce(editSection, emptyPhotoSection("fillet"));

/** Laws of our own; no published source. */
describe("editSection, after any actions", () => {
  it("holds what its schema holds, each edge once, in order, and none of the other joint", () => {
    fc.assert(
      fc.property(fc.array(arbAction, { maxLength: 20 }), (actions) => {
        const section = after(actions);
        expect(PhotoSectionSchema.parse(section)).toEqual(section);
        const roles = section.edges.map(({ role }) => role);
        expect(roles).toEqual(edgeRolesOf[section.joint].filter((role) => roles.includes(role)));
      }),
      { seed: 20261126 },
    );
  });

  it("changes nothing the second time, and gives the very same object for nothing", () => {
    fc.assert(
      fc.property(fc.array(arbAction, { maxLength: 12 }), arbAction, (actions, last) => {
        const once = editSection(after(actions), last);
        expect(editSection(once, last)).toBe(once);
      }),
      { seed: 20261127 },
    );
  });

  it("refuses an outline of two points and a throat of nothing", () => {
    const two = [
      { x: 1, y: 1 },
      { x: 9, y: 9 },
    ];
    expect(editSection(emptyFillet, { type: "section.outline", points: two })).toBe(emptyFillet);
    expect(editSection(emptyFillet, { type: "section.throat", mm: 0 })).toBe(emptyFillet);
  });

  it("lets the edges go that another joint has no use for, and keeps the outline", () => {
    const butt = editSection(meltedFillet, { type: "section.joint", joint: "butt" });
    expect(butt.edges).toEqual([]);
    expect(butt.outline).toEqual(meltedFillet.outline);
  });

  it("leaves nothing behind of an emptied report field", () => {
    const written = editSection(emptyFillet, { type: "section.report", field: "etchant", text: "nital" });
    expect(written.report).toEqual({ etchant: "nital" });
    expect(editSection(written, { type: "section.report", field: "etchant", text: " " })).toEqual(
      emptyFillet,
    );
  });
});
