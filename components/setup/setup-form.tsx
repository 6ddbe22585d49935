"use client";

import { Fragment, memo, type ReactNode } from "react";
import { formLines, setupParts, type SetupPart } from "@/lib/setup";
import { isAsked } from "./asked";
import { FindingsSummary } from "./findings-summary";
import { Group, GroupNav } from "./group";
import { useForm } from "./form-context";
import { FormFrame, type SetupFormProps } from "./form-frame";
import { Line } from "./line";
import { TimedSpeed } from "./timed-speed";
import { UsualOffers } from "./usual-offers";

/**
 * How the bead was run. Everything may stay unknown; what the check finds stands at its field and on top. Drawn again only
 * for another set-up: beside a photo that is being marked it would hold up every mark.
 */
export const SetupForm = memo(function SetupForm(props: SetupFormProps) {
  return (
    <FormFrame {...props} label="How it was run">
      <FindingsSummary />
      <GroupNav />
      {setupParts.map((part) => (
        <Part key={part} name={part} />
      ))}
    </FormFrame>
  );
});

/** What stands below a line of the form, by part and number of the line. */
const below: Readonly<Record<string, ReactNode>> = {
  "electrode 2": <UsualOffers />,
  "travel 3": <TimedSpeed />,
};

/** One part of the form: its lines as the table of fields has them, without the questions that make no sense here. */
function Part({ name }: { name: SetupPart }) {
  const { setup } = useForm();
  return (
    <Group name={name}>
      {formLines(name).map((line, at) => (
        <Fragment key={line[0]}>
          <Line fields={line.filter((field) => isAsked(field, setup))} />
          {below[`${name} ${at + 1}`]}
        </Fragment>
      ))}
    </Group>
  );
}
