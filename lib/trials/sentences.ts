import { fieldInText } from "@/lib/setup";
import type { Advice } from "./advance";
import type { TrialIssue } from "./issues";
import type { TrialKnob } from "./trial";

/** A setting of a knob in the person's units. */
export type ShowKnob = (field: TrialKnob, value: number) => string;

/** Why there is no such trial, in one sentence. */
export function trialSentence({ code, field, low, high }: TrialIssue, show: ShowKnob): string {
  const knob = field === null ? "a knob" : fieldInText(field);
  switch (code) {
    case "no-row":
      return "No row is known for this wire, gas and position, so nobody can say where its safe settings end. Plan the run first, or say joint, position and wire.";
    case "base-outside":
      return "The set-up it would begin from lies outside the wire's rows, or the check has something against it. Mend that first.";
    case "knob-open":
      return `The set-up does not say ${knob}. Write down what you ran with, then vary it.`;
    case "range-outside":
      return `For ${knob} the wire's rows, the socket and the plate leave ${show(field!, low)} to ${show(field!, high)} here.`;
    case "range-narrow":
      return `The ends for ${knob} are too near together to be told apart on the dial. Between ${show(field!, low)} and ${show(field!, high)} there is room.`;
    case "corners-outside":
      return "Together these two knobs leave the wire's rows at their ends. Take narrower ranges, or one knob.";
    case "not-understood":
      return "This trial could not be read. It needs a title, one knob or two with a low and a high end, three beads or more, and what is wanted.";
  }
}

/** What to do next, in one sentence. */
export function adviceSentence(
  advice: Advice,
  beads: number,
  showAt: (at: readonly number[]) => string,
): string {
  switch (advice.code) {
    case "run":
      return `Run ${advice.place + 1} of ${beads}: ${showAt(advice.at)}.`;
    case "read":
      return advice.places.length === 1
        ? `Read bead ${advice.places[0]! + 1} of the series: measure it, and the next one is proposed.`
        : `${advice.places.length} beads of the series wait for their reading.`;
    case "enough":
      return "Stop here: what a further bead may bring is small beside the scatter from bead to bead.";
    case "outside":
      return `Run ${advice.place + 1} lies outside the rows known here for this wire, so it is not proposed. Lay out a new series.`;
    case "all-run":
      return "All its beads were run. Take the best region, or lay out a narrower series around it.";
  }
}
